package baymist.cavity;

import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.CavitySpec.RibHole;
import baymist.scene.PhaseStates;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Skins and ribs of a structure whose sections stand square to y: the skins are ruled between consecutive sections and share
 * their vertices with the ribs, so the sheets meet without T-joints.
 */
final class RibSheets {
    private final SheetModel model;
    private final double gaugeM;
    private final SourcePlace place;

    RibSheets(SheetModel model, double gaugeM, SourcePlace place) {
        this.model = model;
        this.gaugeM = gaugeM;
        this.place = place;
    }

    /** Two-sided section at one y: points from the front to the rear, upper and lower in step. */
    record Section(double yM, List<Vec3> upper, List<Vec3> lower) {
        int points() {
            return upper.size();
        }

        double heightM(double x, List<Vec3> side) {
            for (int k = 0; k + 1 < side.size(); k++) {
                Vec3 a = side.get(k);
                Vec3 b = side.get(k + 1);
                if (x <= b.x() || k + 2 == side.size()) {
                    return a.z() + (b.z() - a.z()) * (x - a.x()) / (b.x() - a.x());
                }
            }
            throw new IllegalStateException("a section has at least two points a side");
        }

        /** All corners in turn: lower side aft, upper side forward; corners that coincide once. */
        List<Vec3> loop() {
            List<Vec3> loop = new ArrayList<>();
            for (Vec3 p : lower) {
                add(loop, p);
            }
            for (int k = points() - 1; k >= 0; k--) {
                add(loop, upper.get(k));
            }
            return loop;
        }

        private static void add(List<Vec3> loop, Vec3 p) {
            boolean closes = !loop.isEmpty() && same(loop.get(0), p);
            if (!closes && (loop.isEmpty() || !same(loop.get(loop.size() - 1), p))) {
                loop.add(p);
            }
        }

        /** By value, so that 0.0 and -0.0 are one place. */
        private static boolean same(Vec3 a, Vec3 b) {
            return a.x() == b.x() && a.y() == b.y() && a.z() == b.z();
        }

        double frontX() {
            return upper.get(0).x();
        }

        double rearX() {
            return upper.get(points() - 1).x();
        }
    }

    /** Ruled sheet between neighbouring sections through the given points of each. */
    void ruled(int part, List<List<Vec3>> rows) {
        for (int j = 0; j + 1 < rows.size(); j++) {
            List<Vec3> a = rows.get(j);
            List<Vec3> b = rows.get(j + 1);
            for (int k = 0; k + 1 < a.size(); k++) {
                model.quad(part, a.get(k), a.get(k + 1), b.get(k + 1), b.get(k));
            }
        }
    }

    /** Name of rib i, 0 = root. */
    static String name(List<Rib> ribs, int i) {
        String own = ribs.get(i).name();
        return own == null ? "rib " + (i + 1) : own;
    }

    /**
     * All ribs with their holes and, where they stop short, the space behind them.
     *
     * @return part of each rib
     */
    int[] ribs(List<Rib> ribs, List<Section> sections) {
        int[] parts = new int[ribs.size()];
        for (int i = 0; i < ribs.size(); i++) {
            // seen from outside the cavity an end rib's openings lead in; all other rib openings lead outboard
            Vec3 normal = i == ribs.size() - 1 ? Vec3.Y.negate() : Vec3.Y;
            parts[i] = rib(name(ribs, i), ribs.get(i), sections.get(i), normal);
        }
        return parts;
    }

    /**
     * One rib.
     *
     * @param normal of its openings
     * @return its part
     */
    int rib(String name, Rib rib, Section section, Vec3 normal) {
        int part = model.part(name, PartKind.RIB, gaugeM);
        if (rib.shortOfEdgeM() > 0) {
            shortEnd(part, name, rib, section, normal);
        }
        List<FlangedWeb.Hole> holes = new ArrayList<>();
        for (RibHole hole : rib.holes()) {
            String holeName = hole.name() == null ? name + " hole " + (holes.size() + 1) : hole.name();
            holes.add(hole(holeName, hole, section, normal));
        }
        FlangedWeb web = new FlangedWeb(model, gaugeM, place);
        if (holes.stream().anyMatch(FlangedWeb.Hole::flanged)) {
            web.web(part, section.loop(), holes);
        } else {
            strips(part, section);
            web.plain(part, holes);
        }
        return part;
    }

    private void strips(int part, Section section) {
        for (int k = 0; k + 1 < section.points(); k++) {
            model.quad(
                    part,
                    section.lower().get(k),
                    section.lower().get(k + 1),
                    section.upper().get(k + 1),
                    section.upper().get(k));
        }
    }

    private static FlangedWeb.Hole hole(String name, RibHole hole, Section section, Vec3 normal) {
        double x = section.frontX() + hole.aftM();
        double middle = 0.5 * (section.heightM(x, section.upper()) + section.heightM(x, section.lower()));
        Vec3 centre = new Vec3(x, section.yM(), middle + hole.upM());
        Outline outline = hole.outline();
        if (normal.y() > 0 && outline instanceof Outline.Polygon polygon) {
            // the frame's v axis points down where the normal points outboard; corners are stated upward
            outline = new Outline.Polygon(polygon.points().stream()
                    .map(p -> new double[] {p[0], -p[1]})
                    .toList());
        }
        return new FlangedWeb.Hole(
                name, PlacedOutline.of(outline, centre, Vec3.X, normal), hole.states(), hole.flange(), Vec3.Y);
    }

    /** The whole section as an opening: an end that is left open. */
    void openEnd(String name, int part, Section section, Vec3 normal) {
        model.placed.add(new SheetModel.Placed(
                name,
                part,
                Opening.Kind.PORT,
                polygon(section.loop(), Vec3.X, normal),
                PhaseStates.ALWAYS_OPEN,
                place));
    }

    private void shortEnd(int part, String name, Rib rib, Section section, Vec3 normal) {
        double from = section.rearX() - rib.shortOfEdgeM();
        List<Vec3> loop = new ArrayList<>();
        loop.add(new Vec3(from, section.yM(), section.heightM(from, section.lower())));
        for (Vec3 p : section.lower()) {
            if (p.x() > from) {
                loop.add(p);
            }
        }
        for (int k = section.points() - 1; k >= 0; k--) {
            Vec3 p = section.upper().get(k);
            if (p.x() > from && !p.equals(loop.get(loop.size() - 1))) {
                loop.add(p);
            }
        }
        loop.add(new Vec3(from, section.yM(), section.heightM(from, section.upper())));
        model.placed.add(new SheetModel.Placed(
                name + " end gap",
                part,
                Opening.Kind.SHORT_MEMBER,
                polygon(loop, Vec3.X, normal),
                PhaseStates.ALWAYS_OPEN,
                place));
    }

    static List<Vec3> reversed(List<Vec3> points) {
        List<Vec3> copy = new ArrayList<>(points);
        Collections.reverse(copy);
        return copy;
    }

    /** Polygon outline through points of one plane, about the mean of its corners. */
    static PlacedOutline polygon(List<Vec3> loop, Vec3 uAxis, Vec3 normal) {
        Vec3 centre = Vec3.ZERO;
        for (Vec3 p : loop) {
            centre = centre.plus(p);
        }
        centre = centre.times(1.0 / loop.size());
        PlacedOutline frame = PlacedOutline.of(new Outline.Circle(1), centre, uAxis, normal);
        List<double[]> points = new ArrayList<>();
        for (Vec3 p : loop) {
            points.add(new double[] {frame.u(p), frame.v(p)});
        }
        return PlacedOutline.of(new Outline.Polygon(points), centre, uAxis, normal);
    }
}
