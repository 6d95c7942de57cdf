package baymist.scene.io;

import baymist.geom.Outline;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.io.Value.Fields;
import baymist.units.Quantities;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Makes the ribs of a structure: their order along the span, and holes that fit the web. */
final class Ribs {
    /** Rounding of sizes that should be equal, m; smaller than any sheet. */
    private static final double SLACK_M = 1e-6;

    private final Fields structure;
    private final Problems problems;
    private final OpeningAssembler openings;
    private final WebHoles webs;

    Ribs(Fields structure, Problems problems, OpeningAssembler openings, WebHoles webs) {
        this.webs = webs;
        this.structure = structure;
        this.problems = problems;
        this.openings = openings;
    }

    /** Inside depth of a section, m, at a station y and a distance aft of the (front) spar. */
    interface Depth {
        double at(double yM, double aftM);
    }

    List<CavitySpec.Rib> inSections(Depth depth, DoubleUnaryOperator chordM) {
        List<CavitySpec.Rib> ribs = new ArrayList<>();
        double span = structure.si("span");
        double before = Double.NEGATIVE_INFINITY;
        int number = 0;
        List<Fields> list = structure.list("ribs");
        for (Fields f : list) {
            number++;
            double y = f.si("at");
            checkOrder(f, y, before, span, number == 1, number == list.size());
            before = y;
            double shortOf = f.has("short_of_edge") ? f.si("short_of_edge") : 0;
            double web = chordM.applyAsDouble(y) - shortOf;
            if (web <= 0) {
                problems.add(
                        SceneProblem.RIBS,
                        f.at("short_of_edge"),
                        "the rib stops " + f.written("short_of_edge") + " short of the edge of a section of "
                                + Quantities.length(web + shortOf) + "; nothing of it is left");
            }
            String own = f.has("name") ? f.text("name") : null;
            String name = own == null ? "rib " + number : own;
            webs.claim(name, f.at("name"));
            ribs.add(new CavitySpec.Rib(y, shortOf, holes(f, name, y, web, depth), own));
        }
        return List.copyOf(ribs);
    }

    private List<CavitySpec.RibHole> holes(Fields rib, String ribName, double y, double webM, Depth depth) {
        List<CavitySpec.RibHole> holes = new ArrayList<>();
        for (Fields h : rib.list("holes")) {
            holes.add(hole(h, ribName + " hole " + (holes.size() + 1), y, webM, depth));
        }
        return List.copyOf(holes);
    }

    /** Ribs of a nose, whose ends are closed anyway. */
    List<CavitySpec.Rib> ofNose(List<Fields> list, Depth depth, DoubleUnaryOperator lengthM) {
        List<CavitySpec.Rib> ribs = new ArrayList<>();
        for (Fields f : list) {
            String own = f.has("name") ? f.text("name") : null;
            String name = own == null ? "nose rib " + (ribs.size() + 1) : own;
            webs.claim(name, f.at("name"));
            double y = f.si("at");
            ribs.add(new CavitySpec.Rib(y, 0, holes(f, name, y, lengthM.applyAsDouble(y), depth), own));
        }
        return List.copyOf(ribs);
    }

    private void checkOrder(Fields f, double y, double before, double span, boolean first, boolean last) {
        SourcePlace at = f.at("at");
        if (y <= before) {
            problems.add(
                    SceneProblem.RIBS,
                    at,
                    "the rib at " + f.written("at") + " does not lie outboard of the one before ("
                            + Quantities.length(before) + "); list ribs from the root outwards");
        } else if (y > span + SLACK_M) {
            problems.add(
                    SceneProblem.RIBS,
                    at,
                    "the rib at " + f.written("at") + " lies beyond the span of " + structure.written("span"));
        } else if (first && y > SLACK_M) {
            problems.add(
                    SceneProblem.RIBS,
                    at,
                    "the first rib stands at " + f.written("at") + "; it closes the root and must stand at `0 mm`");
        } else if (last && y < span - SLACK_M) {
            problems.add(
                    SceneProblem.RIBS,
                    at,
                    "the last rib stands at " + f.written("at") + "; it closes the tip and must stand at the span, "
                            + structure.written("span"));
        }
    }

    private CavitySpec.RibHole hole(Fields h, String usualName, double y, double webM, Depth depth) {
        Outline outline = openings.outline(h.fields("shape"));
        double aft = h.si("aft");
        double up = h.si("up");
        String name = h.has("name") ? h.text("name") : null;
        openings.claim(name == null ? usualName : name, h.at("name"));
        double lowAft = Double.POSITIVE_INFINITY;
        double highAft = Double.NEGATIVE_INFINITY;
        double overM = Double.NEGATIVE_INFINITY;
        if (!Double.isNaN(outline.reachM())) {
            for (double[] p : outline.polygon(64)) {
                lowAft = Math.min(lowAft, aft + p[0]);
                highAft = Math.max(highAft, aft + p[0]);
                overM = Math.max(overM, Math.abs(up + p[1]) - depth.at(y, aft + p[0]) / 2);
            }
        }
        // the polygon of a circle reaches out a little, since its area is the circle's
        double slack = SLACK_M + 2e-3 * (Double.isNaN(outline.reachM()) ? 0 : outline.reachM());
        if (lowAft < -slack || highAft > webM + slack) {
            problems.add(
                    SceneProblem.HOLE_TOO_BIG,
                    h.place(),
                    "the hole reaches from " + Quantities.length(lowAft) + " to " + Quantities.length(highAft)
                            + " aft of the spar; the web there runs from 0 mm to " + Quantities.length(webM));
        } else if (overM > slack) {
            problems.add(
                    SceneProblem.HOLE_TOO_BIG,
                    h.place(),
                    "the hole reaches " + Quantities.length(overM) + " beyond the section, which is "
                            + Quantities.length(depth.at(y, aft)) + " deep at " + h.written("aft")
                            + " aft of the spar; make it smaller or move it");
        }
        return new CavitySpec.RibHole(
                name, outline, aft, up, openings.states(h.get("state")), webs.flange(h, "outboard", "inboard"));
    }
}
