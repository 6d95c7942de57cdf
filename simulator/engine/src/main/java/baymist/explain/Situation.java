package baymist.explain;

import baymist.access.AccessFinder;
import baymist.access.Insertion;
import baymist.access.ReachProblem;
import baymist.access.ReachSettings;
import baymist.access.Surroundings;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.run.ReachResult;
import baymist.run.RunResult;
import baymist.scene.EntrySpec;
import baymist.scene.PassSpec;
import baymist.scene.WandAim;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything that is known when changes are thought of.
 *
 * @param base the job as stated, at planning resolution
 * @param reach where wands get to, all openings looked at
 * @param hand further wands at hand, straight ones
 */
record Situation(
        RunResult base,
        RunHistory history,
        ReachResult reach,
        Patch patch,
        AccessFacts access,
        SightFacts sight,
        FogFacts fog,
        SupplyFacts supply,
        JetGuess guess,
        List<WandSpec> hand) {

    /** Half of the usual lines: many wands are tried, and a run confirms what is found. */
    private static final ReachSettings QUICK = new ReachSettings(
            2 * ReachSettings.DEFAULT.resolutionM(), ReachSettings.DEFAULT.budget() / 6, ReachSettings.DEFAULT.tips());

    /** What a wand would do at an entry. */
    record Way(EntrySpec entry, WandSpec wand, Insertion insertion, JetGuess.Stand stand) {}

    static SourcePlace place() {
        return new SourcePlace("proposed change", 0, "");
    }

    WandSpec wand(PassSpec pass) {
        WandSpec w = base.scene().wands().get(pass.wand());
        if (w == null) {
            throw new IllegalStateException("wand " + pass.wand());
        }
        return w;
    }

    EntrySpec entry(PassSpec pass) {
        return base.scene().entries().stream()
                .filter(e -> e.name().equals(pass.entry()))
                .findFirst()
                .orElseThrow();
    }

    /** The way of a pass in the first run. */
    @Nullable
    Insertion insertion(PassSpec pass) {
        return base.insertions().stream()
                .filter(i -> i.entry().equals(pass.entry()) && i.wand().equals(pass.wand()))
                .findFirst()
                .orElse(null);
    }

    /** Passes in order of how near they came to the region; each with its number. */
    List<Integer> passesByNearness() {
        int n = base.scene().passes().size();
        double[] d = new double[n];
        java.util.Arrays.fill(d, Double.POSITIVE_INFINITY);
        int[] points = patch.sample(SightFacts.POINTS);
        base.stations()
                .forEach(s -> d[s.pass()] =
                        Math.min(d[s.pass()], AccessFacts.distance(s.pose().positionM(), patch, points)));
        List<Integer> order = new ArrayList<>();
        for (int p = 0; p < n; p++) {
            order.add(p);
        }
        order.sort(Comparator.comparingDouble(p -> d[p]));
        return order;
    }

    /** The scene's wands in order of their names, then those at hand that it lacks; one that another equals in all but its name is left out. */
    List<WandSpec> wands() {
        List<WandSpec> all = new ArrayList<>(base.scene().wands().values());
        all.sort(Comparator.comparing(WandSpec::name));
        for (WandSpec w : hand) {
            if (all.stream().noneMatch(known -> known.name().equals(w.name()))) {
                all.add(w);
            }
        }
        return all;
    }

    /** A wand's way through an entry, or null if it does not go in. */
    @Nullable
    Insertion way(EntrySpec entry, WandSpec wand, @Nullable WandAim aim) {
        int opening = base.cavity().openingIndex(entry.opening());
        if (opening < 0) {
            return null;
        }
        boolean[] open = new boolean[base.cavity().openings().size()];
        for (int o = 0; o < open.length; o++) {
            boolean outer = base.cavity().openings().get(o).exterior();
            open[o] = o == opening || (!outer && reach.around().open(o));
        }
        ReachProblem problem = new ReachProblem(Surroundings.of(base.cavity(), base.scene(), open), entry, wand, QUICK);
        try {
            Insertion in = AccessFinder.find(problem, aim, Double.POSITIVE_INFINITY);
            return in.feasible() && in.maxDepthM() > 0.02 ? in : null;
        } catch (SceneException e) {
            return null;
        }
    }

    /** Whether what stands between tip and region is a masked item. */
    boolean maskShades() {
        return base.scene().protectedItems().stream()
                .anyMatch(i -> i.masked() && i.partName().equals(sight.shade()));
    }

    /** Whether an opening between bays is shut while spraying though neither taped nor plugged. */
    boolean hasShutInside() {
        return supply.shut().stream()
                .anyMatch(n -> !base.cavity()
                        .openings()
                        .get(base.cavity().openingIndex(n))
                        .exterior());
    }
}
