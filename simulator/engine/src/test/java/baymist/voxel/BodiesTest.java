package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.cavity.CavityFixtures;
import baymist.cavity.CavityHealth;
import baymist.cavity.Opening;
import baymist.cavity.Placement;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.scene.BodyJoint;
import baymist.scene.CavitySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.OpeningState;
import baymist.scene.PhaseStates;
import baymist.scene.PlacedBody;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Combination of bodies, joined through sheets that lie on each other. */
class BodiesTest {
    private static final PhaseStates TAPED =
            new PhaseStates(OpeningState.TAPED, OpeningState.TAPED, OpeningState.TAPED);

    private static PlacedBody body(String name, CavitySpec model, Vec3 turn, Vec3 at) {
        return new PlacedBody(name, model, turn, at, CavityFixtures.PLACE);
    }

    private static CavitySpec.Bodies bodies(List<PlacedBody> bodies, BodyJoint... joints) {
        return new CavitySpec.Bodies("bodies", bodies, List.of(joints), 1e-4, null, CavityFixtures.PLACE);
    }

    private static BodyJoint joint(String a, String b) {
        return new BodyJoint(a, b, "joint", CavityFixtures.PLACE);
    }

    /** A box of 1 x 0.6 x 0.5 m and one of 0.5 x 0.4 x 0.3 m on its aft wall, that may be shifted off it. */
    private static CavitySpec.Bodies pair(double off, double holeA, double holeB, BodyJoint... joints) {
        CavitySpec a = CavityFixtures.block(
                new Vec3(1, 0.6, 0.5), CavityFixtures.round("aft hole", "aft wall", holeA, new Vec3(1, 0.3, 0.25)));
        CavitySpec b = CavityFixtures.block(
                new Vec3(0.5, 0.4, 0.3),
                CavityFixtures.round("fore hole", "forward wall", holeB, new Vec3(0, 0.2, 0.15)),
                CavityFixtures.round("drain", "floor", 0.01, new Vec3(0.25, 0.2, 0)));
        return bodies(
                List.of(
                        body("main", a, Vec3.ZERO, Vec3.ZERO),
                        body("small", b, Vec3.ZERO, new Vec3(1 + off, 0.1, 0.1))),
                joints);
    }

    /** Wholly outer area: both boxes, the shared sheet being seen from both. */
    private static final double PAIR_M2 = 2 * (0.6 + 0.5 + 0.3) + 2 * (0.2 + 0.15 + 0.12);

    private static final double HOLES_M2 = 2 * Math.PI * 0.01 + Math.PI * 0.25e-4;

    private static void isPair(Cavity cavity, double holesM2, String what) {
        for (int across : new int[] {15, 24}) {
            VoxelGrid grid = ClosedBodyCheck.coarse(cavity, across);
            ClosedBodyCheck.openingsAreExact(cavity, grid, what);
            assertEquals(0.3 + 0.06, grid.totalVolumeM3(), 1e-6, what);
            assertEquals(PAIR_M2 - holesM2, ClosedBodyCheck.area(grid), 1e-9, what);
            assertEquals(2, grid.bays().size(), what);
            int joint = cavity.openingIndex("joint");
            FaceSet f = grid.faces();
            double open = 0;
            for (int i = 0; i < f.count(); i++) {
                if (f.opening()[i] == joint) {
                    open += f.areaM2()[i];
                    assertTrue(grid.bayOfCell(f.low()[i]) != grid.bayOfCell(f.high()[i]), what);
                }
            }
            assertEquals(cavity.openings().get(joint).areaM2(), open, 1e-12, what);
        }
    }

    @Test
    void joinedBoxesAreOneCavityOfBothVolumes() {
        Cavity cavity = CavityFixtures.build(pair(0, 0.2, 0.2, joint("main: aft hole", "small: fore hole")));
        assertEquals(
                List.of("joint", "small: drain"),
                cavity.openings().stream().map(Opening::name).toList());
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
        assertFalse(cavity.openings().get(0).exterior());
        isPair(cavity, HOLES_M2, "pair");
    }

