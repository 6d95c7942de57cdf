package baymist.surface;

import baymist.geom.Vec3;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/** Surfels of a part round a point, on one side of its sheet. */
final class SurfelFinder {
    private final VoxelGrid grid;
    private final SurfelSet surfels;
    /** Offsets into {@code inBin} by lattice cell that holds the centroid, [nx*ny*nz + 1]. */
    private final int[] binStart;

    private final int[] inBin;
    private int[] found = new int[64];
    private float[] weight = new float[64];
    private int count;

    SurfelFinder(VoxelGrid grid) {
        this.grid = grid;
        surfels = grid.surfels();
        binStart = new int[grid.nx() * grid.ny() * grid.nz() + 1];
        int[] bin = new int[surfels.count()];
        for (int s = 0; s < bin.length; s++) {
            int i = index(surfels.centreX()[s], 0);
            int j = index(surfels.centreY()[s], 1);
            int k = index(surfels.centreZ()[s], 2);
            bin[s] = i + grid.nx() * (j + grid.ny() * k);
            binStart[bin[s] + 1]++;
        }
        for (int b = 1; b < binStart.length; b++) {
            binStart[b] += binStart[b - 1];
        }
        inBin = new int[bin.length];
        int[] next = binStart.clone();
        for (int s = 0; s < bin.length; s++) {
            inBin[next[bin[s]]++] = s;
        }
    }

    private int index(double coordinate, int axis) {
        int n = axis == 0 ? grid.nx() : axis == 1 ? grid.ny() : grid.nz();
        double at = (coordinate - grid.origin().get(axis)) / grid.sizeM().get(axis);
        return Math.max(0, Math.min(n - 1, (int) Math.floor(at)));
    }

    /**
     * Nearest surfel of a part that looks the same way, or -1: each coordinate of its centroid within {@code reach} voxel sizes.
     * Of equally near ones the first.
     */
    int nearest(Vec3 p, int part, Vec3 normal, double reach) {
        Vec3 h = grid.sizeM();
        collect(p, part, -1, normal, reach * h.x(), reach * h.y(), reach * h.z());
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int n = 0; n < count; n++) {
            double d = centre(found[n]).distance(p);
            if (d < least || (d == least && found[n] < best)) {
                least = d;
                best = found[n];
            }
        }
        return best;
    }

    /**
     * Gathers the surfels round a vertex; weights (tent by distance along each axis, times area, times how far normals agree) sum to 1.
     *
     * @param bay only surfels that face this bay
     * @param radiusM half width of the tent along each axis, m
     * @return how many, 0 if there is none
     */
    int gather(Vec3 p, int part, int bay, Vec3 normal, Vec3 radiusM) {
        collect(p, part, bay, normal, radiusM.x(), radiusM.y(), radiusM.z());
        double sum = 0;
        for (int n = 0; n < count; n++) {
            sum += weight[n];
        }
        if (!(sum > 0)) {
            return 0;
        }
        for (int n = 0; n < count; n++) {
            weight[n] = (float) (weight[n] / sum);
        }
        return count;
    }

    int found(int n) {
        return found[n];
    }

    float weight(int n) {
        return weight[n];
    }

    int bay(int surfel) {
        return grid.bayOfCell(surfels.cell()[surfel]);
    }

    private void collect(Vec3 p, int part, int bay, Vec3 normal, double rx, double ry, double rz) {
        count = 0;
        for (int k = index(p.z() - rz, 2); k <= index(p.z() + rz, 2); k++) {
            for (int j = index(p.y() - ry, 1); j <= index(p.y() + ry, 1); j++) {
                int row = grid.nx() * (j + grid.ny() * k);
                int to = binStart[row + index(p.x() + rx, 0) + 1];
                for (int at = binStart[row + index(p.x() - rx, 0)]; at < to; at++) {
                    int s = inBin[at];
                    if (surfels.part()[s] == part && surfels.closure()[s] < 0 && (bay < 0 || bay(s) == bay)) {
                        take(s, p, normal, rx, ry, rz);
                    }
                }
            }
        }
    }

    private void take(int s, Vec3 p, Vec3 normal, double rx, double ry, double rz) {
        double agree = surfels.normalX()[s] * normal.x()
                + surfels.normalY()[s] * normal.y()
                + surfels.normalZ()[s] * normal.z();
        double x = 1 - Math.abs(surfels.centreX()[s] - p.x()) / rx;
        double y = 1 - Math.abs(surfels.centreY()[s] - p.y()) / ry;
        double z = 1 - Math.abs(surfels.centreZ()[s] - p.z()) / rz;
        if (agree > 0 && x >= 0 && y >= 0 && z >= 0) {
            if (count == found.length) {
                found = Arrays.copyOf(found, 2 * count);
                weight = Arrays.copyOf(weight, 2 * count);
            }
            found[count] = s;
            weight[count++] = (float) (agree * x * y * z * surfels.areaM2()[s]);
        }
    }

    private Vec3 centre(int s) {
        return new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]);
    }
}
