package baymist.scene;

import baymist.problem.SourcePlace;

/**
 * Equal parallel bars on one wall of a box.
 *
 * @param wall "floor", "ceiling", "left wall" or "right wall"
 * @param firstM place of the first bar: for bars along x from the left wall or the floor, for deck beams from the forward wall, m
 * @param spacingM from bar to bar, m
 * @param webM height of the web off the wall, m
 * @param flangeM width of the flange on the web's free edge, m; 0 = a flat bar
 * @param gaugeM thickness, m
 */
public record Stiffeners(
        String wall,
        double firstM,
        double spacingM,
        double webM,
        double flangeM,
        Side flange,
        double gaugeM,
        SourcePlace place) {
    /** Which way the flange points from the web. */
    public enum Side {
        /** Both ways, a T. */
        BOTH,
        /** Towards the first bar's wall (left, floor, forward), an angle. */
        BACK,
        /** Away from it, an angle. */
        ON
    }
}
