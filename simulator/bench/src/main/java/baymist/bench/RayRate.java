package baymist.bench;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.geom.Bvh;
import baymist.geom.Ray;
import baymist.geom.TriangleFilter;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import baymist.voxel.FaceWalk;
import baymist.voxel.VoxelGrid;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;

/**
 * Whole rays from random places of a cavity in random directions until they meet a wall: against the sheets through the tree, and from cell to cell
 * through the voxels. The same rays for both, best of some rounds; and how well the two agree. Run with a scene file (left out = a ribbed shell of a million triangles), a voxel
 * size in mm (0 = the scene's) and the number of threads.
 */
public final class RayRate {
    private static final int ROUNDS = 5;
    private static final int BLOCK = 4096;

    private RayRate() {}

    /**
     * What was measured.
     *
     * @param agree share of the rays that meet a sheet whose two walls lie within a voxel's diagonal of each other
     */
    record Rates(int triangles, int cells, double treePerS, double walkPerS, double agree) {
        double gain() {
            return walkPerS / treePerS;
        }
    }

    public static void main(String[] args) {
        double mm = args.length > 1 ? Double.parseDouble(args[1]) : 0;
        int threads = args.length > 2 ? Integer.parseInt(args[2]) : 1;
        Cavity cavity;
        VoxelSpec voxel;
        if (args.length > 0 && !args[0].equals("shell")) {
            Scene scene = SceneReader.read(Path.of(args[0]));
            cavity = CavityBuilder.build(scene);
            voxel = scene.voxel();
        } else {
            cavity = RibbedShell.cavity();
            voxel = VoxelizerBenchmark.VOXEL;
        }
        VoxelGrid grid = AirRate.grid(cavity, mm > 0 ? new VoxelSpec(1e-3 * mm, 1e-3 * mm, 1e-3 * mm) : voxel);
        try (Workers workers = new Workers(threads)) {
            Rates r = rates(cavity, grid, 200_000, workers);
            System.out.printf(
                    Locale.ROOT,
                    "%d triangles, %d cells, %d threads: tree %.2f M rays/s, voxels %.2f M rays/s, %.1f times; the walls agree within a voxel's diagonal for %.1f %% of the rays%n",
                    r.triangles(),
                    r.cells(),
                    threads,
                    1e-6 * r.treePerS(),
                    1e-6 * r.walkPerS(),
                    r.gain(),
                    100 * r.agree());
        }
    }

    static Rates rates(Cavity cavity, VoxelGrid grid, int rays, Workers workers) {
        double[] from = new double[6 * rays];
        Random random = new Random(7);
        for (int r = 0; r < rays; r++) {
            int c = random.nextInt(grid.cellCount());
            from[6 * r] = grid.origin().x()
                    + (grid.i(c) + random.nextDouble()) * grid.sizeM().x();
            from[6 * r + 1] = grid.origin().y()
                    + (grid.j(c) + random.nextDouble()) * grid.sizeM().y();
            from[6 * r + 2] = grid.origin().z()
                    + (grid.k(c) + random.nextDouble()) * grid.sizeM().z();
            double x = random.nextGaussian();
            double y = random.nextGaussian();
            double z = random.nextGaussian();
            double length = Math.sqrt(x * x + y * y + z * z);
            from[6 * r + 3] = x / length;
            from[6 * r + 4] = y / length;
            from[6 * r + 5] = z / length;
        }
        Bvh tree = Bvh.of(cavity.cutSheets());
        FaceWalk walk = FaceWalk.of(grid);
        double most = 10 * cavity.sheets().bounds().size().length();
        double[] bySheet = new double[rays];
        double[] byVoxel = new double[rays];
        double treePerS = best(workers, rays, (a, b) -> cast(tree, from, a, b, most, bySheet));
        double walkPerS = best(workers, rays, (a, b) -> walk(walk, from, a, b, most, byVoxel));
        int agree = 0;
        int met = 0;
        for (int r = 0; r < rays; r++) {
            met += bySheet[r] < most ? 1 : 0;
            agree += Math.abs(byVoxel[r] - bySheet[r]) <= grid.sizeM().length() ? 1 : 0;
        }
        return new Rates(
                cavity.cutSheets().triangleCount(), grid.cellCount(), treePerS, walkPerS, (double) agree / met);
    }

    private static void cast(Bvh tree, double[] from, int a, int b, double most, double[] into) {
        Ray ray = new Ray();
        for (int r = a; r < b; r++) {
            int p = 6 * r;
            ray.set(
                    new Vec3(from[p], from[p + 1], from[p + 2]),
                    new Vec3(from[p + 3], from[p + 4], from[p + 5]),
                    0,
                    most);
            into[r] = tree.closestHit(ray, TriangleFilter.ALL) ? ray.t() : most;
        }
    }

    private static void walk(FaceWalk walk, double[] from, int a, int b, double most, double[] into) {
        for (int r = a; r < b; r++) {
            int p = 6 * r;
            into[r] = walk.free(from[p], from[p + 1], from[p + 2], from[p + 3], from[p + 4], from[p + 5], most);
        }
    }

    private static double best(Workers workers, int rays, Workers.Block work) {
        double best = 0;
        for (int n = 0; n < ROUNDS; n++) {
            long start = Triad.clockNs(workers.threads());
            workers.forBlocks(rays, BLOCK, work);
            best = Math.max(best, rays / (1e-9 * (Triad.clockNs(workers.threads()) - start)));
        }
        return best;
    }
}
