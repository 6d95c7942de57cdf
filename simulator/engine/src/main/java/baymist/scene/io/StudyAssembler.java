package baymist.scene.io;

import baymist.scene.CardSpec;
import baymist.scene.CompareSpec;
import baymist.scene.DrillingSpec;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.PlanSpec;
import baymist.scene.Studies;
import baymist.scene.WandSpec;
import baymist.scene.io.Value.Fields;
import java.time.Period;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Makes what studies over a scene try, and checks that it names what is there. */
final class StudyAssembler {
    private final Problems problems;
    private final OpeningAssembler openings;

    StudyAssembler(Problems problems, OpeningAssembler openings) {
        this.problems = problems;
        this.openings = openings;
    }

    Studies studies(Fields scene, List<EntrySpec> entries, Map<String, WandSpec> wands) {
        Fields compare = scene.fields("compare");
        Fields drilling = scene.fields("drilling");
        Fields plan = scene.fields("plan");
        return new Studies(
                compare == null ? CompareSpec.usual(scene.place()) : compare(compare, entries, wands),
                drilling == null ? null : drilling(drilling),
                plan == null ? PlanSpec.usual(scene.place()) : plan(plan),
                card(scene.fields("card")));
    }

    private CardSpec card(@Nullable Fields f) {
        if (f == null || problems.any()) {
            return CardSpec.USUAL;
        }
        Period interval = f.has("interval") ? CardSpec.interval(f.text("interval")) : null;
        return new CardSpec(interval, f.si("allowance"), f.si("cup"));
    }

    private CompareSpec compare(Fields f, List<EntrySpec> entries, Map<String, WandSpec> wands) {
        known(
                SceneProblem.UNKNOWN_ENTRY,
                "entry",
                f,
                "entries",
                entries.stream().map(EntrySpec::name).toList());
        known(
                SceneProblem.UNKNOWN_WAND,
                "wand",
                f,
                "wands",
                wands.keySet().stream().sorted().toList());
        double from = f.get("from") instanceof Value.Word ? Double.POSITIVE_INFINITY : f.si("from");
        if (from < f.si("to")) {
            problems.add(
                    SceneProblem.DEPTHS,
                    f.at("to"),
                    "the passes end deeper (" + f.written("to") + ") than they start (" + f.written("from")
                            + "); a pass draws the wand back, so `to` must not exceed `from`");
        }
        List<OpeningSpec> holes = openings.openings(f.list("holes"));
        return new CompareSpec(
                f.texts("entries"),
                f.texts("wands"),
                numbers(f.get("clocks")),
                holes,
                from,
                f.si("to"),
                f.si("draw_back"),
                f.si("hold"),
                f.place());
    }

    private PlanSpec plan(Fields f) {
        double slowest = f.si("slowest", Double.NaN);
        double fastest = f.si("fastest", Double.NaN);
        if (slowest > fastest) {
            problems.add(
                    SceneProblem.DEPTHS,
                    f.at("slowest"),
                    "the slowest draw-back (" + f.written("slowest") + ") is faster than the fastest ("
                            + f.written("fastest") + "); `slowest` must not exceed `fastest`");
        }
        return new PlanSpec(
                slowest,
                fastest,
                f.si("trigger", Double.NaN),
                f.si("product", Double.NaN),
                f.whole("passes"),
                f.texts("panels"),
                f.place());
    }

    private static DrillingSpec drilling(Fields f) {
        return new DrillingSpec(
                f.texts("parts"),
                f.texts("primary"),
                f.texts("pressurised"),
                f.texts("doublers"),
                numbers(f.get("drills")).stream().map(d -> (int) Math.rint(d)).toList(),
                f.si("grid"),
                f.whole("most"),
                f.si("least_gain"),
                f.place());
    }

    private static List<Double> numbers(@Nullable Value value) {
        List<Double> all = new ArrayList<>();
        if (value instanceof Value.Items items) {
            for (int i = 0; i < items.values().size(); i++) {
                all.add(items.number(i));
            }
        }
        return all;
    }

    private void known(SceneProblem problem, String what, Fields f, String key, Collection<String> names) {
        for (String name : f.texts(key)) {
            if (!names.contains(name)) {
                problems.add(
                        problem, f.at(key), "no " + what + " is called `" + name + "`" + Suggestion.of(name, names));
            }
        }
    }
}