    @Test
    void smallerOfTwoHolesIsTheJointOne() {
        Cavity cavity = CavityFixtures.build(pair(0, 0.25, 0.2, joint("main: aft hole", "small: fore hole")));
        assertEquals(Math.PI * 0.01, cavity.openings().get(0).areaM2(), 1e-12);
        isPair(cavity, HOLES_M2, "smaller");
        assertEquals(
                Math.PI * 0.01,
                CavityFixtures.build(pair(0, 0.2, 0.25, joint("small: fore hole", "main: aft hole")))
                        .openings()
                        .get(0)
                        .areaM2(),
                1e-12);
    }

    @Test
    void sheetsWithinTheToleranceAreOne() {
        for (double off : new double[] {1e-9, -1e-9, 3e-5, -3e-5, 9e-5}) {
            Cavity cavity = CavityFixtures.build(pair(off, 0.2, 0.2, joint("main: aft hole", "small: fore hole")));
            assertEquals(0, CavityHealth.of(cavity).freeEdges(), "off " + off);
            VoxelGrid grid = ClosedBodyCheck.coarse(cavity, 20);
            ClosedBodyCheck.openingsAreExact(cavity, grid, "off " + off);
            assertEquals(PAIR_M2 - HOLES_M2, ClosedBodyCheck.area(grid), 4 * Math.abs(off) + 1e-9);
        }
    }

    @Test
    void anyPoseOfThePairKeepsAreaVolumeAndOpenings() {
        Random random = new Random(805_04);
        CavitySpec.Bodies pair = pair(0, 0.2, 0.2, joint("main: aft hole", "small: fore hole"));
        for (int draw = 0; draw < 200; draw++) {
            Vec3 turn = draw < 64
                    ? new Vec3(90 * (draw & 3), 90 * (draw >> 2 & 3), 45 * (draw >> 4 & 3))
                    : new Vec3(360 * random.nextDouble(), 360 * random.nextDouble(), 360 * random.nextDouble());
            Placement placement = Placement.of(turn, new Vec3(random.nextDouble(), 0.3, -0.1));
            List<PlacedBody> moved = new ArrayList<>();
            for (PlacedBody b : pair.bodies()) {
                moved.add(body(b.name(), b.model(), turn, placement.point(b.atM())));
            }
            String what = "pose " + draw;
            Cavity cavity = CavityFixtures.build(bodies(moved, pair.joints().get(0)));
            assertEquals(0, CavityHealth.of(cavity).freeEdges(), what);
            VoxelGrid grid = ClosedBodyCheck.coarse(cavity, 20);
            ClosedBodyCheck.openingsAreExact(cavity, grid, what);
            double model = 0;
            for (int t = 0; t < cavity.cutSheets().triangleCount(); t++) {
                boolean shared = cavity.parts().get(cavity.partOfCut(t)).name().contains(" on ");
                model += (shared ? 2 : 1) * cavity.cutSheets().areaM2(t);
            }
            assertEquals(PAIR_M2 - HOLES_M2, model, 1e-9, what);
            assertEquals(PAIR_M2 - HOLES_M2, ClosedBodyCheck.area(grid), 1e-9, what);
            assertEquals(0.36, grid.totalVolumeM3(), draw < 16 ? 1e-6 : 0.002 * 0.36, what);
        }
    }

