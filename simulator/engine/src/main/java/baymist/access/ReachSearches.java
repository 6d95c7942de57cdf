package baymist.access;

import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;

/** Which search suits which wand. */
public final class ReachSearches {
    private ReachSearches() {}

    /** The search for a wand of this kind. */
    public static ReachSearch of(WandSpec wand) {
        return switch (wand.kind()) {
            case STRAIGHT -> ReachSearches::alongTheEntry;
            case BENT, FLEXIBLE ->
                p -> WandReach.none(
                        p, new WandStop("", p.opening().place().centreM(), 0, "no search for this kind of wand yet"));
        };
    }

    private static WandReach alongTheEntry(ReachProblem p) {
        boolean[] open = new boolean[p.cavity().openings().size()];
        for (int i = 0; i < open.length; i++) {
            open[i] = p.surroundings().open(i);
        }
        Insertion in = AccessFinder.find(p.cavity(), p.wand(), p.entry(), open);
        WandPath path = WandPath.straight(in.originM(), in.axis(), p.wand().outerM() / 2, in.maxDepthM());
        WandStop stop = new WandStop(in.stoppedBy(), in.originM().plus(in.maxDepthM(), in.axis()), 0, in.stoppedBy());
        if (!in.feasible()) {
            return WandReach.none(p, stop);
        }
        List<WandPose> tips = new ArrayList<>(List.of(path.body(in.maxDepthM())));
        return new WandReach(in.entry(), in.wand(), true, 0, in.maxDepthM(), stop, tips, 0);
    }
}
