package baymist.run;

import baymist.access.ReachShare;
import baymist.access.Surroundings;
import baymist.cavity.Cavity;
import baymist.problem.Finding;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import java.util.List;

/**
 * Where the wands of a scene get to.
 *
 * @param around what the wands may touch, openings as the scene states them
 * @param withinM distance from a place of the tip that counts as reached, m
 * @param lines entries in order, for each the wands in order
 * @param together share of the cavity that all of them reach together
 * @param findings warnings and notes about the ways in
 */
public record ReachResult(
        Scene scene,
        Cavity cavity,
        VoxelGrid grid,
        Surroundings around,
        double withinM,
        List<ReachLine> lines,
        ReachShare together,
        List<Finding> findings) {
    public ReachResult {
        lines = List.copyOf(lines);
        findings = List.copyOf(findings);
    }
}
