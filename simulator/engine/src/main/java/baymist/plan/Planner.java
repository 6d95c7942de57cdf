package baymist.plan;

import baymist.access.PassPlan;
import baymist.access.Stations;
import baymist.coverage.Fractions;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.run.Approach;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.voxel.SurfelSet;
import java.util.ArrayList;
import java.util.List;

/** Plans the passes of a scene; read {@link #plan} from top to bottom. */
public final class Planner {
    /** Where a scene has no passes, trigger time for so many times the film that its target build takes (ASSUMED: half of it goes astray). */
    private static final double TIMES_TARGET = 2;

    /** Largest factor by which a round corrects a patch, either way (ASSUMED: keeps rounds from swinging). */
    private static final double MOST_CORRECTION = 4;

    /** Rounds end when plan and run agree this well in reached area. */
    private static final double AGREED = 0.01;

    private Planner() {}

    /**
     * The plan of a scene.
     *
     * @throws SceneException PLN-001 if no wand of the scene goes in, and as a run does
     */
    public static PlanResult plan(Scene stated, PlanOptions options, RunOptions run, RunObserver observer) {
        refuseNothing(stated);
        DoseMatrix matrix = DoseMatrices.of(stated, options.dose(), options.store(), run, observer);
        if (matrix.lines().isEmpty()) {
            throw new SceneException(
                    "PLN-001",
                    SourcePlace.of(stated.file()),
                    "no wand of the scene goes in at one of its entries, so there is nothing to plan with; `baymist reach` says what keeps"
                            + " them out");
        }
        PlanLimits limits = limits(stated, matrix, options);
        Scene coarse = matrix.scene();
        PlanScore own = coarse.passes().isEmpty() ? null : score(Simulation.run(coarse, run, observer), coarse, matrix);
        double hangS = PlanPasses.hangS(stated);
        Patches patches = Patches.of(matrix.grid());
        List<PlanResult.Round> rounds = new ArrayList<>();
        List<List<Stroke>> tried = new ArrayList<>();
        List<Stroke> best = List.of();
        PlanScore predicted = new PlanScore(0, 0, 0);
        PlanScore checked = new PlanScore(0, 0, 0);
        DoseMatrix now = matrix;
        for (int i = 0; i < options.rounds(); i++) {
            observer.stage("plan, round " + (i + 1));
            PlanSearch search = new PlanSearch(now, limits);
            List<List<Stroke>> beginnings = new ArrayList<>(search.wholeLines());
            beginnings.add(search.strokes(
                    ShortfallProgram.solve(now, patches, limits.triggerS(), limits.slowestMPerS())));
            if (!best.isEmpty()) {
                beginnings.add(best);
            }
            List<Stroke> plan = search.best(beginnings);
            if (plan.isEmpty() || tried.contains(plan)) {
                break;
            }
            tried.add(plan);
            Scene planned = coarse.withPasses(PlanPasses.of(now, plan, hangS));
            RunResult found = Simulation.run(planned, run, observer);
            PlanScore says = now.score(plan);
            PlanScore is = score(found, planned, matrix);
            rounds.add(new PlanResult.Round(says, is));
            if (best.isEmpty() || is.worth(limits.triggerS()) > checked.worth(limits.triggerS())) {
                best = plan;
                predicted = says;
                checked = is;
            }
            if (Math.abs(says.reached() - is.reached()) < AGREED) {
                break;
            }
            now = now.corrected(correction(now, patches, plan, found));
        }
        boolean keepOwn = own != null && own.worth(limits.triggerS()) > checked.worth(limits.triggerS());
        List<PassSpec> passes = keepOwn ? stated.passes() : PlanPasses.of(matrix, best, hangS);
        Scene planned = stated.withPasses(passes);
        RunResult verified = options.full() && !passes.isEmpty() ? Simulation.run(planned, run, observer) : null;
        HandsResult hands = keepOwn || best.isEmpty() ? null : Hands.study(now, best);
        return new PlanResult(
                stated,
                planned,
                matrix,
                keepOwn ? List.of() : best,
                limits,
                keepOwn && own != null ? own : predicted,
                rounds,
                keepOwn && own != null ? own : checked,
                own,
                keepOwn,
                verified,
                hands);
    }

    private static void refuseNothing(Scene scene) {
        if (scene.wands().isEmpty() || scene.entries().isEmpty()) {
            throw new SceneException(
                    "PLN-002",
                    SourcePlace.of(scene.file()),
                    "a plan needs at least one wand in `wands` and one entry in `entries`; the scene has "
                            + scene.wands().size() + " and " + scene.entries().size());
        }
    }

    private static PlanLimits limits(Scene scene, DoseMatrix matrix, PlanOptions options) {
        double trigger = options.triggerS();
        if (Double.isNaN(trigger)) {
            trigger = scene.passes().isEmpty() ? byArea(matrix) : triggerS(scene, matrix);
        }
        return new PlanLimits(
                PlanLimits.SLOWEST_M_PER_S, PlanLimits.FASTEST_M_PER_S, trigger, options.passes());
    }

    private static double byArea(DoseMatrix matrix) {
        SurfelSet s = matrix.grid().surfels();
        double area = 0;
        for (int i = 0; i < s.count(); i++) {
            area += s.isStructure(i) ? s.areaM2()[i] : 0;
        }
        double liquid = 0;
        for (int l = 0; l < matrix.lines().size(); l++) {
            for (int k = 0; k < matrix.lines().get(l).stations(); k++) {
                liquid = Math.max(liquid, matrix.sprayedKgPerS(l, k));
            }
        }
        Scene scene = matrix.scene();
        return TIMES_TARGET * area * scene.targets().buildM() * scene.product().densityKgPerM3() / Math.max(liquid, 1e-9);
    }

    /** Time with the trigger held in a scene's passes, s. */
    private static double triggerS(Scene scene, DoseMatrix matrix) {
        PassPlan plan = Stations.plan(
                scene, Approach.ways(scene, matrix.cavity()).insertions());
        return plan.stations().stream().mapToDouble(s -> s.durationS()).sum();
    }

    private static PlanScore score(RunResult run, Scene scene, DoseMatrix matrix) {
        Fractions all = run.coverage().total();
        return new PlanScore(all.reached(), all.protectedShare(), triggerS(scene, matrix));
    }

    /** What a run found over what the matrix said, patch by patch, as factors of the matrix's rows, [surfels]. */
    private static double[] correction(DoseMatrix matrix, Patches patches, List<Stroke> plan, RunResult found) {
        SurfelSet s = matrix.grid().surfels();
        double little = 0.5 * matrix.scene().targets().hazeM();
        double[] says = patches.means(matrix.filmM(plan), s);
        double[] is = patches.means(found.filmM(), s);
        double[] factor = new double[s.count()];
        for (int i = 0; i < factor.length; i++) {
            int p = patches.of()[i];
            double ratio = p < 0 ? 1 : (is[p] + little) / (Math.max(0, says[p]) + little);
            factor[i] = Math.max(1 / MOST_CORRECTION, Math.min(MOST_CORRECTION, ratio));
        }
        return factor;
    }

}
