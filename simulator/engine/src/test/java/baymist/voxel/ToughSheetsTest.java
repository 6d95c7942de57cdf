package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.cavity.Opening;
import baymist.geom.Bvh;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.VoxelSpec;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sheets that are hard on voxels: edges of three sheets, slivers, narrow gaps, crowded faces, any winding, thin edges. */
class ToughSheetsTest {
    private static double sheetArea(VoxelGrid grid) {
        return VoxelizerLawTest.surfelArea(grid, false) + grid.unresolvedAreaM2();
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void threeSheetsMeetingAtAnEdgeMakeThreeBays(boolean onePart) {
        // a hexagonal prism cut by three webs from its axis to every other corner: each bay holds a third
        double r = 0.12;
        double width = 0.2;
        List<double[]> ring = VoxelFixtures.circleSection(r, 6);
        for (int seed = 0; seed < 10; seed++) {
            double angle = 0.37 * seed;
            Vec3 shift = new Vec3(0.0013 * seed, 0.0007 * seed, -0.0011 * seed);
            VoxelFixtures f = VoxelFixtures.prismSheets(ring, width, p -> VoxelizerLawTest.turned(p, angle, shift));
            int webs = f.part("webs");
            for (int k = 0; k < 3; k++) {
                double[] c = ring.get(2 * k);
                int part = onePart || k == 0 ? webs : f.part("web " + k);
                Vec3[] q = {Vec3.ZERO, new Vec3(c[0], 0, c[1]), new Vec3(c[0], width, c[1]), new Vec3(0, width, 0)};
                for (int i = 0; i < 4; i++) {
                    q[i] = VoxelizerLawTest.turned(q[i], angle, shift);
                }
                f.quad(part, q[0], q[1], q[2], q[3]);
            }
            VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("three webs"), 0.01);
            double hexagon = 1.5 * Math.sqrt(3) * r * r;
            double area = 2 * hexagon + 6 * r * width + 2 * 3 * r * width;
            assertEquals(3, grid.bays().size(), "seed " + seed);
            assertEquals(area, sheetArea(grid), 1e-9 * area, "seed " + seed);
            assertTrue(grid.unresolvedAreaM2() < 0.01 * area, "unresolved " + grid.unresolvedAreaM2());
            assertEquals(hexagon * width, grid.totalVolumeM3(), 1e-3 * hexagon * width);
            for (Bay bay : grid.bays()) {
                assertEquals(hexagon * width / 3, bay.volumeM3(), 0.02 * hexagon * width / 3);
            }
        }
    }

