package baymist.scene;

import baymist.problem.SourcePlace;

/**
 * Intrusion beam of a door; runs from its front to its aft edge.
 *
 * @param upM height of its middle above the lower edge, m
 * @param widthM its extent up and down, m
 * @param depthM its extent inboard, m; without meaning for a plate
 * @param gapM distance of its outer face inboard of the outer panel's rim, m; without meaning for a hat
 */
public record DoorBeam(
        Kind kind, double upM, double widthM, double depthM, double gapM, double gaugeM, SourcePlace place) {
    /** Its section. */
    public enum Kind {
        /** A closed tube of rectangular section. */
        BOX,
        /** A channel closed by the outer panel. */
        HAT,
        /** A flat upright strip. */
        PLATE
    }
}
