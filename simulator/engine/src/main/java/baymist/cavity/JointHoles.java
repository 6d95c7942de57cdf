package baymist.cavity;

import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Finds the place of a joint hole: where the tube's axis first meets an earlier tube on its way to the node, or as near to
 * that as the whole hole fits on the patch of wall that the two tubes share.
 */
final class JointHoles {
    /** Lines beside the axis that are tried: rings and lines on each. */
    private static final int RINGS = 16;

    private static final int AROUND = 16;
    private static final int RIM = 24;
    /** Room round the hole: a share of its radius, and a step off the wall, m. */
    private static final double ROOM = 1.02;

    private static final double OFF_M = 1e-6;
    /** Cosine below which a wall runs too steeply for a hole along the normal at its middle. */
    private static final double STEEP = 0.2;

    private final List<TubePrism> prisms;

    JointHoles(List<TubePrism> prisms) {
        this.prisms = prisms;
    }

    /** A hole in the wall of an earlier tube, its normal into that tube. */
    record Found(int landsOn, int face, PlacedOutline place) {}

    /**
     * The place nearest to the axis at which the hole fits, or null.
     *
     * @param start axis point at the far end; {@code inward} unit vector from there to the node
     * @param lengthM from the start to the node; only what is met beyond half of it counts
     */
    @Nullable
    Found find(int tube, Vec3 start, Vec3 inward, double lengthM, double diameterM) {
        Vec3 u = inward.anyPerpendicular();
        Vec3 v = inward.cross(u);
        double bore = prisms.get(tube).radiusM();
        for (int ring = 0; ring < RINGS; ring++) {
            double off = bore * ring / RINGS;
            for (int i = 0; i < (ring == 0 ? 1 : AROUND); i++) {
                double angle = 2 * Math.PI * i / AROUND;
                Vec3 from = start.plus(off * Math.cos(angle), u).plus(off * Math.sin(angle), v);
                Found found = onLine(tube, from, inward, lengthM, diameterM);
                if (found != null) {
                    return found;
                }
            }
        }
        return null;
    }

    /** Whether any earlier tube stands in the way of the axis near the node. */
    boolean meets(int tube, Vec3 start, Vec3 inward, double lengthM) {
        return landsOn(tube, start, inward, lengthM) >= 0;
    }

    private int landsOn(int tube, Vec3 start, Vec3 inward, double lengthM) {
        int landsOn = -1;
        double first = Double.POSITIVE_INFINITY;
        for (int k = 0; k < tube; k++) {
            double[] range = prisms.get(k).body().range(start, inward);
            boolean met = range[0] <= range[1] && range[0] > 0.5 * lengthM && range[0] < 1.5 * lengthM;
            if (met && range[0] < first) {
                first = range[0];
                landsOn = k;
            }
        }
        return landsOn;
    }

    private @Nullable Found onLine(int tube, Vec3 from, Vec3 inward, double lengthM, double diameterM) {
        int landsOn = landsOn(tube, from, inward, lengthM);
        if (landsOn < 0) {
            return null;
        }
        TubePrism wall = prisms.get(landsOn);
        Vec3 centre = from.plus(wall.body().range(from, inward)[0], inward);
        Vec3 out = wall.body().normalAt(centre);
        if (wall.faceOf(out) == TubePrism.WALL) {
            // square to the tube's own round wall, not to one of its flats
            out = wall.spoke(centre);
        }
        Vec3 lengthwise = inward.cross(out).length() > 0.1 ? inward : out.anyPerpendicular();
        PlacedOutline place = PlacedOutline.of(new Outline.Circle(diameterM / 2), centre, lengthwise, out.negate());
        for (int i = 0; i < RIM; i++) {
            double angle = 2 * Math.PI * i / RIM;
            double r = ROOM * diameterM / 2;
            if (!shared(tube, landsOn, place.point(r * Math.cos(angle), r * Math.sin(angle)), out)) {
                return null;
            }
        }
        return new Found(landsOn, wall.faceOf(out), place);
    }

    /** Whether the wall under a point of the rim has the tube's own air before it. */
    private boolean shared(int tube, int landsOn, Vec3 rim, Vec3 out) {
        TubePrism wall = prisms.get(landsOn);
        double[] range = wall.body().range(rim, out);
        if (range[0] > range[1]) {
            return false;
        }
        Vec3 on = rim.plus(range[1], out);
        Vec3 side = wall.body().normalAt(on);
        Vec3 before = on.plus(OFF_M, side);
        boolean sameFace = wall.faceOf(side) == wall.faceOf(out) && side.dot(out) > STEEP;
        boolean mine = sameFace && prisms.get(tube).body().contains(before, 0);
        for (int k = 0; k < tube && mine; k++) {
            mine = k == landsOn || !prisms.get(k).body().contains(before, 0);
        }
        return mine;
    }
}
