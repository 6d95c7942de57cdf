package baymist.explain;

import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.problem.SimulationException;
import baymist.run.RunCancelledException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Runs changes side by side, each with one thread, and keeps what came out in the order of the changes. */
final class TrialRuns {
    private final Scene stated;
    private final Scene planning;
    private final Patch patch;
    private final PatchFilm before;
    private final RunOptions run;
    private final RunObserver observer;
    private final double seconds;
    private final long began;
    private final List<String> notRun = new ArrayList<>();
    private final List<Trial> done = new ArrayList<>();
    private int runs;
    private int ended;

    /** @param began wall clock at which the time limit of {@code seconds} began, ns */
    TrialRuns(
            Scene stated,
            Scene planning,
            Patch patch,
            PatchFilm before,
            RunOptions run,
            RunObserver observer,
            double seconds,
            long began) {
        this.stated = stated;
        this.planning = planning;
        this.patch = patch;
        this.before = before;
        this.run = run;
        this.observer = observer;
        this.seconds = seconds;
        this.began = began;
    }

    /** What became of one change: a remedy, or why it was not run. */
    private record Outcome(Trial trial, @Nullable Remedy remedy, String refused) {}

    /** Changes that could not be run, with the reason. */
    List<String> notRun() {
        return notRun;
    }

    int runs() {
        return runs;
    }

    /** All changes, each alone; {@code from} is the share of the work that is done before. */
    List<Remedy> all(List<Trial> trials, double from) {
        observer.stage("changes, one at a time");
        Outcome[] outcomes = new Outcome[trials.size()];
        try (Workers workers = new Workers(run.threads())) {
            workers.forEach(outcomes.length, i -> {
                outcomes[i] = one(trials.get(i));
                tell(trials.size(), from);
            });
        }
        return gather(List.of(outcomes));
    }

    private synchronized void tell(int all, double from) {
        ended++;
        observer.progress(Math.min(1, from + (1 - from) * ended / all), Double.NaN);
    }

    private Outcome one(Trial trial) {
        RunCancelledException.throwIf(observer.cancelled());
        if ((System.nanoTime() - began) * 1e-9 > seconds) {
            return new Outcome(trial, null, "the time limit had passed");
        }
        try {
            Scene changed = trial.on(planning);
            RunResult after = Simulation.run(changed, new RunOptions(1), new Stopping(observer));
            return new Outcome(
                    trial,
                    Remedy.of(trial, changed, trial.on(stated), before, patch.film(after, planning.targets())),
                    "");
        } catch (SceneException | SimulationException e) {
            String why = e instanceof SceneException s ? s.findings().get(0).text() : String.valueOf(e.getMessage());
            return new Outcome(trial, null, why);
        }
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

    /** The last resort where no single change holds: the two best together, then with the third. */
    List<Remedy> together(List<Remedy> ranked) {
        List<Remedy> all = new ArrayList<>(ranked);
        Trial sum = null;
        for (Remedy r : ranked.stream().filter(r -> r.gain() > 0).limit(3).toList()) {
            Trial t = done.stream()
                    .filter(d -> d.words().equals(r.change()))
                    .findFirst()
                    .orElseThrow();
            if (sum == null) {
                sum = t;
                continue;
            }
            sum = sum.and(t);
            observer.stage("changes together");
            List<Remedy> both = gather(List.of(one(sum)));
            all.addAll(both);
            if (both.stream().anyMatch(Remedy::holds)) {
                return all;
            }
        }
        return all;
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
