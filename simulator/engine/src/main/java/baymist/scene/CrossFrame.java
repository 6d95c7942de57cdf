package baymist.scene;

import baymist.problem.SourcePlace;
import java.util.List;

/**
 * A transverse web over the whole section of a box.
 *
 * @param xM station from the forward wall, m
 * @param holes along = from the left wall, across = above the floor
 * @param drainRadiusM radius of the quarter-round mouse holes in the two lower corners, m; 0 = none
 * @param airRadiusM the same in the two upper corners
 * @param notchM clearance all round the bars that pass through, m; 0 = none, the web is welded to them all round
 */
public record CrossFrame(
        double xM,
        List<PanelHole> holes,
        double drainRadiusM,
        double airRadiusM,
        double notchM,
        double gaugeM,
        SourcePlace place) {
    public CrossFrame {
        holes = List.copyOf(holes);
    }
}
