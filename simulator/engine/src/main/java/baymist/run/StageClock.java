package baymist.run;

import java.util.LinkedHashMap;
import java.util.Map;

/** Tells the observer which stage begins and keeps the wall time of each for the record; times never steer the run. */
final class StageClock {
    private final RunObserver observer;
    private final Map<String, Double> seconds = new LinkedHashMap<>();
    private String current = "";
    private long since;

    StageClock(RunObserver observer) {
        this.observer = observer;
    }

    void begin(String stage) {
        end();
        RunCancelledException.throwIf(observer.cancelled());
        current = stage;
        since = System.nanoTime();
        observer.stage(stage);
    }

    private void end() {
        if (!current.isEmpty()) {
            seconds.merge(current, (System.nanoTime() - since) * 1e-9, Double::sum);
        }
    }

    /** Seconds by stage up to now, in the order of the stages. */
    Map<String, Double> seconds() {
        end();
        since = System.nanoTime();
        return new LinkedHashMap<>(seconds);
    }
}