    @Test
    void anyTwoBoxesFaceToFaceAreOneCavity() {
        Random r = new Random(805_06);
        int exact = 0;
        for (int draw = 0; draw < 200; draw++) {
            Vec3 a = new Vec3(0.3 + r.nextDouble(), 0.3 + r.nextDouble(), 0.3 + r.nextDouble());
            Vec3 b = new Vec3(0.3 + r.nextDouble(), 0.3 + r.nextDouble(), 0.3 + r.nextDouble());
            Vec3 turn = new Vec3(90 * r.nextInt(4), 0, 0);
            Vec3 far = Placement.of(turn, Vec3.ZERO).point(b);
            Vec3 low = new Vec3(0, Math.min(0, far.y()), Math.min(0, far.z()));
            // the middle of the second box lies anywhere before the face of the first
            Vec3 middle = new Vec3(a.x(), a.y() * r.nextDouble(), a.z() * r.nextDouble());
            Vec3 corner = middle.minus(new Vec3(0, 0.5 * Math.abs(far.y()), 0.5 * Math.abs(far.z())));
            Vec3 at = corner.minus(low);
            Vec3 high = corner.plus(new Vec3(0, Math.abs(far.y()), Math.abs(far.z())));
            double y0 = Math.max(0, corner.y());
            double y1 = Math.min(a.y(), high.y());
            double z0 = Math.max(0, corner.z());
            double z1 = Math.min(a.z(), high.z());
            Vec3 hole = new Vec3(a.x(), 0.5 * (y0 + y1), 0.5 * (z0 + z1));
            double d = 0.6 * Math.min(y1 - y0, z1 - z0);
            Vec3 there = Placement.of(turn.negate(), Vec3.ZERO).point(hole.minus(at));
            Cavity cavity = CavityFixtures.build(bodies(
                    List.of(
                            body(
                                    "one",
                                    CavityFixtures.block(a, CavityFixtures.round("hole", "aft wall", d, hole)),
                                    Vec3.ZERO,
                                    Vec3.ZERO),
                            body(
                                    "two",
                                    CavityFixtures.block(b, CavityFixtures.round("hole", "forward wall", d, there)),
                                    turn,
                                    at)),
                    joint("one: hole", "two: hole")));
            String what = "pair " + draw;
            assertEquals(0, CavityHealth.of(cavity).freeEdges(), what);
            VoxelGrid grid = ClosedBodyCheck.coarse(cavity, 20);
            ClosedBodyCheck.openingsAreExact(cavity, grid, what);
            double volume = a.x() * a.y() * a.z() + b.x() * b.y() * b.z();
            assertEquals(volume, grid.totalVolumeM3(), 1e-6, what);
            double area = surface(a) + surface(b) - 0.5 * Math.PI * d * d;
            // a rim narrower than a voxel, outside beside the seam, has no face to tell its sides by
            assertEquals(area, ClosedBodyCheck.area(grid), 2e-3 * area, what);
            exact += Math.abs(area - ClosedBodyCheck.area(grid)) < 1e-9 ? 1 : 0;
            assertEquals(2, grid.bays().size(), what);
        }
        assertTrue(exact >= 180, exact + " of 200");
    }

    private static double surface(Vec3 s) {
        return 2 * (s.x() * s.y() + s.y() * s.z() + s.z() * s.x());
    }

    @Test
    void bodyAcrossAnEdgeKeepsWhatIsNotShared() {
        // the small box stands half over the edge of the large one: half of its wall stays its own
        CavitySpec a = CavityFixtures.block(new Vec3(1, 0.6, 0.5));
        CavitySpec b = CavityFixtures.block(new Vec3(0.5, 0.4, 0.3));
        Cavity cavity = CavityFixtures.build(bodies(
                List.of(body("main", a, Vec3.ZERO, Vec3.ZERO), body("small", b, Vec3.ZERO, new Vec3(1, 0.4, 0.3)))));
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
        assertEquals(PAIR_M2 - 0.2 * 0.2, CavityFixtures.area(cavity.sheets()), 1e-12);
        VoxelGrid grid = ClosedBodyCheck.coarse(cavity, 30);
        assertEquals(0.36, grid.totalVolumeM3(), 1e-9);
        assertEquals(PAIR_M2, ClosedBodyCheck.area(grid), 1e-9);
        assertEquals(2, grid.bays().size());
    }

