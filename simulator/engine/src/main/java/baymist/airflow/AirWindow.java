package baymist.airflow;

import baymist.access.Station;
import baymist.spray.SprayHits;
import org.jspecify.annotations.Nullable;

/**
 * One stretch of the job's timeline with a steady air field.
 *
 * @param startS job time at which it begins, s
 * @param durationS length, s, at least 0
 * @param hits what the jets do while the trigger is held, or null with the trigger off
 * @param openFraction [openings] open share of each opening, 0..1
 */
public record AirWindow(
        double startS, double durationS, @Nullable SprayHits hits, double[] openFraction) {
    public AirWindow {
        openFraction = openFraction.clone();
        if (!(durationS >= 0) || !Double.isFinite(startS) || !Double.isFinite(durationS)) {
            throw new IllegalArgumentException("window of " + durationS + " s at " + startS + " s");
        }
    }

    /** Trigger held at a station. */
    public static AirWindow spray(Station station, SprayHits hits, double[] openFraction) {
        return new AirWindow(station.startS(), station.durationS(), hits, openFraction);
    }

    /** Trigger off. */
    public static AirWindow quiet(double startS, double durationS, double[] openFraction) {
        return new AirWindow(startS, durationS, null, openFraction);
    }
}
