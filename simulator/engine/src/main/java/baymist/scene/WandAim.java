package baymist.scene;

import baymist.geom.Box3;

/** What a straight wand is aimed at among all the lines that an entry allows. */
public sealed interface WandAim {
    /** As deep as a line goes. */
    record Deepest() implements WandAim {}

    /** The line with most room round it down to the depth of the pass. */
    record Central() implements WandAim {}

    /**
     * The line and depth that bring the tip nearest to a region.
     *
     * @param region box, m; a point is a box without size
     */
    record Near(Box3 region) implements WandAim {}
}
