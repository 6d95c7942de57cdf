package baymist.run;

import baymist.access.Station;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of the job over which tip, air and openings stand still.
 *
 * @param startS job time at which it begins, s
 * @param durationS length, s
 * @param station the tip with the trigger held, or null while fog hangs
 * @param openFraction [openings] open share of each opening, 0..1
 */
record Moment(double startS, double durationS, @Nullable Station station, double[] openFraction) {
    double endS() {
        return startS + durationS;
    }
}
