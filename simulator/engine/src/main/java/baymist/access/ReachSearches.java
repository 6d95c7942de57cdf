package baymist.access;

import baymist.scene.WandSpec;

/** Which search suits which wand. */
public final class ReachSearches {
    private ReachSearches() {}

    /** The search for a wand of this kind. */
    public static ReachSearch of(WandSpec wand) {
        return switch (wand.kind()) {
            case STRAIGHT -> new RigidReach();
            case BENT -> new HookReach();
            case FLEXIBLE -> new FlexibleReach();
        };
    }
}
