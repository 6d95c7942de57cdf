package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.airflow.AirField;
import baymist.airflow.AirSettings;
import baymist.airflow.AirStage;
import baymist.airflow.AirWindow;
import baymist.airflow.OpenFractions;
import baymist.airflow.ResolvedAir;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.fog.FogStepper;
import baymist.geom.Vec3;
import baymist.ledger.MassLedger;
import baymist.numeric.Workers;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.spray.SizeBins;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Whole runs in resolved air, and dense fog that finds its own way. */
class ResolvedRunTest {
    private static final VoxelSpec COARSE = new VoxelSpec(0.03, 0.04, 0.02);

    private static Scene elevator(AirSpec.Mode mode, int block) {
        return TestScenes.read("control-surface-pin-forward.yaml")
                .withVoxel(new VoxelSpec(0.02, 0.04, 0.011))
                .withHangS(3)
                .withNumerics(3, 24)
                .withAir(AirSpec.DEFAULT.withMode(mode, block));
    }

    @Test
    void aRunInResolvedAirClosesItsBooksAndIsTheSameOnAnyThreadCount() {
        List<String> notes = new ArrayList<>();
        RunResult one = TestScenes.run(elevator(AirSpec.Mode.RESOLVED, 2), 1);
        RunResult two = Simulation.run(elevator(AirSpec.Mode.RESOLVED, 2), new RunOptions(2), new RunObserver() {
            @Override
            public void stage(String name) {}

            @Override
            public void note(String text) {
                notes.add(text);
            }

            @Override
            public void progress(double done, double jobTimeS) {}

            @Override
            public boolean cancelled() {
                return false;
            }
        });
        assertEquals(one.record().stateHash(), two.record().stateHash());
        assertTrue(Math.abs(one.ledger().closure()) <= 1e-9);
        double audited = one.ledger().audited();
        assertTrue(audited > 0 && audited <= MassLedger.MOST_AUDITED, "audits put right " + audited);
        assertEquals("resolved", one.record().settings().get("air"));
        assertTrue(notes.get(0).contains("steps"), notes.toString());
        assertTrue(one.coverage().total().reached() > 0.2);
    }

    /** Fog of 5 um let loose in one bay of the wing box, in windows of resolved air; {clear bay's share, height} at the end. */
    private static FogStepper loose(VoxelGrid grid, Cavity cavity, Scene scene, Vec3 gravity, double kgPerM3, int bay) {
        double[] open = new double[cavity.openings().size()];
        Arrays.fill(open, 1);
        for (int v = 0; v < grid.faces().vents(); v++) {
            open[grid.faces().ventOpening()[v]] = 0;
        }
        AirSettings settings = new AirSettings(
                AirSpec.DEFAULT.withMode(AirSpec.Mode.RESOLVED, 1),
                scene.ambient(),
                gravity.unit(),
                gravity.length(),
                1e-8);
        AirStage plan = AirStage.plan(
                settings, OpenFractions.areasM2(cavity.openings()), grid, List.of(AirWindow.quiet(0, 100, open)));
        ResolvedAir air = ResolvedAir.of(plan, grid, OpenFractions.areasM2(cavity.openings()), 1);
        try (Workers workers = new Workers(2)) {
            SizeBins bins = new SizeBins(new double[] {5e-6}, new double[] {1});
            FogStepper fog = new FogStepper(grid, bins, 870, scene.ambient(), gravity, workers);
            for (int c = 0; c < grid.cellCount(); c++) {
                if (grid.bayOfCell(c) == bay) {
                    fog.release(c, kgPerM3 * grid.volumeM3(c));
                }
            }
            while (fog.timeS() < 20) {
                double window = air.windowS();
                double[] c = new double[grid.cellCount()];
                Arrays.setAll(c, fog::concentrationKgPerM3);
                AirField field = air.advance(0, window, c);
                assertTrue(field.residual() < 1e-6, "residual " + field.residual());
                fog.advance(field, null, window);
            }
            return fog;
        }
    }

    @Test
    void denseFogRunsThroughHolesToTheLowBays() {
        Scene scene = TestScenes.read("wing-box.yaml").withVoxel(COARSE);
        Cavity cavity = CavityBuilder.build(scene);
        VoxelGrid grid;
        try (Workers workers = new Workers(2)) {
            grid = Voxelizer.voxelize(cavity, scene.voxel(), workers);
        }
        double g = 9.80665;
        double sine = Math.sin(Math.toRadians(8));
        Vec3 level = new Vec3(0, 0, -g);
        Vec3 outboardDown = new Vec3(0, g * sine, -g * Math.sqrt(1 - sine * sine));
        Vec3 inboardDown = new Vec3(0, -g * sine, -g * Math.sqrt(1 - sine * sine));
        FogStepper dense = loose(grid, cavity, scene, level, 20e-3, 1);
        FogStepper thin = loose(grid, cavity, scene, level, 0.05e-3, 1);
        FogStepper outboard = loose(grid, cavity, scene, outboardDown, 20e-3, 1);
        FogStepper inboard = loose(grid, cavity, scene, inboardDown, 20e-3, 1);
        double first = dense.meanConcentrationKgPerM3(1);
        // Brown and Solvason (1962): sqrt(g' H) with the holes' height moves litres a second; thin fog only diffuses.
        assertTrue(
                dense.meanConcentrationKgPerM3(2) > 0.1 * first,
                "neighbour " + dense.meanConcentrationKgPerM3(2) / first);
        double thinShare = thin.meanConcentrationKgPerM3(2) / thin.meanConcentrationKgPerM3(1);
        assertTrue(
                dense.meanConcentrationKgPerM3(2) / first > 1.5 * thinShare,
                "thin " + thinShare + " dense " + dense.meanConcentrationKgPerM3(2) / first);
        assertTrue(
                outboard.meanConcentrationKgPerM3(2) > 1.3 * inboard.meanConcentrationKgPerM3(2),
                "outboard " + Arrays.toString(outboard.meanConcentrationKgPerM3()) + " inboard "
                        + Arrays.toString(inboard.meanConcentrationKgPerM3()) + " dense "
                        + Arrays.toString(dense.meanConcentrationKgPerM3()));
        assertTrue(inboard.meanConcentrationKgPerM3(0) > 1.3 * outboard.meanConcentrationKgPerM3(0));
        assertTrue(lowShare(grid, dense, 2) > 0.6, "low share " + lowShare(grid, dense, 2));
    }

    /** Share of a bay's fog in its lower half. */
    private static double lowShare(VoxelGrid grid, FogStepper fog, int bay) {
        double middle = 0.5
                * (grid.bays().get(bay).bounds().min().z()
                        + grid.bays().get(bay).bounds().max().z());
        double low = 0;
        double all = 0;
        for (int c = 0; c < grid.cellCount(); c++) {
            if (grid.bayOfCell(c) == bay) {
                double kg = fog.concentrationKgPerM3(c) * grid.volumeM3(c);
                all += kg;
                low += grid.centre(c).z() < middle ? kg : 0;
            }
        }
        return low / all;
    }
}
