package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.geom.Bvh;
import baymist.geom.Ray;
import baymist.geom.TriangleFilter;
import baymist.geom.Vec3;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Rays from cell to cell, against closed forms and against the sheets. */
class FaceWalkTest {
    private static final SplittableRandom RANDOM = new SplittableRandom(11);

    private static double within(double low, double high) {
        return low + (high - low) * RANDOM.nextDouble();
    }

    private static Vec3 anyDirection() {
        return new Vec3(RANDOM.nextGaussian(), RANDOM.nextGaussian(), RANDOM.nextGaussian());
    }

    /** Distance at which a ray from inside leaves a box, by its three slabs. */
    private static double leaves(Vec3 box, Vec3 from, Vec3 way) {
        double least = Double.POSITIVE_INFINITY;
        for (int a = 0; a < 3; a++) {
            double d = way.get(a);
            if (d != 0) {
                least = Math.min(least, (d > 0 ? box.get(a) - from.get(a) : from.get(a)) / Math.abs(d));
            }
        }
        return least;
    }

    @Test
    void inABoxOfWholeCellsARayEndsAtTheBoxsWall() {
        // the lattice's walls coincide with the sheets, so the slabs' closed form is exact
        Vec3 size = new Vec3(0.5, 0.3, 0.2);
        FaceWalk walk = FaceWalk.of(VoxelizerLawTest.voxels(VoxelFixtures.plainBox(0.5, 0.3, 0.2), 0.01));
        for (int n = 0; n < 20_000; n++) {
            Vec3 from = new Vec3(within(0, 0.5), within(0, 0.3), within(0, 0.2));
            Vec3 way = anyDirection();
            double exact = leaves(size, from, way);
            assertEquals(exact, walk.free(from, way, 1e3), 1e-12 * (1 + exact));
            assertEquals(0.5 * exact, walk.free(from, way, 0.5 * exact), 1e-15);
        }
    }

    @Test
    void raysAlongTheAxesNeverLeaveTheirRow() {
        FaceWalk walk = FaceWalk.of(VoxelizerLawTest.voxels(VoxelFixtures.plainBox(0.5, 0.3, 0.2), 0.01));
        Vec3 from = new Vec3(0.123, 0.07, 0.1);
        assertEquals(0.377, walk.free(from, new Vec3(1, 0, 0), 9), 1e-12);
        assertEquals(0.123, walk.free(from, new Vec3(-1, 0, 0), 9), 1e-12);
        assertEquals(0.115, walk.free(from, new Vec3(0, 2, 0), 9), 1e-12);
        assertEquals(0.1, walk.free(from, new Vec3(0, 0, -1), 9), 1e-12);
        assertEquals(0, walk.free(new Vec3(-9, 0, 0), new Vec3(1, 0, 0), 9));
    }

    @Test
    void aRibStopsARayAndItsHoleLetsItThrough() {
        VoxelGrid grid = VoxelizerLawTest.voxels(VoxelFixtures.ribbedBox(0.5, 0.3, 0.2, 0.25, 0.05, 0.005), 0.01);
        FaceWalk walk = FaceWalk.of(grid);
        assertEquals(0.5 - 0.055, walk.free(new Vec3(0.055, 0.145, 0.105), new Vec3(1, 0, 0), 9), 1e-12);
        assertEquals(0.25 - 0.055, walk.free(new Vec3(0.055, 0.045, 0.105), new Vec3(1, 0, 0), 9), 1e-12);
        int before = grid.cellHolding(new Vec3(0.245, 0.145, 0.105));
        assertEquals(-1, grid.neighbour(before, 1), "the hole's face is no plain neighbour");
    }

    @Test
    void aSlantedWallIsMetWithinAVoxelsDiagonalByNearlyAllRays() {
        Cavity ball = VoxelFixtures.sphere(0.1, Vec3.ZERO, 64).cavity("ball");
        VoxelGrid grid = VoxelizerLawTest.voxels(ball, 0.005);
        FaceWalk walk = FaceWalk.of(grid);
        Bvh tree = Bvh.of(ball.sheets());
        Ray ray = new Ray();
        int near = 0;
        int rays = 5000;
        for (int n = 0; n < rays; n++) {
            Vec3 from = anyDirection().unit().times(within(0, 0.05));
            Vec3 way = anyDirection().unit();
            ray.set(from, way, 0, 1);
            assertTrue(tree.closestHit(ray, TriangleFilter.ALL));
            near += Math.abs(walk.free(from, way, 1) - ray.t()) <= grid.sizeM().length() ? 1 : 0;
        }
        assertTrue(near > 0.995 * rays, near + " of " + rays);
    }
}
