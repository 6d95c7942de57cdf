package baymist.run;

import baymist.access.ReachShare;
import baymist.access.SagResult;
import baymist.access.WandReach;
import baymist.geom.Vec3;
import baymist.scene.EntrySpec;
import baymist.scene.WandSpec;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One wand in one entry.
 *
 * @param openingIndex opening of the cavity that the entry uses
 * @param opened whether that opening is shut in the scene and was taken as open for this
 * @param sag how a straight wand hangs at its deepest; null for other kinds and for one that does not go in
 * @param places where the tip can be, m
 * @param share of the cavity near these places
 * @param bays names of the bays that the tip gets into
 */
public record ReachLine(
        EntrySpec entry,
        WandSpec wand,
        int openingIndex,
        boolean opened,
        WandReach reach,
        @Nullable SagResult sag,
        List<Vec3> places,
        ReachShare share,
        List<String> bays) {
    public ReachLine {
        places = List.copyOf(places);
        bays = List.copyOf(bays);
    }
}
