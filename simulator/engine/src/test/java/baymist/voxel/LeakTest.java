package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.scene.VoxelSpec;
import org.junit.jupiter.api.Test;

class LeakTest {
    private static final Vec3 HIGH = new Vec3(0.3, 0.2, 0.1);

    private static String failure(Cavity cavity, VoxelSpec spec) {
        try (Workers workers = new Workers(1)) {
            SceneException e = assertThrows(SceneException.class, () -> Voxelizer.voxelize(cavity, spec, workers));
            return e.findings().get(0).id() + " " + e.getMessage();
        }
    }

    private static VoxelSpec cubes(double h) {
        return new VoxelSpec(h, h, h);
    }

    /** A box whose roof ends 30 mm short of the aft wall. */
    private static VoxelFixtures shortRoof() {
        VoxelFixtures f = new VoxelFixtures();
        String[] names = {"fore wall", "aft wall", "left wall", "right wall", "floor"};
        for (int d = 0; d < 5; d++) {
            f.wall(f.part(names[d]), Vec3.ZERO, HIGH, d, p -> p);
        }
        f.wall(f.part("roof"), Vec3.ZERO, new Vec3(0.27, 0.2, 0.1), 5, p -> p);
        return f;
    }

    @Test
    void openBoxIsRefusedWithThePlaceWhereAirComesIn() {
        String message = failure(shortRoof().cavity("short roof"), cubes(0.01));
        assertTrue(message.startsWith("VOX-001"), message);
        assertTrue(message.contains("near ") && message.contains("aft wall") && message.contains("roof"), message);
        assertTrue(message.matches("(?s).*comes in at \\(2[789]\\d, \\d+, \\d+\\) mm.*"), message);
    }

    @Test
    void everyGapIsNamed() {
        VoxelFixtures f = new VoxelFixtures();
        for (int d = 0; d < 4; d++) {
            f.wall(f.part("wall " + d), Vec3.ZERO, HIGH, d, p -> p);
        }
        f.wall(f.part("floor"), new Vec3(0.03, 0, 0), HIGH, 4, p -> p);
        f.wall(f.part("roof"), Vec3.ZERO, new Vec3(0.27, 0.2, 0.1), 5, p -> p);
        String message = failure(f.cavity("two gaps"), cubes(0.01));
        assertTrue(message.contains("floor") && message.contains("roof"), message);
        assertTrue(message.contains(", and at "), message);
    }

    @Test
    void insidePointInTheOpenIsRefused() {
        VoxelFixtures f = new VoxelFixtures();
        f.box("box", Vec3.ZERO, HIGH, false, p -> p);
        f.wall(f.part("flag"), Vec3.ZERO, new Vec3(0.5, 0.2, 0.1), 1, p -> p);
        f.inside = new Vec3(0.4, 0.1, 0.05);
        String message = failure(f.cavity("outside point"), cubes(0.01));
        assertTrue(message.contains("VOX-001") && message.contains("(400, 100, 50) mm"), message);
    }

    @Test
    void plateAloneEnclosesNothing() {
        VoxelFixtures f = new VoxelFixtures();
        f.wall(f.part("plate"), Vec3.ZERO, HIGH, 4, p -> p);
        assertTrue(failure(f.cavity("plate"), VoxelSpec.AUTO).startsWith("VOX-001"));
    }

    @Test
    void badVoxelSizesAreRefused() {
        Cavity box = VoxelFixtures.plainBox(1, 1, 1);
        assertTrue(failure(box, cubes(0.0001)).startsWith("VOX-003"));
        assertTrue(failure(box, new VoxelSpec(-1, 0, 0)).startsWith("VOX-004"));
        assertTrue(failure(box, new VoxelSpec(0, Double.NaN, 0)).startsWith("VOX-004"));
    }

