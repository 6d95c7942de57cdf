package baymist.scene.io;

import baymist.geom.Box3;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.EntrySpec;
import baymist.scene.PassSpec;
import baymist.scene.WandAim;
import baymist.scene.WandSpec;
import baymist.scene.io.Value.Fields;
import baymist.units.Quantities;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Makes entries and passes and checks that they name what is there and can be done. */
final class PassAssembler {
    private final Problems problems;
    private final OpeningAssembler openings;

    PassAssembler(Problems problems, OpeningAssembler openings) {
        this.problems = problems;
        this.openings = openings;
    }

    List<EntrySpec> entries(List<Fields> list) {
        List<EntrySpec> entries = new ArrayList<>();
        Map<String, SourcePlace> seen = new HashMap<>();
        for (Fields f : list) {
            String name = f.text("name");
            once("entry", name, f.at("name"), seen);
            entries.add(new EntrySpec(
                    name,
                    f.text("opening"),
                    openings.direction(f, "direction"),
                    grommet(f.fields("grommet")),
                    secondPlate(f.fields("second_plate")),
                    f.at("opening")));
        }
        return entries;
    }

    private static EntrySpec.@Nullable Grommet grommet(@Nullable Fields f) {
        return f == null ? null : new EntrySpec.Grommet(f.si("bore"), f.si("thickness"));
    }

    private EntrySpec.@Nullable SecondPlate secondPlate(@Nullable Fields f) {
        Outline hole = f == null ? null : openings.outline(f.fields("shape"));
        if (f == null || hole == null) {
            return null;
        }
        if (Math.abs(f.si("distance")) <= 0.5 * f.si("gauge")) {
            problems.add(
                    SceneProblem.SECOND_PLATE,
                    f.at("distance"),
                    "the second plate, " + f.written("distance") + " away and " + f.written("gauge")
                            + " thick, lies in the opening's own sheet; a distance of more than half its gauge is wanted");
        }
        return new EntrySpec.SecondPlate(f.si("distance"), f.si("gauge"), hole);
    }

    private @Nullable WandAim aim(Fields pass) {
        if (pass.get("aim") instanceof Value.Word word) {
            return word.text().equals("central") ? new WandAim.Central() : new WandAim.Deepest();
        }
        Fields f = pass.fields("aim");
        Vec3 point = f == null ? null : f.vector("near");
        if (point != null) {
            return new WandAim.Near(new Box3(point, point));
        }
        Fields region = f == null ? null : f.fields("region");
        Vec3 low = region == null ? null : region.vector("low");
        Vec3 high = region == null ? null : region.vector("high");
        if (region == null || low == null || high == null) {
            return null;
        }
        if (low.x() > high.x() || low.y() > high.y() || low.z() > high.z()) {
            problems.add(
                    SceneProblem.AIM,
                    region.at("low"),
                    "`low` exceeds `high` in a coordinate; the corner with the smallest coordinates is wanted first");
        }
        return new WandAim.Near(new Box3(low, high));
    }

    /** Adds a problem when a name has been seen before. */
    void once(String what, String name, SourcePlace place, Map<String, SourcePlace> seen) {
        SourcePlace before = name.isEmpty() ? null : seen.putIfAbsent(name, place);
        if (before != null) {
            problems.add(
                    SceneProblem.NAME_TWICE,
                    place,
                    "the " + what + " name `" + name + "` is used twice, first at " + before
                            + "; give each its own name");
        }
    }

    List<PassSpec> passes(
            List<Fields> list,
            List<EntrySpec> entries,
            Map<String, WandSpec> wands,
            boolean entriesKnown,
            boolean wandsKnown) {
        List<PassSpec> passes = new ArrayList<>();
        Map<String, SourcePlace> seen = new HashMap<>();
        List<String> entryNames = entries.stream().map(EntrySpec::name).toList();
        for (Fields f : list) {
            String name = f.has("name") ? f.text("name") : "pass " + (passes.size() + 1);
            once("pass", name, f.at("name"), seen);
            if (entriesKnown) {
                known(SceneProblem.UNKNOWN_ENTRY, "entry", f, entryNames);
            }
            if (wandsKnown) {
                known(
                        SceneProblem.UNKNOWN_WAND,
                        "wand",
                        f,
                        wands.keySet().stream().sorted().toList());
            }
            PassSpec pass = pass(f, name);
            checkMotion(f, pass, wands);
            passes.add(pass);
        }
        return passes;
    }

    private void known(SceneProblem problem, String key, Fields f, Collection<String> names) {
        String name = f.text(key);
        if (!name.isEmpty() && !names.contains(name)) {
            problems.add(problem, f.at(key), "no " + key + " is called `" + name + "`" + Suggestion.of(name, names));
        }
    }

    private PassSpec pass(Fields f, String name) {
        double from = f.get("from") instanceof Value.Word ? Double.POSITIVE_INFINITY : f.si("from");
        double clock = f.si("clock") % (2 * Math.PI);
        return new PassSpec(
                name,
                f.text("entry"),
                f.text("wand"),
                from,
                f.si("to"),
                f.si("draw_back", 0),
                clock < 0 ? clock + 2 * Math.PI : clock,
                f.si("hold"),
                f.si("hang"),
                aim(f),
                f.has("sag") ? f.text("sag").equals("on") : null,
                f.place());
    }

    private void checkMotion(Fields f, PassSpec pass, Map<String, WandSpec> wands) {
        double from = pass.fromDepthM();
        double to = pass.toDepthM();
        if (from < to) {
            problems.add(
                    SceneProblem.DEPTHS,
                    f.at("to"),
                    "the pass ends deeper (" + f.written("to") + ") than it starts (" + f.written("from")
                            + "); a pass draws the wand back, so `to` must not exceed `from`");
        }
        if (from > to && !f.has("draw_back")) {
            problems.add(
                    SceneProblem.NO_DRAW_BACK,
                    f.place(),
                    "`draw_back` is missing; a rate such as `100 mm/s` is wanted for a pass from " + f.written("from")
                            + " to " + f.written("to"));
        }
        if (from == to && pass.holdS() == 0) {
            problems.add(
                    SceneProblem.NO_SPRAY,
                    f.place(),
                    "the wand stays at " + f.written("to") + " for no time; state `hold`, such as `5 s`");
        }
        WandSpec wand = wands.get(pass.wand());
        if (wand == null) {
            return;
        }
        String key = !Double.isInfinite(from) && from > wand.lengthM() ? "from" : to > wand.lengthM() ? "to" : "";
        if (!key.isEmpty()) {
            problems.add(
                    SceneProblem.WAND_TOO_SHORT,
                    f.at(key),
                    "depth " + f.written(key) + " is more than the wand `" + wand.name() + "` is long ("
                            + Quantities.length(wand.lengthM()) + "); a longer wand or a smaller depth is wanted");
        }
    }
}
