package baymist.run;

import baymist.access.Insertion;
import baymist.cavity.Cavity;
import baymist.problem.Finding;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import java.util.List;

/**
 * What can be said about a scene before anything is sprayed.
 *
 * @param insertions one for each wand and entry that the passes use, feasible or not
 * @param findings warnings and notes about scene and geometry
 */
public record CheckResult(
        Scene scene, Cavity cavity, VoxelGrid grid, List<Insertion> insertions, List<Finding> findings) {
    public CheckResult {
        insertions = List.copyOf(insertions);
        findings = List.copyOf(findings);
    }
}
