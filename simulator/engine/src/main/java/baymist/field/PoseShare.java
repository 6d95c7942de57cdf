package baymist.field;

import baymist.access.TipPose;
import baymist.geom.Vec3;
import baymist.scene.PassSpec;
import java.util.List;

/**
 * A tip pose that a wand reaches, and what the region gets from it.
 *
 * @param hold a pass that holds the tip there, for {@link PassSpec#holdS} (s)
 * @param pose where the tip is then
 * @param bodyM centre line of the wand then, from the entry to the tip, m
 * @param direct share of what is sprayed that jets throw on the region, 0..1
 * @param fog share that becomes fog and settles on it within the hanging time in frozen quiet air, 0..1
 * @param even how evenly it is spread, 0..1: the part of the region's target build that is there when its mean is the target, nothing counted
 *     beyond the target; fog is spread as an even fog would settle
 * @param sprayedKgPerS liquid leaving the tip, kg/s
 */
public record PoseShare(PassSpec hold, TipPose pose, List<Vec3> bodyM, double direct, double fog, double even, double sprayedKgPerS) {
    /** Both together. */
    public double share() {
        return direct + fog;
    }

    /** What poses are ranked by: {@code share * even}, the part that does not pile up. */
    public double useful() {
        return share() * even;
    }

    PoseShare holding(double holdS) {
        return new PoseShare(Holds.with(hold, hold.fromDepthM(), hold.clockRad(), holdS), pose, bodyM, direct, fog, even, sprayedKgPerS);
    }
}
