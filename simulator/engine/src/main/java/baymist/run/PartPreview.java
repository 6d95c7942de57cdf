package baymist.run;

import baymist.cavity.Cavity;
import baymist.problem.Finding;
import baymist.scene.Scene;
import baymist.voxel.GridPart;
import baymist.voxel.VoxelGrid;
import org.jspecify.annotations.Nullable;

/**
 * What a run would compute of a structure whose bays it leaves out in part, told without spraying. The run itself goes by where its jets were cast
 * from and adds rings where too much is carried beyond; it may compute more than is said here.
 *
 * @param computed PART-001
 */
record PartPreview(RunEstimate estimate, Finding computed) {
    /** Null where all bays would be computed or the run would be refused. */
    static @Nullable PartPreview of(
            Scene scene, Cavity cavity, VoxelGrid grid, Timeline timeline, MemoryBudget memory, PartRule rule) {
        MemoryCheck.Reckoning takes = g -> RunEstimate.of(scene, g, timeline).memory();
        if (rule.isWhole() || (rule.isByMemory() && takes.in(grid).totalBytes() <= memory.bytes())) {
            return null;
        }
        boolean[] sprayed = Ground.sprayed(scene, grid, timeline);
        if (sprayed == null) {
            return null;
        }
        PartTrial trial = new PartTrial(scene, cavity, grid, BayRings.of(cavity, grid), sprayed, takes, memory);
        int most = rule.isByMemory() ? Ground.FIRST_RINGS : rule.rings();
        int kept = trial.mostOrNone(most, rule.isByMemory() ? Ground.FEWEST_RINGS : most);
        if (kept == 0) {
            return null;
        }
        VoxelGrid part = GridPart.of(grid, trial.bays(kept)).grid();
        ComputedBays bays = ComputedBays.of(part);
        return bays.isWhole()
                ? null
                : new PartPreview(
                        RunEstimate.of(scene, part, timeline),
                        PartFindings.computed(scene, bays, rule, "would be computed"));
    }
}
