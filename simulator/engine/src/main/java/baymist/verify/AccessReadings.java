package baymist.verify;

import baymist.access.Insertion;
import baymist.access.PassPlan;
import baymist.access.Station;
import baymist.access.Stations;
import baymist.run.CheckResult;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleBiFunction;

/** Where a scene's wands go, and its stations. */
final class AccessReadings {
    private AccessReadings() {}

    static Map<String, ToDoubleBiFunction<CheckResult, Inputs>> all() {
        Map<String, ToDoubleBiFunction<CheckResult, Inputs>> all = new TreeMap<>();
        all.put("edgeClearance", (r, in) -> insertion(r, in).edgeClearanceM());
        all.put("entryFits", (r, in) -> insertion(r, in).feasible() ? 1 : 0);
        all.put("insertionDepth", (r, in) -> insertion(r, in).maxDepthM());
        all.put("triggerTime", (r, in) -> {
            PassPlan plan = plan(r);
            return plan.triggerOffS()[0] - plan.triggerOnS()[0];
        });
        all.put("jobTime", (r, in) -> plan(r).endS());
        all.put("stations", (r, in) -> plan(r).stations().size());
        all.put("tipCoordinate", (r, in) -> station(r, in).pose().positionM().dot(in.vector("along")));
        return all;
    }

    private static Insertion insertion(CheckResult r, Inputs in) {
        String entry = in.word("entry");
        String wand = in.word("wand");
        return r.insertions().stream()
                .filter(i -> i.entry().equals(entry) && i.wand().equals(wand))
                .findFirst()
                .orElseThrow(
                        () -> new IllegalArgumentException("no pass takes \"" + wand + "\" into \"" + entry + "\""));
    }

    /** Of a scene with one pass. */
    private static PassPlan plan(CheckResult r) {
        return Stations.plan(r.scene(), r.insertions());
    }

    private static Station station(CheckResult r, Inputs in) {
        return plan(r).stations().get(in.whole("station") - 1);
    }
}
