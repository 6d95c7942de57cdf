package baymist.scene.io;

import baymist.geom.Outline;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.io.Value.Fields;
import baymist.units.Quantities;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Makes the holes of webs along the span and the flanges of all holes, and keeps the names of a structure's parts apart. */
final class WebHoles {
    private final Problems problems;
    private final OpeningAssembler openings;
    private final Map<String, SourcePlace> parts = new HashMap<>();

    /** @param fixedParts names that the family itself gives */
    WebHoles(Problems problems, OpeningAssembler openings, SourcePlace structure, String... fixedParts) {
        this.problems = problems;
        this.openings = openings;
        for (String part : fixedParts) {
            parts.put(part, structure);
        }
    }

    /** Notes the name of a part; a second one of the same name is a problem. */
    void claim(String name, SourcePlace place) {
        if (!name.isEmpty() && parts.putIfAbsent(name, place) != null) {
            problems.add(
                    SceneProblem.PART_TWICE,
                    place,
                    "there is another part called `" + name + "`; give each part its own name");
        }
    }

    CavitySpec.@Nullable Flange flange(Fields hole, String usualSide, String otherSide) {
        Fields f = hole.fields("flange");
        if (f == null) {
            return null;
        }
        String side = f.text("side");
        if (!side.isEmpty() && !side.equals(usualSide) && !side.equals(otherSide)) {
            problems.add(
                    SceneProblem.FLANGE_SIDE,
                    f.at("side"),
                    "a flange stands `" + usualSide + "` or `" + otherSide + "` of this web, not `" + side + "`");
        }
        return new CavitySpec.Flange(f.si("depth"), f.si("angle"), !side.equals(otherSide));
    }

    /** Holes of a web that runs along the span between two stations and is nowhere deeper than given. */
    List<CavitySpec.SparHole> holes(List<Fields> list, String web, double fromM, double toM, double deepestM) {
        List<CavitySpec.SparHole> holes = new ArrayList<>();
        for (Fields h : list) {
            Outline outline = openings.outline(h.fields("shape"));
            String own = h.has("name") ? h.text("name") : null;
            openings.claim(own == null ? web + " hole " + (holes.size() + 1) : own, h.at("name"));
            double along = h.si("along");
            double up = h.si("up");
            double reach = Math.abs(up);
            if (along < fromM || along > toM || reach > deepestM / 2) {
                problems.add(
                        SceneProblem.SPAR_HOLE,
                        h.at("along"),
                        "the hole's centre lies at " + h.written("along") + " along and " + Quantities.length(up)
                                + " above the middle of `" + web + "`, which runs from " + Quantities.length(fromM)
                                + " to "
                                + Quantities.length(toM) + " and is " + Quantities.length(deepestM) + " deep at most");
            }
            holes.add(new CavitySpec.SparHole(
                    own, outline, along, up, openings.states(h.get("state")), flange(h, "aft", "forward")));
        }
        return List.copyOf(holes);
    }
}
