package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.Part;
import baymist.cavity.PartKind;
import baymist.geom.Vec3;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SurfelSetTest {
    private static int reachable(SurfelSet q, int from) {
        boolean[] seen = new boolean[q.count()];
        int[] stack = new int[q.count()];
        int top = 0;
        int count = 0;
        stack[top++] = from;
        seen[from] = true;
        while (top > 0) {
            int s = stack[--top];
            count++;
            for (int i = q.neighbourStart()[s]; i < q.neighbourStart()[s + 1]; i++) {
                int n = q.neighbour()[i];
                if (!seen[n]) {
                    seen[n] = true;
                    stack[top++] = n;
                }
            }
        }
        return count;
    }

    @Test
    void neighboursAreMutualAscendingAndNeverAcrossASheet() {
        VoxelGrid grid = VoxelizerLawTest.voxels(VoxelFixtures.ribbedBox(0.5, 0.34, 0.143, 0.233, 0.05, 0.0016), 0.01);
        SurfelSet q = grid.surfels();
        for (int s = 0; s < q.count(); s++) {
            for (int i = q.neighbourStart()[s]; i < q.neighbourStart()[s + 1]; i++) {
                int n = q.neighbour()[i];
                assertNotEquals(s, n);
                assertTrue(i == q.neighbourStart()[s] || q.neighbour()[i - 1] < n);
                int back = Arrays.binarySearch(q.neighbour(), q.neighbourStart()[n], q.neighbourStart()[n + 1], s);
                assertTrue(back >= 0, s + " and " + n);
                assertEquals(grid.bayOfCell(q.cell()[s]), grid.bayOfCell(q.cell()[n]), "across the rib");
            }
        }
    }

    @Test
    void surfaceOfABallHangsTogether() {
        VoxelGrid grid = VoxelizerLawTest.voxels(
                VoxelFixtures.sphere(0.1, new Vec3(0.7, 0.1, 0.2), 64).cavity("ball"), 0.009);
        assertEquals(grid.surfels().count(), reachable(grid.surfels(), 0));
    }

    @Test
    void eachBayOfARibbedBoxHasOneConnectedSurface() {
        VoxelGrid grid = VoxelizerLawTest.voxels(VoxelFixtures.ribbedBox(0.5, 0.34, 0.143, 0.233, 0.05, 0), 0.01);
        SurfelSet q = grid.surfels();
        int[] inBay = new int[2];
        for (int s = 0; s < q.count(); s++) {
            inBay[grid.bayOfCell(q.cell()[s])]++;
        }
        assertEquals(inBay[grid.bayOfCell(q.cell()[0])], reachable(q, 0));
    }

    @Test
    void normalsOfABallPointAtItsCentre() {
        Vec3 centre = new Vec3(0.7, 0.1, 0.2);
        VoxelGrid grid =
                VoxelizerLawTest.voxels(VoxelFixtures.sphere(0.1, centre, 96).cavity("ball"), 0.01);
        SurfelSet q = grid.surfels();
        for (int s = 0; s < q.count(); s++) {
            Vec3 n = new Vec3(q.normalX()[s], q.normalY()[s], q.normalZ()[s]);
            Vec3 in = centre.minus(new Vec3(q.centreX()[s], q.centreY()[s], q.centreZ()[s]));
            assertEquals(1, n.length(), 1e-12);
            assertTrue(n.dot(in.unit()) > 0.97, "surfel " + s);
            assertEquals(0.1, in.length(), 0.002);
        }
    }

    @Test
    void locatorFindsTheNearestSurfelOfThePart() {
        Cavity cavity = VoxelFixtures.ribbedBox(0.5, 0.34, 0.143, 0.233, 0.05, 0.0016);
        VoxelGrid grid = VoxelizerLawTest.voxels(cavity, 0.01);
        SurfelLocator locator = SurfelLocator.of(grid, cavity);
        SurfelSet q = grid.surfels();
        Random random = new Random(5);
        for (int n = 0; n < 2000; n++) {
            int s = random.nextInt(q.count());
            Vec3 normal = new Vec3(q.normalX()[s], q.normalY()[s], q.normalZ()[s]);
            Vec3 p = new Vec3(q.centreX()[s], q.centreY()[s], q.centreZ()[s])
                    .plus(0.004 * random.nextDouble(), normal.anyPerpendicular());
            boolean closure = q.closure()[s] >= 0;
            int found = closure
                    ? locator.closureNear(p, q.closure()[s], normal)
                    : locator.surfelNear(p, q.part()[s], normal);
            double best = Double.POSITIVE_INFINITY;
            for (int t = 0; t < q.count(); t++) {
                boolean alike = q.closure()[t] == q.closure()[s] && (closure || q.part()[t] == q.part()[s]);
                double dot = q.normalX()[t] * normal.x() + q.normalY()[t] * normal.y() + q.normalZ()[t] * normal.z();
                if (alike && dot > 0) {
                    best = Math.min(best, gap(q, t, p));
                }
            }
            assertEquals(best, gap(q, found, p), 1e-15);
            int cell = locator.cellNear(p, normal);
            assertEquals(grid.bayOfCell(q.cell()[s]), grid.bayOfCell(cell), "air side of the sheet");
            assertTrue(grid.centre(cell).minus(p).dot(normal) > -1e-12);
        }
        assertEquals(-1, locator.surfelNear(new Vec3(5, 5, 5), 0, Vec3.X));
        assertEquals(-1, locator.cellNear(new Vec3(5, 5, 5), Vec3.X));
        assertEquals(-1, locator.closureNear(new Vec3(0.25, 0.1, 0.1), 1, Vec3.Z.negate()));
    }

    private static double gap(SurfelSet q, int s, Vec3 p) {
        return p.distance(new Vec3(q.centreX()[s], q.centreY()[s], q.centreZ()[s]));
    }

    @Test
    void flangeOnASkinIsSeenFromInsideAndTheSkinFromOutside() {
        for (int roofFirst = 0; roofFirst < 2; roofFirst++) {
            VoxelFixtures f = new VoxelFixtures();
            Vec3 high = new Vec3(0.3, 0.2, 0.1);
            int flange = -1;
            for (int d = roofFirst == 0 ? 0 : 5; roofFirst == 0 ? d < 6 : d >= 0; d += roofFirst == 0 ? 1 : -1) {
                f.parts.add(new Part("wall " + d, PartKind.SKIN, 0.001));
                f.wall(f.parts.size() - 1, Vec3.ZERO, high, d, p -> p);
                if (d == 3) {
                    flange = f.part("flange");
                    f.quad(
                            flange,
                            new Vec3(0.1, 0, 0.1),
                            new Vec3(0.1, 0.2, 0.1),
                            new Vec3(0.14, 0.2, 0.1),
                            new Vec3(0.14, 0, 0.1));
                }
            }
            VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("lap"), 0.01);
            double seen = 0;
            for (int s = 0; s < grid.surfels().count(); s++) {
                seen += grid.surfels().part()[s] == flange ? grid.surfels().areaM2()[s] : 0;
                assertTrue(grid.surfels().areaM2()[s] < 1.01e-4, "no surfel takes its covered neighbour's area");
            }
            // the flange's free side; its contact face and the skin under it are inside, but no air touches them
            assertEquals(0.04 * 0.2, seen, 1e-12);
            assertEquals(2 * 0.04 * 0.2, grid.unresolvedAreaM2(), 1e-12);
        }
    }

    @Test
    void cellNearTakesTheSideOfASheetThroughCentres() {
        // 10 mm cells, rib at x = 0.245 m: exactly through the centres of its column
        Cavity cavity = VoxelFixtures.ribbedBox(0.5, 0.34, 0.14, 0.245, 0.05, 0);
        VoxelGrid grid = VoxelizerLawTest.voxels(cavity, 0.01);
        SurfelLocator locator = SurfelLocator.of(grid, cavity);
        Vec3 p = new Vec3(0.245, 0.03, 0.02);
        assertEquals(0, grid.bayOfCell(locator.cellNear(p, Vec3.X.negate())));
        assertEquals(1, grid.bayOfCell(locator.cellNear(p, Vec3.X)));
        assertEquals(2, grid.bays().size());
        assertEquals(0.245 * 0.34 * 0.14, grid.bays().get(0).volumeM3(), 1e-9);
    }
}
