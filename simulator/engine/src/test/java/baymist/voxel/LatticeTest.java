package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.scene.VoxelSpec;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LatticeTest {
    @Test
    void automaticPitchGivesTwelveCellsAcrossTheThinDirection() {
        int[] n = PitchRule.cells(new Vec3(1.5, 0.3, 0.05), VoxelSpec.AUTO, "flap");
        assertEquals(PitchRule.THIN_CELLS, n[2]);
        assertTrue((long) n[0] * n[1] * n[2] <= PitchRule.AUTO_LIMIT);
        assertArrayEquals(new int[] {40, 40, 40}, PitchRule.cells(new Vec3(1, 1, 1), VoxelSpec.AUTO, "cube"));
        int[] tube = PitchRule.cells(new Vec3(20, 0.01, 0.01), VoxelSpec.AUTO, "tube");
        assertTrue((long) tube[0] * tube[1] * tube[2] <= 1.01 * PitchRule.AUTO_LIMIT, tube[0] + " cells");
        assertEquals(PitchRule.THIN_CELLS, tube[1]);
    }

    @Test
    void wishedPitchIsSnappedToWholeCells() {
        assertArrayEquals(
                new int[] {50, 34, 14},
                PitchRule.cells(new Vec3(0.5, 0.34, 0.143), new VoxelSpec(0.01, 0.01, 0.01), "b"));
        int[] mixed = PitchRule.cells(new Vec3(0.5, 0.34, 0.143), new VoxelSpec(0, 0.01, 0), "b");
        assertEquals(34, mixed[1]);
        assertEquals(1, PitchRule.cells(new Vec3(0.5, 0.5, 0.5), new VoxelSpec(2, 2, 2), "b")[0]);
    }

    @Test
    void boundingPlanesAreLatticePlanes() {
        Box3 box = new Box3(new Vec3(0.1, -0.7, 3), new Vec3(0.7, -0.3, 3.1));
        Lattice lattice = new Lattice(box, new int[] {7, 3, 11});
        for (int a = 0; a < 3; a++) {
            assertEquals(box.min().get(a), lattice.plane(a, 1));
            assertEquals(box.max().get(a), lattice.plane(a, lattice.count(a) - 1));
            assertEquals(1, lattice.locate(a, box.min().get(a)));
            assertEquals(lattice.count(a) - 1, lattice.locate(a, box.max().get(a)));
            assertEquals(0, lattice.locate(a, -1e9));
        }
        assertTrue(lattice.inRing(lattice.index(0, 2, 2)));
        assertEquals(-1, lattice.faceKey(lattice.index(0, 2, 2), 0));
    }

    @Test
    void planeSideIsExactWhereDoublesAreNot() {
        // Shewchuk (1997): points near the line y = x at steps of 2^-53 fool plain doubles; here the sign must be the
        // sign of dy - dx whatever the step
        double u = Math.ulp(0.5);
        for (int i = -4; i <= 4; i++) {
            for (int j = -4; j <= 4; j++) {
                int expected = Integer.compare(j, i);
                assertEquals(expected, LatticePredicates.orient2(12, 12, 24, 24, 0.5 + i * u, 0.5 + j * u));
            }
        }
    }

    @Test
    void shiftDecidesWhatLiesExactlyOnAPlane() {
        // centre on the plane x = 1: the lattice is shifted towards +x, so the centre counts as beyond it
        double[] facingX = {1, 0, 0, 1, 5, 0, 1, 0, 5};
        assertEquals(1, LatticePredicates.side3(facingX, 1, 1, 1));
        double[] diagonal = {0, 0, 0, 0, 0, 9, 7, 7, 0};
        // normal (-63, 63, 0): the shift along x outweighs that along y
        assertEquals(-1, LatticePredicates.side3(diagonal, 3, 3, 3));
        double[] point = {1, 1, 1, 1, 1, 1, 1, 1, 1};
        assertEquals(0, LatticePredicates.side3(point, 1, 1, 1));
        assertEquals(0, LatticePredicates.side2(1, 2, 1, 2, 5, 5));
    }

    @Test
    void slicesOfATriangleAddUpToItsArea() {
        Lattice lattice = new Lattice(new Box3(Vec3.ZERO, new Vec3(1, 1, 1)), new int[] {9, 7, 5});
        TriangleSlicer slicer = new TriangleSlicer(lattice);
        Random random = new Random(3);
        for (int n = 0; n < 500; n++) {
            double[] t = random.doubles(9).toArray();
            if (n % 5 == 0) {
                t[2] = t[5] = t[8] = 0.4;
            }
            var mesh = VoxelFixtures.mesh(java.util.List.of(t));
            double[] sums = new double[4];
            slicer.slice(t, mesh.normal(0), (cell, area, x, y, z) -> {
                sums[0] += area;
                sums[1] += area * x;
                sums[2] += area * y;
                sums[3] += area * z;
                assertEquals(lattice.locate(0, x), lattice.at(cell, 0), 0);
            });
            assertEquals(mesh.areaM2(0), sums[0], 1e-12 * mesh.areaM2(0) + 1e-16);
            assertEquals(mesh.centroid(0).x(), sums[1] / sums[0], 1e-9);
            assertEquals(mesh.centroid(0).z(), sums[3] / sums[0], 1e-9);
        }
    }
}
