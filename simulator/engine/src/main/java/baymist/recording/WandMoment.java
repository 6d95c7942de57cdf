package baymist.recording;

import baymist.access.TipPose;
import baymist.geom.Vec3;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The wand at one time.
 *
 * @param spraying whether the trigger is held
 * @param pass index of the pass in the scene; -1 while fog hangs
 * @param depthM length of wand inside, m; NaN while fog hangs
 * @param tip where the tip is, or null while fog hangs
 * @param bodyM centre line from the plane of the entry to the tip, m, two points or more; empty while fog hangs
 * @param radiusM radius of the body, m
 * @param jets what leaves the tip
 */
public record WandMoment(
        boolean spraying,
        int pass,
        double depthM,
        @Nullable TipPose tip,
        List<Vec3> bodyM,
        double radiusM,
        List<Jet> jets) {
    /** No wand in the cavity. */
    public static final WandMoment OUT = new WandMoment(false, -1, Double.NaN, null, List.of(), 0, List.of());

    public WandMoment {
        bodyM = List.copyOf(bodyM);
        jets = List.copyOf(jets);
    }
}
