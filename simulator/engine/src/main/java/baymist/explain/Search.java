package baymist.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * Which changes are run, and in what order: first those that could prove a cause that the facts allow; if none of them is enough, what else
 * comes to mind, least effort first; if that is not enough either, the best together. What is run depends on what runs give and on nothing
 * else but the time limit.
 */
final class Search {
    /** Changes that are run together at most. */
    private static final int TOGETHER = 3;

    private final TrialRuns running;
    private final Set<ChangeKind> suspects;
    private final ExplainOptions options;

    Search(TrialRuns running, Set<ChangeKind> suspects, ExplainOptions options) {
        this.running = running;
        this.suspects = suspects;
        this.options = options;
    }

    /** All that were run, ranked. */
    List<Remedy> of(List<Trial> trials) {
        List<Trial> first = trials.stream()
                .filter(t -> options.all() || suspects.contains(t.kind()))
                .limit(options.runs())
                .toList();
        List<Trial> then = trials.stream()
                .filter(t -> !options.all() && !suspects.contains(t.kind()))
                .limit(options.runs() - first.size())
                .toList();
        running.foretell(first.size(), then.size());
        List<Remedy> remedies = new ArrayList<>(running.all("changes that the facts speak for, one at a time", first));
        if (noneHolds(remedies)) {
            remedies.addAll(running.all("other changes, one at a time", then));
        }
        if (noneHolds(remedies)) {
            together(remedies);
        }
        return Choice.ranked(remedies);
    }

    private static boolean noneHolds(List<Remedy> remedies) {
        return remedies.stream().noneMatch(Remedy::holds);
    }

    /** The last resort: the best of different kinds together, one more at a time until they are enough. */
    private void together(List<Remedy> remedies) {
        List<Remedy> best = remedies.stream()
                .filter(r -> r.gain() > 0)
                .sorted(Comparator.comparing((Remedy r) -> r.kind().drills()).thenComparing(r -> -r.gain()))
                .toList();
        List<Trial> chosen = new ArrayList<>();
        for (Remedy r : best) {
            if (chosen.size() < TOGETHER && chosen.stream().noneMatch(t -> t.kind() == r.kind())) {
                chosen.add(running.trialOf(r));
            }
        }
        Trial sum = null;
        for (Trial t : chosen) {
            sum = sum == null ? t : sum.and(t);
            if (sum.single()) {
                continue;
            }
            List<Remedy> both = running.all("changes together", List.of(sum));
            remedies.addAll(both);
            if (!noneHolds(both)) {
                return;
            }
        }
    }
}
