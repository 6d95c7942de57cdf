package baymist.explain;

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
import baymist.geom.Bvh;
import baymist.spray.SprayView;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The whole explanation: run, look, propose, run each change, judge. Read {@link #of} from top to bottom. */
public final class Explain {
    /** Share of the best change's gain from which one that drills nothing is recommended before it. */
    private static final double GOOD_ENOUGH = 0.5;

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
        Scene planning = planning(scene, run);
        RunHistory history = new RunHistory(Leg.of(observer, "the job as stated", 0, 0.1));
        long first = System.nanoTime();
        RunResult base = Simulation.run(planning, run, history);
        double firstS = (System.nanoTime() - first) * 1e-9;
        Patch patch = PatchFinder.find(base, options);
        PatchFilm film = patch.film(base, planning.targets());

        Situation at = situation(
                base, history, patch, options, run, Leg.of(observer, "looking about the region", 0.1, 0.05));
        List<Trial> trials = trials(at);
        int most = Math.min(trials.size(), options.runs());
        observer.note(Words.say(
                "%d changes will be run, one at a time, some %.0f s at the pace of the first run",
                most, most * firstS));
        Running running = new Running(planning, patch, film, run, observer, options, began);
        List<Remedy> remedies = running.all(trials.subList(0, most), 0.15, 0.85);
        if (remedies.stream().noneMatch(Remedy::holds)) {
            remedies = running.together(trials, remedies);
        }
        List<Remedy> ranked = ranked(remedies);
        CauseRule.Verdict verdict = new CauseRule(at).judge(ranked);
        return new Explanation(
                base,
                patch.region(),
                film,
                verdict.cause(),
                verdict.proved(),
                verdict.because(),
                FactTree.of(at),
                ranked,
                recommended(ranked),
                running.notRun,
                1 + running.runs,
                base.findings());
    }

    /** The same job at the resolution at which {@link #of} compares, for running its recommendation again. */
    public static Scene planning(Scene scene, RunOptions run) {
        CheckResult check = Simulation.check(scene, run, RunObserver.NONE);
        return Planning.scene(scene, check.grid());
    }

    private static Situation situation(
            RunResult base, RunHistory history, Patch patch, ExplainOptions options, RunOptions run, RunObserver observer) {
        Scene scene = base.scene();
        ReachResult reach = Simulation.reach(
                scene, new ReachOptions(List.of(), true, ReachOptions.WITHIN_M), run, observer);
        SprayView view = new SprayView(
                base.cavity(),
                new BvhTracer(Bvh.of(base.cavity().sheets())),
                scene.supply(),
                scene.product(),
                scene.ambient(),
                history.bins());
        double[] open = SightFacts.openAt(history);
        JetGuess guess = new JetGuess(patch, view, open, scene.product(), scene.targets().buildM());
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

    private static List<Remedy> ranked(List<Remedy> remedies) {
        return remedies.stream()
                .sorted(Comparator.comparing((Remedy r) -> !r.holds())
                        .thenComparing(r -> -r.gain())
                        .thenComparing(Remedy::kind))
                .toList();
    }

    private static @Nullable Remedy recommended(List<Remedy> ranked) {
        if (ranked.isEmpty() || !ranked.get(0).holds()) {
            return null;
        }
        Remedy best = ranked.get(0);
        return ranked.stream()
                .filter(r -> r.holds() && !r.kind().drills() && r.gain() >= GOOD_ENOUGH * best.gain())
                .findFirst()
                .orElse(best);
    }

    /** Runs changes and keeps count. */
    private static final class Running {
        private final Scene planning;
        private final Patch patch;
        private final PatchFilm before;
        private final RunOptions run;
        private final RunObserver observer;
        private final ExplainOptions options;
        private final long began;
        private final List<String> notRun = new ArrayList<>();
        private final List<Trial> done = new ArrayList<>();
        private int runs;

        Running(
                Scene planning,
                Patch patch,
                PatchFilm before,
                RunOptions run,
                RunObserver observer,
                ExplainOptions options,
                long began) {
            this.planning = planning;
            this.patch = patch;
            this.before = before;
            this.run = run;
            this.observer = observer;
            this.options = options;
            this.began = began;
        }

        List<Remedy> all(List<Trial> trials, double from, double share) {
            List<Remedy> remedies = new ArrayList<>();
            for (int t = 0; t < trials.size(); t++) {
                Trial trial = trials.get(t);
                if ((System.nanoTime() - began) * 1e-9 > options.seconds()) {
                    notRun.add(trial.words() + ": the time limit had passed");
                    continue;
                }
                String lead = "change " + (t + 1) + " of " + trials.size() + ", " + trial.kind().word();
                Leg leg = Leg.of(observer, lead, from + share * t / trials.size(), share / trials.size());
                Remedy remedy = one(trial, leg);
                if (remedy != null) {
                    remedies.add(remedy);
                }
            }
            return remedies;
        }

        private @Nullable Remedy one(Trial trial, RunObserver leg) {
            try {
                RunResult after = Simulation.run(trial.on(planning), run, leg);
                runs++;
                done.add(trial);
                return Remedy.of(trial, before, patch.film(after, planning.targets()));
            } catch (SceneException | SimulationException e) {
                notRun.add(trial.words() + ": " + e.getMessage());
                return null;
            }
        }

        /** The last resort where no single change holds: the two best together, then with the third. */
        List<Remedy> together(List<Trial> trials, List<Remedy> single) {
            List<Remedy> all = new ArrayList<>(single);
            List<Remedy> best = ranked(single).stream().filter(r -> r.gain() > 0).limit(3).toList();
            Trial sum = null;
            for (Remedy r : best) {
                Trial t = done.stream()
                        .filter(d -> d.words().equals(r.change()))
                        .findFirst()
                        .orElseThrow();
                sum = sum == null ? t : sum.and(t);
                if (sum == t) {
                    continue;
                }
                Remedy both = one(sum, Leg.of(observer, "changes together", 1, 0));
                if (both != null) {
                    all.add(both);
                    if (both.holds()) {
                        return all;
                    }
                }
            }
            return all;
        }
    }

    /** Tells the whole study's observer about one of its runs. */
    private record Leg(RunObserver whole, double from, double share) implements RunObserver {
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
