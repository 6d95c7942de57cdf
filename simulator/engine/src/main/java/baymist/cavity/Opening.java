package baymist.cavity;

import baymist.geom.PlacedOutline;
import baymist.scene.PhaseStates;

/**
 * An opening in a part with its exact outline.
 *
 * @param name unique in the cavity
 * @param part index of the part it is cut into; for {@link Kind#GAP} the nearest part
 * @param exterior whether it leads outside (a port, a drain, a gap in an open mesh) rather than to another bay
 */
public record Opening(String name, int part, Kind kind, PlacedOutline place, PhaseStates states, boolean exterior) {
    /** What sort of opening it is. */
    public enum Kind {
        /** A hole in an internal member. */
        HOLE,
        /** An opening that was stated as an inspection or access opening. */
        PORT,
        /** Space left beside a member that stops short, e.g. between a rib and the trailing edge. */
        SHORT_MEMBER,
        /** A place where a mesh's sheets leave the cavity open; capped for classification, open to air. */
        GAP
    }

    public double areaM2() {
        return place.outline().areaM2();
    }
}
