package baymist.viewer.model;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.voxel.Bay;
import java.util.BitSet;
import java.util.List;

/**
 * What of the structure is shown, and how: hidden parts, a plane that cuts it, bays drawn apart.
 *
 * @param boundsM box round the structure, m
 * @param bays bays of the job, in order
 * @param hidden parts that are not shown; copied, not to be written to
 * @param cutAxis axis that the cutting plane is square to (0 = x, 1 = y, 2 = z), -1 = no cut
 * @param cutShare where the plane stands along the box, 0..1
 * @param keepsLow whether the side of smaller coordinates stays
 * @param explode distance between bays beyond the real one, in lengths of the box along the row of bays, 0..1
 */
public record SceneModel(
        Box3 boundsM, List<Bay> bays, BitSet hidden, int cutAxis, double cutShare, boolean keepsLow, double explode) {
    public SceneModel {
        bays = List.copyOf(bays);
        hidden = (BitSet) hidden.clone();
        if (cutAxis < -1 || cutAxis > 2 || !(cutShare >= 0 && cutShare <= 1) || !(explode >= 0 && explode <= 1)) {
            throw new IllegalArgumentException("cut " + cutAxis + " at " + cutShare + ", explode " + explode);
        }
    }

    /** Everything shown as it is. */
    public static SceneModel of(Box3 boundsM, List<Bay> bays) {
        return new SceneModel(boundsM, bays, new BitSet(), -1, 0.5, true, 0);
    }

    public boolean shows(int part) {
        return !hidden.get(part);
    }

    public SceneModel withPart(int part, boolean shown) {
        BitSet other = (BitSet) hidden.clone();
        other.set(part, !shown);
        return new SceneModel(boundsM, bays, other, cutAxis, cutShare, keepsLow, explode);
    }

    public SceneModel withAllParts() {
        return new SceneModel(boundsM, bays, new BitSet(), cutAxis, cutShare, keepsLow, explode);
    }

    public SceneModel withCut(int axis, double share, boolean low) {
        return new SceneModel(boundsM, bays, hidden, axis, Math.max(0, Math.min(1, share)), low, explode);
    }

    public SceneModel withExplode(double other) {
        return new SceneModel(boundsM, bays, hidden, cutAxis, cutShare, keepsLow, Math.max(0, Math.min(1, other)));
    }

    /** Coordinate of the cutting plane on its axis, m; NaN without a cut. */
    public double cutM() {
        return cutAxis < 0
                ? Double.NaN
                : boundsM.min().get(cutAxis) + cutShare * boundsM.size().get(cutAxis);
    }

    /** Whether a point stays when the plane cuts. */
    public boolean keeps(Vec3 p) {
        return cutAxis < 0 || (keepsLow ? p.get(cutAxis) <= cutM() : p.get(cutAxis) >= cutM());
    }

    /** How far a bay is drawn from its place, m: along the axis on which the bays stand in a row, in their order there. */
    public Vec3 offsetM(int bay) {
        if (bay < 0 || explode == 0 || bays.size() < 2) {
            return Vec3.ZERO;
        }
        int axis = rowAxis();
        double rank = 0;
        for (int other = 0; other < bays.size(); other++) {
            double d = middle(other).get(axis) - middle(bay).get(axis);
            rank += d < 0 || (d == 0 && other < bay) ? 1 : 0;
        }
        double step = explode * boundsM.size().get(axis) / (bays.size() - 1);
        double off = step * (rank - 0.5 * (bays.size() - 1));
        return new Vec3(axis == 0 ? off : 0, axis == 1 ? off : 0, axis == 2 ? off : 0);
    }

    /** Axis along which the middles of the bays are farthest apart. */
    private int rowAxis() {
        Box3 box = Box3.EMPTY;
        for (int b = 0; b < bays.size(); b++) {
            box = box.including(middle(b));
        }
        Vec3 size = box.size();
        return size.x() >= size.y() && size.x() >= size.z() ? 0 : size.y() >= size.z() ? 1 : 2;
    }

    private Vec3 middle(int bay) {
        Box3 box = bays.get(bay).bounds();
        return box.min().plus(box.max()).times(0.5);
    }
}