    @Test
    void wallsOfSliversNeitherLeakNorLoseArea() {
        // every wall fanned from a corner to 400 points on the two far sides: triangles a hundred times as long as wide
        Vec3 high = new Vec3(0.31, 0.23, 0.17);
        VoxelFixtures f = new VoxelFixtures();
        for (int d = 0; d < 6; d++) {
            Vec3[] c = VoxelFixtures.wallCorners(Vec3.ZERO, high, d);
            int part = f.part("wall " + d);
            Vec3 last = c[1];
            for (int i = 1; i <= 400; i++) {
                double t = i / 200.0;
                Vec3 next = t <= 1
                        ? c[1].times(1 - t).plus(t, c[2])
                        : c[2].times(2 - t).plus(t - 1, c[3]);
                f.triangle(part, c[0], last, next);
                last = next;
            }
        }
        VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("slivers"), 0.01);
        double area = 2 * (0.31 * 0.23 + 0.23 * 0.17 + 0.17 * 0.31);
        assertEquals(area, sheetArea(grid), 1e-9 * area);
        assertEquals(0, grid.unresolvedAreaM2());
        assertEquals(0.31 * 0.23 * 0.17, grid.totalVolumeM3(), 1e-9 * 0.0121);
    }

    @Test
    void gapNarrowerThanAVoxelIsTheUnresolvedAreaOfItsTwoSidesWithItsWidth() {
        // a double wall 3 mm apart in voxels of 10 mm, between the centres of one column
        VoxelFixtures f = new VoxelFixtures();
        f.box("box", Vec3.ZERO, new Vec3(0.3, 0.2, 0.1), false, p -> p);
        int one = f.part("wall one");
        int two = f.part("wall two");
        for (double x : new double[] {0.1464, 0.1494}) {
            f.quad(
                    x < 0.147 ? one : two,
                    new Vec3(x, 0, 0),
                    new Vec3(x, 0.2, 0),
                    new Vec3(x, 0.2, 0.1),
                    new Vec3(x, 0, 0.1));
        }
        VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("double wall"), 0.01);
        double area = 2 * (0.06 + 0.02 + 0.03) + 4 * 0.02;
        assertEquals(area, sheetArea(grid), 1e-12);
        assertEquals(2 * 0.02, grid.unresolvedAreaM2(), 1e-12);
        assertEquals(2, grid.bays().size());
        for (UnresolvedArea u : grid.unresolved()) {
            assertEquals(UnresolvedArea.Cause.NARROW, u.cause());
            assertEquals(0, u.axis());
            assertEquals(0.003, u.spanM(), 1e-6);
            assertTrue(u.part() == one || u.part() == two);
        }
    }

    @Test
    void severalDrilledHolesInOneFaceKeepTheirOwnExactAreas() {
        // ASME B94.11M: No. 40 = 0.0980 in, No. 30 = 0.1285 in, No. 21 = 0.1590 in; all within one face of 20 mm
        double[] inches = {0.0980, 0.1285, 0.1590};
        for (int seed = 0; seed < 20; seed++) {
            Random random = new Random(seed);
            VoxelFixtures f = new VoxelFixtures();
            f.box("box", Vec3.ZERO, new Vec3(0.2, 0.2, 0.1), false, p -> p);
            for (int o = 0; o < 3; o++) {
                Vec3 at = new Vec3(0.1025 + 0.005 * o, 0.104 + 0.012 * random.nextDouble(), 0.1);
                Outline drill = new Outline.Circle(0.5 * 0.0254 * inches[o]);
                f.opening(
                        "drain " + o, 5, Opening.Kind.PORT, true, PlacedOutline.of(drill, at, Vec3.X, Vec3.Z.negate()));
                f.closeWithOutline(o);
            }
            VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("drained"), 0.02);
            FaceSet faces = grid.faces();
            assertEquals(3, faces.vents());
            for (int e = 0; e < 3; e++) {
                double d = 0.0254 * inches[faces.ventOpening()[e]];
                assertEquals(Math.PI / 4 * d * d, faces.ventAreaM2()[e], 1e-12 * faces.ventAreaM2()[e]);
                assertEquals(faces.ventCell()[0], faces.ventCell()[e]);
            }
        }
    }

    private static Cavity elevator(double edge) {
        SourcePlace place = SourcePlace.of("test");
        return CavityBuilder.build(
                new CavitySpec.ControlSurface(
                        "elevator",
                        1.2,
                        0.3,
                        0.3,
                        0.055,
                        0.055,
                        edge,
                        0.0005,
                        List.of(
                                new CavitySpec.Rib(0, 0, List.of()),
                                new CavitySpec.Rib(0.6, 0.048, List.of()),
                                new CavitySpec.Rib(1.2, 0, List.of())),
                        List.of(),
                        place),
                List.of(),
                Map.of(),
                List.of());
    }

    /** Wedge, closed form: skins, spar, edge, two end ribs on one side, the middle rib's web on both. */
    private static double elevatorArea(double edge) {
        double skin = Math.hypot(0.3, (0.055 - edge) / 2);
        double depthAtWeb = edge + (0.055 - edge) * 0.048 / 0.3;
        double web = 0.5 * (0.055 + depthAtWeb) * 0.252;
        return 1.2 * (2 * skin + 0.055 + edge) + 2 * 0.5 * (0.055 + edge) * 0.3 + 2 * web;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.008, 0.002, 0})
    void thinEdgeIsNeverLostHoweverLongTheVoxels(double edge) {
        Cavity cavity = elevator(edge);
        double area = elevatorArea(edge);
        double volume = 0.5 * (0.055 + edge) * 0.3 * 1.2;
        for (double h : new double[] {0.005, 0.007, 0.01, 0.012, 0.014, 0.018, 0.025}) {
            VoxelGrid grid = VoxelizerLawTest.voxels(cavity, h);
            assertEquals(area, sheetArea(grid), 1e-9 * area, "edge " + edge + ", voxel " + h);
            assertEquals(volume, grid.totalVolumeM3(), 5e-3 * volume, "edge " + edge + ", voxel " + h);
        }
    }

    @Test
    void edgeOfEightMillimetresIsToldWithItsPlaceAndTheSizeThatHoldsIt() {
        Cavity cavity = elevator(0.008);
        VoxelGrid grid = VoxelizerLawTest.voxels(cavity, 0.01);
        assertEquals(1.2 * 0.008, grid.unresolvedAreaM2(), 1e-9);
        for (UnresolvedArea u : grid.unresolved()) {
            assertEquals("trailing edge", cavity.parts().get(u.part()).name());
            assertEquals(0.3, u.centroidM().x(), 1e-9);
            assertEquals(2, u.axis());
            assertEquals(0.008, u.spanM(), 1e-5);
        }
        FinerVoxels finer = FinerVoxels.of(grid, 0.9);
        assertEquals(grid.sizeM().x(), finer.size().xM(), 1e-12);
        assertTrue(finer.size().zM() <= 0.008, "z " + finer.size().zM());
        assertEquals(1, finer.share(), 1e-9);
        assertEquals(0, VoxelizerLawTest.voxels(cavity, finer.size()).unresolvedAreaM2());
    }

    @Test
    void finerVoxelsResolveTheShareTheyPromiseOfASharpEdge() {
        Cavity cavity = elevator(0);
        VoxelGrid grid = VoxelizerLawTest.voxels(cavity, 0.01);
        for (double share : new double[] {0.5, 0.9}) {
            VoxelSpec finer = FinerVoxels.of(grid, share).size();
            double left = VoxelizerLawTest.voxels(cavity, finer).unresolvedAreaM2();
            assertTrue(
                    left <= (1 - share) * grid.unresolvedAreaM2() * 1.2,
                    share + ": " + left + " of " + grid.unresolvedAreaM2());
        }
    }

    /** Skins, spar and ribs of two equal bays on either side of a rib that runs through cell centres or beside them. */
    @ParameterizedTest
    @ValueSource(doubles = {0.005, 0.01, 0.0117, 0.02})
    void everyBayGetsItsOwnAreaToTheLastDigit(double h) {
        VoxelGrid grid = VoxelizerLawTest.voxels(elevator(0.03), h);
        double skin = 2 * Math.hypot(0.3, 0.0125) * 0.6;
        double web = 0.5 * (0.055 + 0.03 + 0.025 * 0.048 / 0.3) * 0.252;
        double bay = skin + 0.6 * (0.055 + 0.03) + 0.5 * 0.085 * 0.3 + web;
        assertEquals(2, grid.bays().size());
        for (Bay b : grid.bays()) {
            assertEquals(bay, b.areaM2() + grid.unresolvedAreaM2() / 2, 1e-9 * bay);
        }
    }

    /** Two sharp bays side by side, one of them the job: the edge of the other is not its surface. */
    @Test
    void thinEdgeOfABayThatIsNotMeantDoesNotCount() {
        SourcePlace place = SourcePlace.of("test");
        List<CavitySpec.Rib> ribs = new ArrayList<>();
        for (double y : new double[] {0, 0.35, 0.7}) {
            ribs.add(new CavitySpec.Rib(y, 0, List.of()));
        }
        Cavity both = CavityBuilder.build(
                new CavitySpec.ControlSurface("flap", 0.7, 0.3, 0.3, 0.06, 0.06, 0, 0.0005, ribs, List.of(), place),
                List.of(),
                Map.of(),
                List.of());
        VoxelFixtures f = new VoxelFixtures();
        f.inside = new Vec3(0.1, 0.2, 0);
        f.copy(both);
        double area = 2 * Math.hypot(0.3, 0.03) * 0.35 + 0.06 * 0.35 + 2 * 0.5 * 0.06 * 0.3;
        for (double h : new double[] {0.006, 0.011, 0.017}) {
            VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("one bay"), h);
            assertEquals(area, sheetArea(grid), 1e-9 * area, "voxel " + h);
            assertEquals(0.5 * 0.06 * 0.3 * 0.35, grid.totalVolumeM3(), 0.01 * 0.00315);
        }
    }

    /** A mesh from elsewhere may be wound anyhow: one part, every triangle turned by chance. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void windingOfTheTrianglesDoesNotMatter(long seed) {
        Cavity tidy = elevator(0.004);
        Random random = new Random(seed);
        VoxelFixtures f = new VoxelFixtures();
        int part = f.part("shell");
        for (int t = 0; t < tidy.sheets().triangleCount(); t++) {
            List<Vec3> p = new ArrayList<>(List.of(
                    tidy.sheets().point(t, 0),
                    tidy.sheets().point(t, 1),
                    tidy.sheets().point(t, 2)));
            if (random.nextBoolean()) {
                Collections.swap(p, 1, 2);
            }
            if (tidy.parts().get(tidy.partOfSheet(t)).name().equals("rib 2")) {
                continue;
            }
            f.triangle(part, p.get(0), p.get(1), p.get(2));
        }
        double area = VoxelFixtures.area(f.cavity("untidy").sheets());
        for (double h : new double[] {0.006, 0.01, 0.015}) {
            VoxelGrid grid = VoxelizerLawTest.voxels(f.cavity("untidy"), h);
            assertEquals(area, sheetArea(grid), 1e-9 * area, "voxel " + h);
            double volume = 0.5 * 0.059 * 0.3 * 1.2;
            assertEquals(volume, grid.totalVolumeM3(), 5e-3 * volume, "voxel " + h);
            double tidily = VoxelizerLawTest.voxels(tidy, h).unresolvedAreaM2();
            assertTrue(
                    grid.unresolvedAreaM2() < tidily + 0.02 * area,
                    h + ": unresolved " + grid.unresolvedAreaM2() + ", wound tidily " + tidily);
        }
    }

    @Test
    void cellNearNeverLiesBeyondASecondSheet() {
        // two walls 6 mm apart in voxels of 10 mm, and points on them all along: the cell must be in sight
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            VoxelFixtures f = new VoxelFixtures();
            f.box("box", Vec3.ZERO, new Vec3(0.3, 0.2, 0.1), false, p -> p);
            double x = 0.1 + 0.05 * random.nextDouble();
            double lean = 0.04 * (random.nextDouble() - 0.5);
            int part = f.part("walls");
            for (int w = 0; w < 2; w++) {
                f.quad(
                        part,
                        new Vec3(x + 0.006 * w, 0, 0),
                        new Vec3(x + 0.006 * w, 0.2, 0),
                        new Vec3(x + 0.006 * w + lean, 0.2, 0.1),
                        new Vec3(x + 0.006 * w + lean, 0, 0.1));
            }
            Cavity cavity = f.cavity("double wall");
            VoxelGrid grid = VoxelizerLawTest.voxels(cavity, 0.01);
            SurfelLocator locator = SurfelLocator.of(grid, cavity);
            Sight sight = new Sight(Bvh.of(cavity.sheets()));
            Vec3 n = new Vec3(0.1, 0, -lean).unit();
            int found = 0;
            for (int i = 0; i < 200; i++) {
                double z = 0.1 * random.nextDouble();
                int w = random.nextInt(2);
                Vec3 p = new Vec3(x + 0.006 * w + lean * z / 0.1, 0.2 * random.nextDouble(), z);
                Vec3 air = random.nextBoolean() ? n : n.negate();
                int cell = locator.cellNear(p, air);
                if (cell >= 0) {
                    found++;
                    assertTrue(sight.clear(p.plus(1e-8, air), grid.centre(cell)), "seed " + seed + " point " + p);
                }
            }
            assertNotEquals(0, found);
        }
    }
}
