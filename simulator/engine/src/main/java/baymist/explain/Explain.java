package baymist.explain;

import baymist.geom.Bvh;
import baymist.problem.SceneException;
import baymist.problem.SimulationException;
import baymist.run.BvhTracer;
import baymist.run.CheckResult;
import baymist.run.ReachOptions;
import baymist.run.ReachResult;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import baymist.spray.SprayView;
import baymist.study.Planning;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The whole explanation: run, look, propose, run each change, judge. Read {@link #of} from top to bottom. */
public final class Explain {
    /** Largest factor on the voxels of the scene. */
    private static final double COARSEST = 3;

    private static final int RAYS = 128;
    private static final int BINS = 4;
    /** Stations along the longest way through the structure. */
    private static final int STATIONS = 30;

    private Explain() {}

    /**
     * Explains why a place stays bare.
     *
     * @throws SceneException if the scene can't be built or sprayed as stated, or the place is not there (EXP-001 to EXP-003)
     * @throws SimulationException if the numbers of the first run go wrong
     * @throws baymist.run.RunCancelledException if the observer asks for it
     */
    public static Explanation of(Scene scene, ExplainOptions options, RunOptions run, RunObserver observer) {
        long began = System.nanoTime();
        observer.stage("looking at the scene");
        Scene planning = planning(scene, options, run);
        RunHistory history = new RunHistory(Leg.of(observer, "the job as stated", 0, 0.1));
        RunResult base = Simulation.run(planning, run, history);
        Patch patch = PatchFinder.find(base, options);

        Situation at =
                situation(base, history, patch, options, run, Leg.of(observer, "looking about the region", 0.1, 0.05));
        CauseRule rule = new CauseRule(at);
        TrialRuns running = new TrialRuns(scene, base, patch, options, run, observer, began);
        List<Remedy> ranked = new Search(running, rule.suspects(), options).of(trials(at));
        CauseRule.Verdict verdict = rule.judge(ranked);
        Remedy recommended = Choice.of(ranked);
        List<MaskAdvice> items = running.masks();
        return new Explanation(
                base,
                patch.region(),
                running.before(),
                verdict.cause(),
                verdict.proved(),
                verdict.fact(),
                told(verdict.by(), recommended),
                FactTree.of(at),
                ranked,
                recommended,
                recommended == null ? Needs.of(at, ranked) : List.of(),
                items,
                running.notRun(),
                1 + running.runs(),
                base.findings());
    }

    /** Of two changes of one kind that both prove the cause the one to begin with is told. */
    private static @Nullable Remedy told(@Nullable Remedy proof, @Nullable Remedy recommended) {
        boolean either = proof != null
                && recommended != null
                && recommended.kind() == proof.kind()
                && recommended.speaks()
                && recommended.before().byJets(recommended.after())
                        == proof.before().byJets(proof.after());
        return either ? recommended : proof;
    }

    /** The same job at the resolution at which {@link #of} compares, for running its recommendation again. */
    public static Scene planning(Scene scene, ExplainOptions options, RunOptions run) {
        CheckResult check = Simulation.check(scene, run, RunObserver.NONE);
        double voxels =
                Math.min(COARSEST, Math.max(1, Math.cbrt((double) check.grid().cellCount() / options.cells())));
        double span = check.cavity().sheets().bounds().size().length();
        double spacing = scene.stationSpacingM() > 0 ? scene.stationSpacingM() : 0.025;
        double stations = Math.min(8, Math.max(1, span / STATIONS / spacing));
        return new Planning(voxels, BINS, RAYS, stations).of(scene, check.cavity());
    }

    private static Situation situation(
            RunResult base,
            RunHistory history,
            Patch patch,
            ExplainOptions options,
            RunOptions run,
            RunObserver observer) {
        Scene scene = base.scene();
        ReachResult reach =
                Simulation.reach(scene, new ReachOptions(List.of(), true, ReachOptions.WITHIN_M), run, observer);
        SprayView view = new SprayView(
                base.cavity(),
                new BvhTracer(Bvh.of(base.cavity().sheets())),
                scene.supply(),
                scene.product(),
                scene.ambient(),
                history.bins());
        double[] open = SightFacts.openAt(history);
        JetGuess guess =
                new JetGuess(patch, view, open, scene.product(), scene.targets().buildM());
        List<WandSpec> hand = options.hand().stream()
                .filter(w -> w.kind() == WandSpec.Kind.STRAIGHT)
                .toList();
        return new Situation(
                base,
                history,
                reach,
                patch,
                AccessFacts.find(base, reach, patch),
                SightFacts.find(base, history, patch, view),
                FogFacts.find(base, history, patch),
                SupplyFacts.find(base, patch),
                guess,
                hand);
    }

    /** All changes worth a run, in the order of effort, what needs a drill last. */
    private static List<Trial> trials(Situation at) {
        List<Trial> all = new ArrayList<>();
        all.addAll(new HoleTrials(at).all());
        all.addAll(new JetTrials(at).all());
        all.addAll(new SupplyTrials(at).all());
        all.sort(Comparator.comparing((Trial t) -> t.kind()));
        return all;
    }

    /** Tells the whole study's observer about one of its runs. */
    record Leg(RunObserver whole, double from, double share) implements RunObserver {
        /** Tells the leg's name once; what goes on inside would be noise. */
        static Leg of(RunObserver whole, String name, double from, double share) {
            whole.stage(name);
            return new Leg(whole, from, share);
        }

        @Override
        public void stage(String name) {}

        @Override
        public void progress(double done, double jobTimeS) {
            whole.progress(Math.min(1, from + share * done), jobTimeS);
        }

        @Override
        public boolean cancelled() {
            return whole.cancelled();
        }
    }
}
