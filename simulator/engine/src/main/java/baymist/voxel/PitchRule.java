package baymist.voxel;

import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.VoxelSpec;

/**
 * How many cells span the bounding box along each axis.
 *
 * <p>A wished size is rounded to the nearest whole number of cells. Axes without a wish get the cubic voxel that makes
 * {@value #USUAL_CELLS} cells of the bounding box, refined until at least {@value #THIN_CELLS} cells span each such axis
 * and no such voxel is longer than {@value #MAX_ASPECT} times the shortest; when that exceeds {@value #AUTO_LIMIT} cells,
 * the axes above {@value #THIN_CELLS} cells are coarsened again. ASSUMED figures: a bay with flow in it needs some ten
 * cells across, and 400 000 cells are what a workstation runs in minutes.
 */
final class PitchRule {
    static final int USUAL_CELLS = 64_000;
    static final int THIN_CELLS = 12;
    static final int MAX_ASPECT = 4;
    static final int AUTO_LIMIT = 400_000;
    /** Largest lattice that is accepted, cells with the ring round the bounding box: six sides of each must be numbered. Memory is {@code MemoryCheck}'s to refuse. */
    static final int HARD_LIMIT = 350_000_000;

    private PitchRule() {}

    /** Cells across the bounding box along x, y, z, each at least 1. */
    static int[] cells(Vec3 extentM, VoxelSpec wanted, String model) {
        double[] wish = {wanted.xM(), wanted.yM(), wanted.zM()};
        for (int a = 0; a < 3; a++) {
            if (!(wish[a] >= 0) || Double.isInfinite(wish[a])) {
                throw new SceneException(
                        "VOX-004",
                        new SourcePlace(model, 0, "voxel"),
                        "voxel size " + wish[a] + " m along " + "xyz".charAt(a)
                                + "; a positive length, or 0 for the choice from the geometry, would be right");
            }
        }
        double[] pitch = automatic(extentM, wish);
        int[] cells = new int[3];
        double total = 1;
        for (int a = 0; a < 3; a++) {
            double n = Math.max(1, Math.rint(extentM.get(a) / pitch[a]));
            total *= n + 2;
            cells[a] = (int) Math.min(n, Integer.MAX_VALUE);
        }
        if (total > HARD_LIMIT) {
            throw new SceneException(
                    "VOX-003",
                    new SourcePlace(model, 0, "voxel"),
                    String.format(
                            java.util.Locale.ROOT,
                            "the voxel size asks for %.3g cells, more than %d; voxels %.1f times as long would fit",
                            total,
                            HARD_LIMIT,
                            Math.cbrt(total / HARD_LIMIT)));
        }
        return cells;
    }

    private static double[] automatic(Vec3 extentM, double[] wish) {
        double cubic = Math.cbrt(extentM.x() * extentM.y() * extentM.z() / USUAL_CELLS);
        double[] pitch = new double[3];
        double shortest = Double.POSITIVE_INFINITY;
        for (int a = 0; a < 3; a++) {
            pitch[a] = wish[a] > 0 ? wish[a] : Math.min(cubic, extentM.get(a) / THIN_CELLS);
            shortest = Math.min(shortest, Math.min(pitch[a], extentM.get(a)));
        }
        double total = 1;
        for (int a = 0; a < 3; a++) {
            if (wish[a] == 0) {
                pitch[a] = Math.min(pitch[a], MAX_ASPECT * shortest);
            }
            total *= Math.max(1, extentM.get(a) / pitch[a]);
        }
        coarsen(extentM, wish, pitch, total);
        return pitch;
    }

    private static void coarsen(Vec3 extentM, double[] wish, double[] pitch, double total) {
        double over = total / AUTO_LIMIT;
        // at most three rounds: an axis that reaches the floor of cells hands the rest to the others
        for (int round = 0; round < 3 && over > 1; round++) {
            int free = 0;
            for (int a = 0; a < 3; a++) {
                free += wish[a] == 0 && pitch[a] < extentM.get(a) / THIN_CELLS ? 1 : 0;
            }
            if (free == 0) {
                return;
            }
            double factor = Math.pow(over, 1.0 / free);
            for (int a = 0; a < 3; a++) {
                if (wish[a] == 0 && pitch[a] < extentM.get(a) / THIN_CELLS) {
                    double longer = Math.min(pitch[a] * factor, extentM.get(a) / THIN_CELLS);
                    over /= longer / pitch[a];
                    pitch[a] = longer;
                }
            }
        }
    }
}
