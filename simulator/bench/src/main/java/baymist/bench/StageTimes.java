package baymist.bench;

import baymist.run.RunMoment;
import baymist.run.RunObserver;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Keeps the time of each stage by the clock and in processor time of all threads, and when film first lay. */
final class StageTimes implements RunObserver {
    /**
     * A stretch of time.
     *
     * @param processorS processor time of all threads in it, s
     */
    record Stretch(String stage, Instant from, Instant to, double clockS, double processorS) {}

    private final List<Stretch> stretches = new ArrayList<>();
    private final long began = System.nanoTime();
    private final long beganProcessor = Triad.processorNs();
    private String current = "";
    private Instant since = Instant.now();
    private long sinceNs;
    private long sinceProcessorNs;
    private double filmS = Double.NaN;
    private double filmProcessorS = Double.NaN;

    /** Ends the stage before; an empty name begins none. */
    void begin(String stage) {
        long now = System.nanoTime();
        long processor = Triad.processorNs();
        if (!current.isEmpty()) {
            stretches.add(new Stretch(
                    current, since, Instant.now(), 1e-9 * (now - sinceNs), 1e-9 * (processor - sinceProcessorNs)));
        }
        current = stage;
        since = Instant.now();
        sinceNs = now;
        sinceProcessorNs = processor;
    }

    /** Everything up to now, in the order of time. */
    List<Stretch> end() {
        begin("");
        return List.copyOf(stretches);
    }

    /** Processor seconds by stage up to now. */
    Map<String, Double> processorS() {
        Map<String, Double> seconds = new LinkedHashMap<>();
        end().forEach(s -> seconds.merge(s.stage, s.processorS, Double::sum));
        return seconds;
    }

    /** From the beginning to the first film on any surface by the clock, s; not a number before. */
    double filmS() {
        return filmS;
    }

    /** The same in processor time, s. */
    double filmProcessorS() {
        return filmProcessorS;
    }

    /** From the beginning to now by the clock, s. */
    double clockS() {
        return 1e-9 * (System.nanoTime() - began);
    }

    /** The same in processor time, s. */
    double allProcessorS() {
        return 1e-9 * (Triad.processorNs() - beganProcessor);
    }

    @Override
    public void stage(String name) {
        begin(name);
    }

    @Override
    public void moment(RunMoment now) {
        if (Double.isNaN(filmS) && now.sprayedKg() > 0) {
            filmS = clockS();
            filmProcessorS = allProcessorS();
        }
    }

    @Override
    public void progress(double done, double jobTimeS) {}

    @Override
    public boolean cancelled() {
        return false;
    }
}
