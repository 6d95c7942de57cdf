package baymist.access;

import baymist.geom.Box3;
import baymist.geom.Bvh;
import baymist.geom.Vec3;
import java.util.Arrays;

/**
 * Lower bound of the distance to the sheets, looked up instead of searched.
 *
 * <p>Exact distances stand on the nodes of a cubic lattice, each found when it is first asked for. A distance changes by no more than
 * the way gone, so at any point it is at least the node's value less the distance to the node. Values depend on the node alone, not on the
 * order of the questions. One thread at a time.
 */
final class DistanceField {
    private static final double LARGEST_NODES = 1.5e6;

    private final Bvh bvh;
    private final double lowX;
    private final double lowY;
    private final double lowZ;
    private final double pitchM;
    private final int nx;
    private final int ny;
    private final int nz;
    /** Exact distance at each node, m, NaN where not asked for yet, [nx * ny * nz], x fastest. */
    private final double[] distanceM;

    private long exactQueries;

    /** @param finestM pitch of the lattice, m; coarser where the box would need too many nodes */
    DistanceField(Bvh bvh, double finestM) {
        this.bvh = bvh;
        Box3 box = bvh.mesh().triangleCount() == 0
                ? Box3.EMPTY.including(Vec3.ZERO)
                : bvh.mesh().bounds();
        Vec3 size = box.max().minus(box.min());
        double pitch = finestM;
        while (nodes(size.x(), pitch) * nodes(size.y(), pitch) * nodes(size.z(), pitch) > LARGEST_NODES) {
            pitch *= 1.25;
        }
        pitchM = pitch;
        nx = (int) nodes(size.x(), pitch);
        ny = (int) nodes(size.y(), pitch);
        nz = (int) nodes(size.z(), pitch);
        lowX = box.min().x();
        lowY = box.min().y();
        lowZ = box.min().z();
        distanceM = new double[nx * ny * nz];
        Arrays.fill(distanceM, Double.NaN);
    }

    private static double nodes(double size, double pitch) {
        return Math.ceil(size / pitch) + 1;
    }

    /** A distance that the sheets at least have from the point, m; negative where nothing is known. */
    double atLeastM(Vec3 p) {
        double fx = (p.x() - lowX) / pitchM;
        double fy = (p.y() - lowY) / pitchM;
        double fz = (p.z() - lowZ) / pitchM;
        int ix = nearest(fx, nx);
        int iy = nearest(fy, ny);
        int iz = nearest(fz, nz);
        int node = ix + nx * (iy + ny * iz);
        double d = distanceM[node];
        if (Double.isNaN(d)) {
            exactQueries++;
            d = bvh.distanceBelow(lowX + ix * pitchM, lowY + iy * pitchM, lowZ + iz * pitchM, Double.POSITIVE_INFINITY);
            distanceM[node] = d;
        }
        double dx = fx - ix;
        double dy = fy - iy;
        double dz = fz - iz;
        return d - pitchM * Math.sqrt(dx * dx + dy * dy + dz * dz) * (1 + 1e-12) - 1e-12;
    }

    private static int nearest(double f, int n) {
        return (int) Math.max(0, Math.min(n - 1, Math.rint(f)));
    }

    /** Exact distances that were searched for the lattice. */
    long exactQueries() {
        return exactQueries;
    }
}
