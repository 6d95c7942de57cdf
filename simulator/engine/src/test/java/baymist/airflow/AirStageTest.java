package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.access.Station;
import baymist.access.TipPose;
import baymist.cavity.Opening;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SourcePlace;
import baymist.scene.AirSpec;
import baymist.scene.CavitySpec;
import baymist.scene.DropletSpec;
import baymist.scene.OpeningState;
import baymist.scene.PhaseStates;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import baymist.scene.SupplySpec;
import baymist.spray.SprayHits;
import baymist.units.Air;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class AirStageTest {
    private static final double H = 0.02;
    private static final double[] AREAS = {1e-3, 1e-5, 2e-5};

    private static GridFixtures twoBays() {
        return GridFixtures.box(12, 6, 6, H)
                .baffle(6, 0, (j, k) -> j >= 2 && j < 4 && k >= 2 && k < 4 ? 2.5e-4 : 0)
                .vent(1, 0, 2, 2, 0, 1e-5)
                .vent(2, 11, 2, 2, 1, 2e-5);
    }

    private static AirSettings settings(AirSpec spec) {
        return new AirSettings(spec, Air.STANDARD, new Vec3(0, 0, -1), 9.80665, 1e-10);
    }

    private static SprayHits jet(GridFixtures fixture) {
        double v = H * H * H;
        return GridFixtures.air(
                0.5e-3,
                fixture.cell(2, 3, 3),
                new int[] {fixture.cell(3, 3, 3), fixture.cell(4, 3, 3)},
                new Vec3[] {new Vec3(3 * v, 0, 0), new Vec3(2 * v, 0, 0.2 * v)},
                0.5,
                0);
    }

    private static List<AirWindow> job(GridFixtures fixture, double[] pass, double[] hang) {
        TipPose pose = new TipPose(Vec3.ZERO, Vec3.X, Vec3.Z);
        return List.of(
                AirWindow.spray(new Station(0, pose, 0, 3, 0.1), jet(fixture), pass),
                AirWindow.spray(new Station(0, pose, 3, 3, 0.05), jet(fixture), pass),
                AirWindow.quiet(6, 1, hang),
                AirWindow.quiet(7, 60, hang));
    }

    @Test
    void pressureBuildsUpAndBlowsOutAndTurbulenceDies() {
        GridFixtures fixture = twoBays();
        VoxelGrid grid = fixture.build();
        double[] open = {1, 1, 1};
        AirStage stage = AirStage.plan(settings(AirSpec.DEFAULT), AREAS, grid, job(fixture, open, open));
        assertEquals(4, stage.windows());
        // Steady level of the orifice law: 0.5 L/s through 3e-5 m², Cd 0.61, 450 Pa (orifice law; compressible within 1
        // %).
        double steady = Orifice.pressureDifferencePa(3e-5, 0.5e-3, 1.2041);
        assertEquals(steady, stage.peakGaugePa(), 0.01 * steady);
        assertEquals(6, stage.peakTimeS());
        assertTrue(stage.pressure(2).ventOutflowM3PerS() > 0);
        assertEquals(0, stage.pressure(3).endGaugePa(), 1e-6);
        assertTrue(stage.turbulentEnergyM2PerS2(1, 0) > 100 * stage.turbulentEnergyM2PerS2(3, 0));
        assertEquals(0, stage.turbulentEnergyM2PerS2(1, 1));
        AirField spray = stage.field(1);
        AirField hang = stage.field(3);
        assertTrue(spray.eddyDiffusivityM2PerS()[0] > 2 * hang.eddyDiffusivityM2PerS()[0]);
        assertTrue(hang.eddyDiffusivityM2PerS()[0] > 1e-5);
        assertTrue(Arrays.stream(hang.frictionSpeedMPerS()).allMatch(u -> u > 0.003 && u < 0.03));
        assertTrue(spray.residual() < 1e-6);
        // Wall friction of the projected field stays below the jets' thrust of 0.5 N.
        assertTrue(WallLaw.frictionForceN(grid, spray, 1.204) < 0.5);
    }

    @Test
    void fieldsAreTheSameOnAnyThreadCountAndInAnyOrder() {
        GridFixtures fixture = twoBays();
        VoxelGrid grid = fixture.build();
        double[] open = {1, 1, 0.5};
        AirStage stage = AirStage.plan(settings(AirSpec.DEFAULT), AREAS, grid, job(fixture, open, open));
        AirField[] alone = new AirField[4];
        for (int w = 3; w >= 0; w--) {
            alone[w] = stage.field(w);
        }
        for (int threads : new int[] {2, 3}) {
            AirField[] shared = new AirField[4];
            try (Workers workers = new Workers(threads)) {
                workers.forEach(4, w -> shared[w] = stage.field(w));
            }
            for (int w = 0; w < 4; w++) {
                assertArrayEquals(alone[w].faceFluxM3PerS(), shared[w].faceFluxM3PerS());
                assertArrayEquals(alone[w].frictionSpeedMPerS(), shared[w].frictionSpeedMPerS());
                assertArrayEquals(alone[w].eddyDiffusivityM2PerS(), shared[w].eddyDiffusivityM2PerS());
            }
        }
    }

    @Test
    void sealedJobPumpsUpAndVentsWhenAVentIsOpened() {
        GridFixtures fixture = twoBays();
        VoxelGrid grid = fixture.build();
        AirStage stage = AirStage.plan(
                settings(AirSpec.DEFAULT), AREAS, grid, job(fixture, new double[] {1, 0, 0}, new double[] {0, 1, 0}));
        double volume = grid.totalVolumeM3();
        double expected = 101_325 * 0.5e-3 * 6 / volume;
        assertEquals(expected, stage.peakGaugePa(), 1e-6 * expected);
        // In the hang the rib hole is shut: both bays start at the common pressure, only the left one vents.
        PressureWindow blow = stage.pressure(2);
        assertEquals(expected, blow.startGaugePa(), 1e-6 * expected);
        AirField field = stage.field(2);
        assertTrue(field.ventFluxM3PerS()[0] > 0);
        assertEquals(0, field.ventFluxM3PerS()[1]);
        assertTrue(GridFixtures.worstDivergence(grid, field) < 1e-8 * field.ventFluxM3PerS()[0]);
    }

    @Test
    void groupsThatMergeShareTheirAir() {
        GridFixtures fixture = twoBays();
        VoxelGrid grid = fixture.build();
        List<AirWindow> windows = List.of(
                new AirWindow(0, 2, jet(fixture), new double[] {0, 0, 0}),
                AirWindow.quiet(2, 1, new double[] {1, 0, 0}));
        AirStage stage = AirStage.plan(settings(AirSpec.DEFAULT), AREAS, grid, windows);
        // Boyle: half the volume at gauge p against half at ambient.
        double alone = 101_325 * 0.5e-3 * 2 / (grid.totalVolumeM3() / 2);
        assertEquals(alone, stage.pressure(0).endGaugePa(), 1e-6 * alone);
        assertEquals(alone, stage.peakGaugePa(), 1e-6 * alone);
        assertArrayEquals(new double[grid.faces().count()], stage.field(1).faceFluxM3PerS());
    }

    @Test
    void statedDiffusivitiesWinAndStillModeIsStill() {
        GridFixtures fixture = twoBays();
        VoxelGrid grid = fixture.build();
        double[] open = {1, 1, 1};
        AirSpec stated = new AirSpec(AirSpec.Mode.PROJECTED, 0, 3e-3, 10_000);
        AirStage stage = AirStage.plan(settings(stated), AREAS, grid, job(fixture, open, open));
        assertEquals(3e-3, stage.field(0).eddyDiffusivityM2PerS()[5]);
        assertEquals(0, stage.field(3).eddyDiffusivityM2PerS()[5]);
        assertTrue(Arrays.stream(stage.field(3).frictionSpeedMPerS()).allMatch(u -> u == 0));
        AirSpec still = new AirSpec(AirSpec.Mode.STILL, -1, -1, 10_000);
        AirStage calm = AirStage.plan(settings(still), AREAS, grid, job(fixture, open, open));
        assertEquals(0, calm.peakGaugePa());
        assertEquals(0, calm.field(0).eddyDiffusivityM2PerS()[5]);
        assertArrayEquals(new double[grid.faces().count()], calm.field(0).faceFluxM3PerS());
        assertArrayEquals(open, calm.field(0).openFraction());
        AirSpec mixed = new AirSpec(AirSpec.Mode.STILL, 2e-3, -1, 10_000);
        AirStage stirred = AirStage.plan(settings(mixed), AREAS, grid, job(fixture, open, open));
        assertEquals(2e-3, stirred.field(3).eddyDiffusivityM2PerS()[5]);
        AirSpec spraying = new AirSpec(AirSpec.Mode.PROJECTED, 0, -1, 10_000);
        AirStage jets = AirStage.plan(settings(spraying), AREAS, grid, job(fixture, open, open));
        assertTrue(jets.field(1).eddyDiffusivityM2PerS()[0] > 1e-4);
    }

    private static Opening opening(String name, double diameterM, PhaseStates states) {
        PlacedOutline place = PlacedOutline.of(new Outline.Circle(diameterM / 2), Vec3.ZERO, Vec3.X, Vec3.Z);
        return new Opening(name, 0, Opening.Kind.PORT, place, states, true);
    }

    @Test
    void openFractionsFollowThePhaseAndTheRod() {
        OpeningState open = OpeningState.OPEN;
        List<Opening> openings = List.of(
                opening("port", 0.02, PhaseStates.ALWAYS_OPEN),
                opening("drain", 0.006, new PhaseStates(open, OpeningState.TAPED, OpeningState.PLUGGED)),
                opening("panel", 0.1, new PhaseStates(OpeningState.CLOSED, open, OpeningState.CLOSED)));
        // Annular gap of a rod d in a hole D: 1 - (d/D)².
        assertArrayEquals(new double[] {0.75, 1, 0}, OpenFractions.pass(openings, 0, 0.01), 1e-12);
        assertArrayEquals(new double[] {0, 1, 0}, OpenFractions.pass(openings, 0, 0.025));
        assertArrayEquals(new double[] {1, 1, 0}, OpenFractions.pass(openings, -1, 0.01));
        assertArrayEquals(new double[] {1, 1, 0}, OpenFractions.pass(openings, 2, 0.01));
        assertArrayEquals(new double[] {1, 0, 1}, OpenFractions.hang(openings));
        assertArrayEquals(new double[] {1, 0, 0}, OpenFractions.after(openings));
        assertEquals(Math.PI * 1e-4, OpenFractions.areasM2(openings)[0], 1e-12);
    }

    @Test
    void settingsComeFromTheScene() {
        SourcePlace place = SourcePlace.of("job.yaml");
        CavitySpec box = new CavitySpec.Block("box", new Vec3(1, 1, 1), Vec3.ZERO, Vec3.ZERO, 1e-3, List.of(), place);
        Scene scene = SceneFixtures.bare(
                "job.yaml", box, new SupplySpec.Pressure(550_000, 0.85, 5e-4, new DropletSpec.Tracer()));
        AirSettings settings = AirSettings.of(scene, Air.STANDARD);
        assertEquals(AirProjector.TOLERANCE, settings.tolerance());
        assertTrue(settings.residualConvection());
        AirSettings weightless = new AirSettings(scene.air(), Air.STANDARD, scene.gravity(), 0, 1e-8);
        assertFalse(weightless.residualConvection());
    }

    @Test
    void windowsMustHaveALength() {
        assertThrows(IllegalArgumentException.class, () -> AirWindow.quiet(0, -1, new double[0]));
        assertThrows(IllegalArgumentException.class, () -> AirWindow.quiet(Double.NaN, 1, new double[0]));
    }
}
