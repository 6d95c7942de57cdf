package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OpeningFacesTest {
    private static final double INCH = 0.0254;

    private static double openArea(VoxelGrid grid, int opening) {
        double sum = 0;
        for (int e = 0; e < grid.faces().count(); e++) {
            sum += grid.faces().opening()[e] == opening ? grid.faces().areaM2()[e] : 0;
        }
        return sum;
    }

    private static double ventArea(VoxelGrid grid, int opening) {
        double sum = 0;
        for (int e = 0; e < grid.faces().vents(); e++) {
            sum += grid.faces().ventOpening()[e] == opening ? grid.faces().ventAreaM2()[e] : 0;
        }
        return sum;
    }

    @Test
    void numberThirtyDrillHoleIsAVentOfItsExactArea() {
        // ASME B94.11M: No. 30 drill is 0.1285 in (check value GE-01), 3.2639 mm (GE-02): 8.367 mm² (pi/4 d²)
        double diameter = 0.1285 * INCH;
        assertEquals(3.2639e-3, diameter, 1e-7);
        VoxelGrid grid =
                VoxelizerLawTest.voxels(VoxelFixtures.ribbedBox(0.5, 0.34, 0.143, 0.25, 0.05, diameter / 2), 0.01);
        double exact = Math.PI / 4 * diameter * diameter;
        assertEquals(8.367e-6, exact, 1e-9);
        assertEquals(exact, ventArea(grid, 1), 1e-12 * exact);
        assertEquals(0, openArea(grid, 1));
        FaceSet f = grid.faces();
        assertEquals(-1, f.ventSign()[0]);
        assertEquals(2, f.ventAxis()[0]);
        assertEquals(1, grid.k(f.ventCell()[0]));
        assertEquals(2 * 0 + exact, closureArea(grid, 1), 1e-12);
    }

    private static double closureArea(VoxelGrid grid, int opening) {
        double sum = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            sum += grid.surfels().closure()[s] == opening ? grid.surfels().areaM2()[s] : 0;
        }
        return sum;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.0015, 0.1})
    void overlapsAddUpToTheShadowWhateverTheSizeOfTheHole(double radius) {
        // a tilted circle's shadow is an ellipse of area pi r^2 cos(tilt)
        Vec3 n = new Vec3(0.3, -0.2, 0.9).unit();
        PlacedOutline place =
                PlacedOutline.of(new Outline.Circle(radius), new Vec3(0.2013, 0.1571, 0.07), n.anyPerpendicular(), n);
        Opening opening =
                new Opening("hole", 0, Opening.Kind.HOLE, place, baymist.scene.PhaseStates.ALWAYS_OPEN, false);
        Cavity box = VoxelFixtures.plainBox(0.5, 0.34, 0.143);
        Lattice lattice = Voxelizer.lattice(box, new baymist.scene.VoxelSpec(0.01, 0.01, 0.01));
        OpeningFootprint foot = new OpeningFootprint(opening, lattice);
        double sum = 0;
        for (int c = foot.firstC; c <= foot.lastC; c++) {
            for (int b = foot.firstB; b <= foot.lastB; b++) {
                sum += foot.overlapM2(b, c);
            }
        }
        double shadow = Math.PI * radius * radius * n.z();
        assertEquals(shadow, sum, 1e-12 * shadow);
        assertEquals(2, foot.axis);
    }

    @Test
    void nonConvexOutlineIsClippedExactly() {
        // an L of 3 squares of 20 mm: 1200 mm²
        List<double[]> ell = List.of(
                new double[] {-0.02, -0.02},
                new double[] {0.02, -0.02},
                new double[] {0.02, 0},
                new double[] {0, 0},
                new double[] {0, 0.02},
                new double[] {-0.02, 0.02});
        VoxelFixtures f = new VoxelFixtures();
        f.box("box", Vec3.ZERO, new Vec3(0.2, 0.2, 0.1), false, p -> p);
        Vec3 at = new Vec3(0.1033, 0.0971, 0.1);
        f.opening(
                "ell",
                5,
                Opening.Kind.PORT,
                true,
                PlacedOutline.of(new Outline.Polygon(ell), at, Vec3.X, Vec3.Z.negate()));
        VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("ell"), 0.007);
        assertEquals(1.2e-3, ventArea(grid, 0), 1e-15);
        FaceSet faces = grid.faces();
        for (int e = 0; e < faces.vents(); e++) {
            assertTrue(faces.ventAreaM2()[e] <= grid.sizeM().x() * grid.sizeM().y() * (1 + 1e-12));
        }
    }

    @Test
    void lighteningHoleJoinsTheTwoBaysAndEntriesAreSorted() {
        double r = 0.05;
        VoxelGrid grid = VoxelizerLawTest.voxels(VoxelFixtures.ribbedBox(0.5, 0.34, 0.143, 0.25, r, 0), 0.01);
        assertEquals(Math.PI * r * r, openArea(grid, 0), 1e-12 * r * r);
        FaceSet f = grid.faces();
        for (int e = 1; e < f.count(); e++) {
            int order = Integer.compare(f.low()[e - 1], f.low()[e]);
            order = order != 0 ? order : Integer.compare(f.axis()[e - 1], f.axis()[e]);
            order = order != 0 ? order : Integer.compare(f.opening()[e - 1], f.opening()[e]);
            assertTrue(order < 0, "entries out of order at " + e);
        }
        for (int e = 0; e < f.count(); e++) {
            boolean crossesBays = grid.bayOfCell(f.low()[e]) != grid.bayOfCell(f.high()[e]);
            assertEquals(f.opening()[e] >= 0, crossesBays);
            assertEquals(f.opening()[e] >= 0 ? -1 : f.high()[e], grid.neighbour(f.low()[e], 2 * f.axis()[e] + 1));
        }
    }

    @Test
    void holeInATiltedSheetKeepsItsTrueFlowArea() {
        VoxelFixtures f = new VoxelFixtures();
        f.box("box", Vec3.ZERO, new Vec3(0.3, 0.2, 0.2), false, p -> p);
        int web = f.part("slanting web");
        f.quad(web, new Vec3(0.1, 0, 0), new Vec3(0.1, 0.2, 0), new Vec3(0.24, 0.2, 0.2), new Vec3(0.24, 0, 0.2));
        Vec3 n = new Vec3(-0.2, 0, 0.14).unit();
        f.opening(
                "hole",
                web,
                Opening.Kind.HOLE,
                false,
                PlacedOutline.of(new Outline.Slot(0.06, 0.03), new Vec3(0.17, 0.1, 0.1), Vec3.Y, n));
        VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("web"), 0.01);
        double exact = 0.03 * 0.03 + Math.PI * 0.015 * 0.015;
        assertEquals(exact, openArea(grid, 0), 1e-12 * exact);
        assertEquals(2, grid.bays().size());
        assertTrue(grid.leaks().isEmpty());
    }

    @Test
    void cappedGapIsAVentAndItsCapCanBeTaped() {
        // roof missing between x = 0.1 and 0.15 m; the strip is capped
        VoxelFixtures f = new VoxelFixtures();
        Vec3 high = new Vec3(0.3, 0.2, 0.1);
        for (int d = 0; d < 5; d++) {
            f.wall(f.part("wall " + d), Vec3.ZERO, high, d, p -> p);
        }
        int roof = f.part("roof");
        f.quad(roof, up(0, 0), up(0.1, 0), up(0.1, 0.2), up(0, 0.2));
        f.quad(roof, up(0.15, 0), up(0.3, 0), up(0.3, 0.2), up(0.15, 0.2));
        f.quad(-1, up(0.1, 0), up(0.15, 0), up(0.15, 0.2), up(0.1, 0.2));
        f.opening(
                "gap 1",
                roof,
                Opening.Kind.GAP,
                true,
                PlacedOutline.of(
                        new Outline.RoundedRectangle(0.2, 0.05, 0),
                        new Vec3(0.125, 0.1, 0.1),
                        Vec3.Y,
                        Vec3.Z.negate()));
        VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("gap"), 0.01);
        assertEquals(0.01, ventArea(grid, 0), 1e-14);
        assertEquals(0.01, closureArea(grid, 0), 1e-12);
        assertEquals(0.3 * 0.2 * 0.1, grid.totalVolumeM3(), 1e-12);
        double sheets = 2 * (0.06 + 0.03 + 0.02) - 0.01;
        assertEquals(sheets, VoxelizerLawTest.surfelArea(grid, false), 1e-12);
    }

    private static Vec3 up(double x, double y) {
        return new Vec3(x, y, 0.1);
    }

    @Test
    void holeAtTheVeryEdgeOfASheetIsMovedToTheNearestFaceNotLost() {
        // the hole's centre lies 0.2 mm from the side wall, so half of its footprint falls beyond the sheet
        VoxelFixtures f = new VoxelFixtures();
        f.box("box", Vec3.ZERO, new Vec3(0.3, 0.2, 0.1), false, p -> p);
        f.opening(
                "notch",
                5,
                Opening.Kind.PORT,
                true,
                PlacedOutline.of(new Outline.Circle(0.004), new Vec3(0.15, 0.0002, 0.1), Vec3.X, Vec3.Z.negate()));
        f.closeWithOutline(0);
        VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("notch"), 0.01);
        double exact = Math.PI * 0.004 * 0.004;
        assertEquals(exact, closureArea(grid, 0), 1e-12);
        assertEquals(exact, ventArea(grid, 0), 1e-12 * exact);
        assertTrue(grid.leaks().isEmpty());
    }
}
