package baymist.access;

import baymist.geom.Vec3;
import java.util.List;

/**
 * A wand's body at rest in a cavity.
 *
 * @param centrelineM centre line from the plane of the entry to the tip, m, two points or more; a polyline
 * @param radiusM radius of the body about it, m
 * @param depthM length of wand inside, m: measured along the wand (the chords of a curved one are a little shorter)
 */
public record WandPose(List<Vec3> centrelineM, double radiusM, double depthM) {
    public WandPose {
        centrelineM = List.copyOf(centrelineM);
        if (centrelineM.size() < 2 || !(radiusM > 0)) {
            throw new IllegalArgumentException("a body has two points and a thickness");
        }
    }

    /** Where the tip is, m. */
    public Vec3 tipM() {
        return centrelineM.get(centrelineM.size() - 1);
    }

    /** Unit vector along the wand at its tip, going in. */
    public Vec3 tipAxis() {
        return tipM().minus(centrelineM.get(centrelineM.size() - 2)).unit();
    }
}