    @Test
    void bodiesApartStayAsTheyAre() {
        CavitySpec b = CavityFixtures.block(
                new Vec3(0.5, 0.4, 0.3), CavityFixtures.round("hole", "floor", 0.05, new Vec3(0.2, 0.2, 0)));
        Cavity cavity = CavityBuilder.build(
                bodies(List.of(
                        body("left", b, Vec3.ZERO, Vec3.ZERO),
                        body("right", b, new Vec3(0, 0, 90), new Vec3(2, 0, 0)))),
                List.of(CavityFixtures.round("cut", "right: ceiling", 0.05, new Vec3(1.8, 0.2, 0.3))),
                Map.of("right: hole", TAPED),
                List.of(CavityFixtures.entry("left: hole")));
        assertEquals(
                List.of("left: hole", "right: hole", "cut"),
                cavity.openings().stream().map(Opening::name).toList());
        assertEquals(TAPED, cavity.openings().get(1).states());
        assertEquals(new Vec3(1.8, 0.2, 0), cavity.openings().get(1).place().centreM());
        assertEquals(Vec3.Z, cavity.openings().get(1).place().normal());
        assertEquals(
                new Vec3(1.6, 0, 0), cavity.openings().get(1).place().centreM().minus(new Vec3(0.2, 0.2, 0)));
        ClosedBodyCheck.openingsAreExact(cavity, ClosedBodyCheck.coarse(cavity, 30), "apart");
    }

    @Test
    void wingBoxAndControlSurfaceJoinAlongASpar() {
        CavitySpec.ControlSurface wedge =
                CavityFixtures.wedgeSpec(CavityFixtures.round("spar hole", "spar", 0.02, new Vec3(0, 0.25, 0)));
        CavitySpec block = CavityFixtures.block(
                new Vec3(0.3, 1.2, 0.1),
                CavityFixtures.round("hinge hole", "aft wall", 0.02, new Vec3(0.3, 0.35, 0.05)));
        Cavity cavity = CavityFixtures.build(bodies(
                List.of(
                        body("box", block, Vec3.ZERO, new Vec3(-0.3, -0.1, -0.05)),
                        body("flap", wedge, Vec3.ZERO, Vec3.ZERO)),
                joint("flap: spar hole", "box: hinge hole")));
        assertEquals(0, CavityHealth.of(cavity).freeEdges());
        VoxelGrid grid = ClosedBodyCheck.coarse(cavity, 30);
        ClosedBodyCheck.openingsAreExact(cavity, grid, "wing");
        // box, and the wedge by the prismatoid rule
        double volume = 0.036 + 1.0 / 6 * (0.5 * 0.3 * 0.06 + 4 * 0.5 * 0.25 * 0.05 + 0.5 * 0.2 * 0.04);
        assertEquals(volume, grid.totalVolumeM3(), 2e-3 * volume);
        assertEquals(
                "box: aft wall on flap: spar",
                cavity.parts()
                        .get(cavity.openings().get(cavity.openingIndex("joint")).part())
                        .name());
    }

    @Test
    void everyFamilyIsTheSameInAnyPose() {
        Random r = new Random(805_05);
        List<CavitySpec> specs = List.of(
                PanelFamiliesLawTest.randomVoid(r),
                PanelFamiliesLawTest.randomDoor(r),
                PanelFamiliesLawTest.randomPrism(r),
                CavityFixtures.wingBoxSpec(),
                CavityFixtures.wedgeSpec());
        for (CavitySpec spec : specs) {
            Cavity still = CavityFixtures.build(spec);
            for (int k = 0; k < 5; k++) {
                Vec3 turn = new Vec3(360 * r.nextDouble(), 360 * r.nextDouble(), 360 * r.nextDouble());
                Vec3 shift = new Vec3(r.nextDouble(), r.nextDouble(), r.nextDouble());
                Placement placement = Placement.of(turn, shift);
                Cavity moved = placement.cavity(still);
                Cavity asBody = CavityFixtures.build(bodies(List.of(body("b", spec, turn, shift))));
                alike(still, moved, placement, "");
                alike(still, asBody, placement, "b: ");
            }
        }
    }

