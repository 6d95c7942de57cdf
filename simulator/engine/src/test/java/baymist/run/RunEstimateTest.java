package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.access.PassPlan;
import baymist.access.Stations;
import baymist.airflow.AirSettings;
import baymist.airflow.AirStage;
import baymist.airflow.AirWindow;
import baymist.airflow.OpenFractions;
import baymist.airflow.ResolvedAir;
import baymist.airflow.ResolvedCost;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.numeric.Workers;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said before a run, held against the run. */
class RunEstimateTest {
    private static Scene scene(String name, double voxelM, AirSpec.Mode mode, int block) {
        return TestScenes.read(name)
                .withVoxel(new VoxelSpec(voxelM, voxelM, voxelM))
                .withHangS(20)
                .withNumerics(3, 24)
                .withAir(AirSpec.DEFAULT.withMode(mode, block));
    }

    @ParameterizedTest
    @CsvSource({
        "control-surface-pin-forward.yaml, 0.014, 4",
        "control-surface-pin-forward.yaml, 0.014, 2",
        "tail-cone.yaml, 0.045, 2"
    })
    void theStatedStepsAreRightWithinAFactorOfTwo(String name, double voxelM, int block) {
        Scene scene = scene(name, voxelM, AirSpec.Mode.RESOLVED, block);
        try (Workers workers = new Workers(2)) {
            Cavity cavity = CavityBuilder.build(scene);
            VoxelGrid grid = Voxelizer.voxelize(cavity, scene.voxel(), workers);
            Approach.Ways ways = Approach.ways(scene, cavity);
            PassPlan plan = Stations.plan(scene, ways.insertions());
            Timeline timeline = Timeline.of(scene, cavity, ways.insertions(), plan);
            Spraying spraying =
                    Spraying.cast(scene, Structure.of(scene, cavity, grid), timeline, workers, RunObserver.NONE);
            ResolvedCost said = cost(RunEstimate.of(scene, grid, timeline));
            List<AirWindow> windows = new ArrayList<>();
            for (int m = 0; m < timeline.count(); m++) {
                Moment moment = timeline.moment(m);
                windows.add(
                        new AirWindow(moment.startS(), moment.durationS(), spraying.hits(m), moment.openFraction()));
            }
            double[] areas = OpenFractions.areasM2(cavity.openings());
            AirStage stage = AirStage.plan(AirSettings.of(scene, scene.ambient()), areas, grid, windows);
            ResolvedAir air = ResolvedAir.of(stage, grid, areas, block);
            for (int m = 0; m < windows.size(); m++) {
                double left = windows.get(m).durationS();
                while (left > 0) {
                    double window = left / Math.ceil(left / air.windowS() - 1e-9);
                    air.advance(m, window, new double[0]);
                    left = window >= left ? 0 : left - window;
                }
            }
            assertEquals(said.cells(), air.cells());
            double over = said.steps() / (double) air.steps();
            assertTrue(over > 0.5 && over < 2, said.steps() + " steps said, " + air.steps() + " done");
        }
    }

    private static ResolvedCost cost(RunEstimate estimate) {
        return Objects.requireNonNull(estimate.air());
    }

    private static RunEstimate estimate(AirSpec.Mode mode, int block) {
        CheckResult check = Simulation.check(
                scene("control-surface-pin-forward.yaml", 0.014, mode, block), new RunOptions(2), RunObserver.NONE);
        return Objects.requireNonNull(check.estimate());
    }

    @Test
    void resolvedAirIsTheDefaultAndItsMemoryIsCounted() {
        assertEquals(
                AirSpec.Mode.RESOLVED,
                TestScenes.read("control-surface-pin-forward.yaml").air().mode());
        RunEstimate coarse = estimate(AirSpec.Mode.RESOLVED, 4);
        RunEstimate fine = estimate(AirSpec.Mode.RESOLVED, 1);
        assertTrue(cost(fine).cells() > 8 * cost(coarse).cells());
        assertTrue(fine.memory().airBytes() > coarse.memory().airBytes());
        assertTrue(fine.seconds() > coarse.seconds());
        assertNull(estimate(AirSpec.Mode.PROJECTED, 0).air());
        assertNull(estimate(AirSpec.Mode.STILL, 0).air());
        assertTrue(estimate(AirSpec.Mode.PROJECTED, 0).seconds() < coarse.seconds());
    }

    @Test
    void theFinestAffordableBlocksAreTaken() {
        RunEstimate chosen = estimate(AirSpec.Mode.RESOLVED, 0);
        ResolvedCost air = cost(chosen);
        assertTrue(air.isAffordable());
        assertTrue(air.factor() == 1
                || !cost(estimate(AirSpec.Mode.RESOLVED, air.factor() - 1)).isAffordable());
        assertTrue(chosen.airLine(AirSpec.DEFAULT).contains(air.cells() + " cells"));
    }
}
