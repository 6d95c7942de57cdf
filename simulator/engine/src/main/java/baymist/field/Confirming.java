package baymist.field;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Adds a pass to those of a scene in a whole run.
 *
 * @param before the scene's own run, or null if it has no passes
 */
record Confirming(
        Scene scene,
        VoxelGrid grid,
        FieldRegion region,
        @Nullable RunResult before,
        RunOptions options,
        RunObserver observer) {
    Confirmation with(PassSpec more, double predictedKg) {
        List<PassSpec> passes = new ArrayList<>(scene.passes());
        passes.add(more);
        RunResult after = Simulation.run(scene.withPasses(passes), options, observer);
        RunResult was = before;
        return new Confirmation(
                more,
                predictedKg,
                massKg(after) - (was == null ? 0 : massKg(was)),
                was == null ? 0 : filmM(was),
                filmM(after),
                was == null ? 0 : reached(was),
                reached(after),
                was == null ? 0 : was.coverage().total().reached(),
                after.coverage().total().reached());
    }

    private double massKg(RunResult run) {
        double sum = 0;
        for (int s : region.surfels()) {
            sum += run.directKg()[s] + run.fogKg()[s];
        }
        return sum;
    }

    private double filmM(RunResult run) {
        double sum = 0;
        for (int s : region.surfels()) {
            sum += run.filmM()[s] * grid.surfels().areaM2()[s];
        }
        return sum / region.areaM2();
    }

    private double reached(RunResult run) {
        double sum = 0;
        for (int s : region.surfels()) {
            sum += run.filmM()[s] >= run.scene().targets().hazeM()
                    ? grid.surfels().areaM2()[s]
                    : 0;
        }
        return sum / region.areaM2();
    }
}
