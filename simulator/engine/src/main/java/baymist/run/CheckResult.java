package baymist.run;

import baymist.access.Insertion;
import baymist.cavity.Cavity;
import baymist.problem.Finding;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What can be said about a scene before anything is sprayed.
 *
 * @param insertions one for each wand and entry that the passes use, feasible or not
 * @param estimate what a run would take, or null where nothing is to be sprayed
 * @param findings warnings and notes about scene and geometry
 */
public record CheckResult(
        Scene scene,
        Cavity cavity,
        VoxelGrid grid,
        List<Insertion> insertions,
        @Nullable RunEstimate estimate,
        List<Finding> findings) {
    /** Without an estimate. */
    public CheckResult(Scene scene, Cavity cavity, VoxelGrid grid, List<Insertion> insertions, List<Finding> findings) {
        this(scene, cavity, grid, insertions, null, findings);
    }

    public CheckResult {
        insertions = List.copyOf(insertions);
        findings = List.copyOf(findings);
    }
}
