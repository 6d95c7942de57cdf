package baymist.explain;

import baymist.coverage.ItemDose;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.problem.SimulationException;
import baymist.run.RunCancelledException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Runs changes side by side, each with one thread, and keeps what came out in the order of the changes. */
final class TrialRuns {
    /** Share of the work that is done before the first change. */
    private static final double STARTED = 0.15;
    /** Protected items that are looked at with and without a mask at most. */
    private static final int MASKS = 4;

    private final Scene stated;
    private final Scene planning;
    private final RunResult base;
    private final Patch patch;
    private final PatchFilm before;
    private final ExplainOptions options;
    private final RunOptions run;
    private final RunObserver observer;
    private final long began;
    private final double firstS;
    private final List<String> notRun = new ArrayList<>();
    private final List<Trial> done = new ArrayList<>();
    private int runs;
    private int ended;
    private int expected = 1;

    /** @param began wall clock at which the time limit of the options began, ns */
    TrialRuns(
            Scene stated,
            RunResult base,
            Patch patch,
            ExplainOptions options,
            RunOptions run,
            RunObserver observer,
            long began) {
        this.stated = stated;
        this.planning = base.scene();
        this.base = base;
        this.patch = patch;
        this.before = patch.film(base, planning.targets());
        this.options = options;
        this.run = run;
        this.observer = observer;
        this.began = began;
        this.firstS = base.record().secondsByStage().values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
    }

    /** What became of one change: a remedy, or why it was not run. */
    private record Outcome(Trial trial, @Nullable Remedy remedy, String refused) {}

    /** Film on the region as the job stands. */
    PatchFilm before() {
        return before;
    }

    /** Changes that could not be run, with the reason. */
    List<String> notRun() {
        return notRun;
    }

    int runs() {
        return runs;
    }

    /** Says before the first change how many there will be and how long they take. */
    void foretell(int first, int then) {
        expected = Math.max(1, first + then);
        observer.note(Words.say(
                "%d changes that the facts speak for will be run one at a time, some %s at the pace of the first run; if"
                        + " none of them is enough, up to %d others%s",
                first,
                Words.time(first * firstS),
                then,
                then > 0 ? ", some " + Words.time(then * firstS) + " more" : ""));
    }

    /** The change that a remedy came from. */
    Trial trialOf(Remedy r) {
        return done.stream()
                .filter(d -> d.words().equals(r.change()))
                .findFirst()
                .orElseThrow();
    }

    /** These changes, each in a run of its own. */
    List<Remedy> all(String stage, List<Trial> trials) {
        if (trials.isEmpty()) {
            return List.of();
        }
        observer.stage(stage);
        Outcome[] outcomes = new Outcome[trials.size()];
        try (Workers workers = new Workers(run.threads())) {
            workers.forEach(outcomes.length, i -> {
                outcomes[i] = one(trials.get(i));
                tell();
            });
        }
        return gather(List.of(outcomes));
    }

    /** Protected items whose mask is in question, each with it turned: on if it is off, off if it is on. */
    List<MaskAdvice> masks() {
        List<MaskAdvice> advice = new ArrayList<>();
        List<ItemDose> doses = MaskAdvice.all(base);
        List<ProtectedItem> items = planning.protectedItems();
        for (int i = 0; i < items.size(); i++) {
            if (MaskAdvice.isOpen(doses.get(i)) && advice.size() < MASKS && inTime()) {
                ProtectedItem item = items.get(i);
                List<ProtectedItem> turned = new ArrayList<>(items);
                turned.set(i, item.withMask(item.masked() ? ProtectedItem.Mask.NONE : ProtectedItem.Mask.BAG));
                observer.stage("the mask of '" + item.name() + "'");
                Scene scene = SceneEdit.of(planning).protectedItems(turned).done();
                advice.add(MaskAdvice.of(item, base, Simulation.film(scene, base, run, new Stopping(observer))));
                runs++;
            }
        }
        return advice;
    }

    private boolean inTime() {
        return (System.nanoTime() - began) * 1e-9 <= options.seconds();
    }

    private synchronized void tell() {
        ended++;
        observer.progress(Math.min(1, STARTED + (1 - STARTED) * ended / expected), Double.NaN);
    }

    private Outcome one(Trial trial) {
        RunCancelledException.throwIf(observer.cancelled());
        if (!inTime()) {
            return new Outcome(trial, null, "the time limit had passed");
        }
        try {
            Scene changed = trial.on(planning);
            RunResult after = Simulation.film(changed, base, run.withThreads(1), new Stopping(observer));
            return new Outcome(trial, remedy(trial, changed, after), "");
        } catch (SceneException | SimulationException e) {
            String why = e instanceof SceneException s ? s.findings().get(0).text() : String.valueOf(e.getMessage());
            return new Outcome(trial, null, why);
        }
    }

    private Remedy remedy(Trial trial, Scene changed, RunResult run) {
        PatchFilm after = patch.film(run, planning.targets());
        List<ItemDose> over = Cautions.newlyOver(base, run);
        double wholeBefore = base.coverage().total().reached();
        double wholeAfter = run.coverage().total().reached();
        return new Remedy(
                trial.kind(),
                trial.words(),
                trial.lines(),
                changed,
                trial.on(stated),
                before,
                after,
                before.holds(after, planning.targets().hazeM()),
                Cautions.of(trial.kind(), planning, changed, over, wholeBefore - wholeAfter),
                trial.single(),
                over.stream().map(ItemDose::name).toList(),
                wholeBefore,
                wholeAfter);
    }

    private List<Remedy> gather(List<Outcome> outcomes) {
        List<Remedy> remedies = new ArrayList<>();
        for (Outcome o : outcomes) {
            if (o.remedy() == null) {
                notRun.add(o.trial().words() + ": " + o.refused());
            } else {
                remedies.add(o.remedy());
                done.add(o.trial());
                runs++;
            }
        }
        return remedies;
    }

    /** Passes on nothing but the wish to stop. */
    private record Stopping(RunObserver whole) implements RunObserver {
        @Override
        public void stage(String name) {}

        @Override
        public void progress(double done, double jobTimeS) {}

        @Override
        public boolean cancelled() {
            return whole.cancelled();
        }
    }
}