    @Test
    void openingInASheetThatNoFaceResolvesIsRefusedIfItLeadsOutsideElseReported() {
        for (boolean exterior : new boolean[] {true, false}) {
            VoxelFixtures f = new VoxelFixtures();
            f.box("box", Vec3.ZERO, HIGH, false, p -> p);
            int clip = f.part("clip");
            Vec3 corner = new Vec3(0.101, 0.101, 0.051);
            f.triangle(clip, corner, corner.plus(0.001, Vec3.X), corner.plus(0.001, Vec3.Y));
            f.opening(
                    "eye",
                    clip,
                    Opening.Kind.HOLE,
                    exterior,
                    PlacedOutline.of(new Outline.Circle(0.0001), new Vec3(0.1012, 0.1012, 0.051), Vec3.X, Vec3.Z));
            if (exterior) {
                String message = failure(f.cavity("clip"), cubes(0.01));
                assertTrue(
                        message.startsWith("VOX-002") && message.contains("eye") && message.contains("clip"), message);
            } else {
                VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("clip"), 0.01);
                assertTrue(grid.leaks().get(0).where().contains("too thin"));
                // both sides of the clip are inside, and no voxel face sees them
                assertEquals(1e-6, grid.unresolvedAreaM2(), 1e-15);
            }
        }
    }

    @Test
    void internalHoleIntoAnOpenBayIsReportedAsALeak() {
        // bay 1 closed; bay 2 lacks its roof, so the hole in the rib leads outside
        VoxelFixtures f = new VoxelFixtures();
        for (int d = 0; d < 5; d++) {
            f.wall(f.part("wall " + d), Vec3.ZERO, HIGH, d, p -> p);
        }
        f.wall(f.part("roof"), Vec3.ZERO, new Vec3(0.15, 0.2, 0.1), 5, p -> p);
        int rib = f.part("rib");
        f.wall(rib, Vec3.ZERO, new Vec3(0.15, 0.2, 0.1), 1, p -> p);
        f.opening(
                "rib hole",
                rib,
                Opening.Kind.HOLE,
                false,
                PlacedOutline.of(new Outline.Circle(0.02), new Vec3(0.15, 0.1, 0.05), Vec3.Y, Vec3.X));
        VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("open bay"), 0.01);
        assertEquals(1, grid.leaks().size());
        assertTrue(grid.leaks().get(0).where().contains("rib hole"));
        assertEquals(0.15, grid.leaks().get(0).positionM().x(), 1e-9);
        assertEquals(0.15 * 0.2 * 0.1, grid.totalVolumeM3(), 1e-9);
        assertTrue(grid.faces().vents() > 0);
    }

    @Test
    void openingWithOutsideAirOnBothSidesIsReported() {
        VoxelFixtures f = new VoxelFixtures();
        f.box("box", Vec3.ZERO, HIGH, false, p -> p);
        int fin = f.part("fin");
        f.quad(fin, new Vec3(0.1, 0, 0.1), new Vec3(0.2, 0, 0.1), new Vec3(0.2, 0, 0.2), new Vec3(0.1, 0, 0.2));
        f.opening(
                "eye",
                fin,
                Opening.Kind.PORT,
                true,
                PlacedOutline.of(new Outline.Circle(0.02), new Vec3(0.15, 0, 0.15), Vec3.X, Vec3.Y));
        f.closeWithOutline(0);
        // the fin must lie within the lattice, not on its bound
        f.quad(
                f.part("far"),
                new Vec3(0, -0.1, 0.1),
                new Vec3(0.1, -0.1, 0.1),
                new Vec3(0.1, -0.1, 0.2),
                new Vec3(0, -0.1, 0.2));
        VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("fin"), 0.01);
        assertFalse(grid.leaks().isEmpty());
        assertTrue(grid.leaks().get(0).where().contains("eye"));
        assertEquals(0.006, grid.totalVolumeM3(), 1e-9);
        assertEquals(0, VoxelizerLawTest.surfelArea(grid, true));
        // neither fin nor far plate is interior surface
        double area = 2 * (0.06 + 0.03 + 0.02);
        assertEquals(area, VoxelizerLawTest.surfelArea(grid, false) + grid.unresolvedAreaM2(), 1e-9);
    }

    @Test
    void onlyWhatConnectsToTheInsidePointIsKept() {
        VoxelFixtures f = new VoxelFixtures();
        f.box("one", Vec3.ZERO, HIGH, false, p -> p);
        f.box("two", new Vec3(0.4, 0, 0), new Vec3(0.6, 0.2, 0.1), false, p -> p);
        f.inside = new Vec3(0.5, 0.1, 0.05);
        VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("two boxes"), 0.01);
        assertEquals(0.2 * 0.2 * 0.1, grid.totalVolumeM3(), 1e-12);
        assertEquals(2 * (0.04 + 0.02 + 0.02), VoxelizerLawTest.surfelArea(grid, false), 1e-12);
        f.inside = null;
        assertEquals(
                2, VoxelizerLawTest.voxels(f.cavity("two boxes"), 0.01).bays().size());
    }
}
