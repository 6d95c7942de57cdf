package baymist.field;

import baymist.access.TipPose;
import baymist.scene.PassSpec;

/**
 * A tip pose that a wand reaches, and what the region gets from it.
 *
 * @param hold a pass that holds the tip there, for {@link PassSpec#holdS} (s)
 * @param pose where the tip is then
 * @param direct share of what is sprayed that jets throw on the region, 0..1
 * @param fog share that becomes fog and settles on it within the hanging time in frozen quiet air, 0..1
 * @param sprayedKgPerS liquid leaving the tip, kg/s
 */
public record PoseShare(PassSpec hold, TipPose pose, double direct, double fog, double sprayedKgPerS) {
    /** Both together. */
    public double share() {
        return direct + fog;
    }

    PoseShare holding(double holdS) {
        return new PoseShare(Holds.with(hold, hold.fromDepthM(), hold.clockRad(), holdS), pose, direct, fog, sprayedKgPerS);
    }
}