    private static void alike(Cavity still, Cavity moved, Placement placement, String prefix) {
        double area = CavityFixtures.area(still.cutSheets());
        assertEquals(area, CavityFixtures.area(moved.cutSheets()), 1e-9 * area);
        assertEquals(CavityFixtures.area(still.closures()), CavityFixtures.area(moved.closures()), 1e-9 * area);
        // volume under the sheets about their middle, with winding: the same number of any pose
        assertEquals(signedVolume(still), signedVolume(moved), 1e-9);
        for (int o = 0; o < still.openings().size(); o++) {
            Opening a = still.openings().get(o);
            Opening b = moved.openings().get(o);
            assertEquals(prefix + a.name(), b.name());
            assertEquals(a.areaM2(), b.areaM2(), 0);
            assertEquals(
                    0, placement.point(a.place().centreM()).distance(b.place().centreM()), 1e-9);
            assertEquals(
                    0,
                    placement.direction(a.place().normal()).distance(b.place().normal()),
                    1e-9);
            assertEquals(
                    0, placement.direction(a.place().uAxis()).distance(b.place().uAxis()), 1e-9);
            assertEquals(a.exterior(), b.exterior());
        }
    }

    private static double signedVolume(Cavity c) {
        Vec3 middle = c.sheets().vertex(0);
        double sum = 0;
        for (int t = 0; t < c.sheets().triangleCount(); t++) {
            Vec3 p = c.sheets().point(t, 0).minus(middle);
            sum += p.dot(c.sheets().doubleAreaVector(t)) / 6;
        }
        return sum;
    }

    @Test
    void jointsThatCannotBeAreToldInSentences() {
        BodyJoint good = joint("main: aft hole", "small: fore hole");
        refused("CAV-058", pair(0.01, 0.2, 0.2, good), "10.00 mm off the plane of the first");
        refused("CAV-058", pair(0, 0.2, 0.2, joint("main: aft hole", "small: fore hol")), "did you mean");
        refused("CAV-059", pair(0, 0.2, 0.2), "lies against 'small: forward wall'");
        CavitySpec.Bodies fit = pair(0, 0.2, 0.2, good);
        List<PlacedBody> shifted = List.of(
                fit.bodies().get(0), body("small", fit.bodies().get(1).model(), Vec3.ZERO, new Vec3(1, 0.12, 0.1)));
        refused("CAV-058", bodies(shifted, good), "their centres are 20.00 mm apart");
        List<PlacedBody> twice = List.of(fit.bodies().get(0), fit.bodies().get(0));
        refused("CAV-057", bodies(twice), "names must differ");
        refused(
                "CAV-057",
                new CavitySpec.Bodies("b", fit.bodies(), List.of(good), 1, null, CavityFixtures.PLACE),
                "to 10 mm expected");
        OpeningSpec wide = CavityFixtures.round("fore hole", "forward wall", 0.2, new Vec3(0, 0.05, 0.15));
        CavitySpec beyond = CavityFixtures.block(new Vec3(0.5, 0.4, 0.3), wide);
        refused(
                "CAV-058",
                bodies(List.of(fit.bodies().get(0), body("small", beyond, Vec3.ZERO, new Vec3(1, 0.25, 0.1))), good),
                "reach beyond the place");
    }

    private static void refused(String id, CavitySpec spec, String words) {
        SceneException e = assertThrows(SceneException.class, () -> CavityFixtures.build(spec), id);
        assertTrue(e.findings().stream().anyMatch(f -> f.id().equals(id)), id + " expected, but: " + e.getMessage());
        assertTrue(e.getMessage().contains(words), e.getMessage());
    }
}
