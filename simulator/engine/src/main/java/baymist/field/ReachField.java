package baymist.field;

import baymist.cavity.Cavity;
import baymist.scene.Scene;
import baymist.study.Planning;
import baymist.voxel.VoxelGrid;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * For every place where a tip could be: the share of what it releases that ends on a region.
 *
 * <p>The fog's share holds in frozen quiet air: the jets' own flow is not in it. A pose is confirmed by a forward run, which has that flow.
 *
 * @param scene at the resolution that was computed
 * @param planning this resolution
 * @param region what is to be reached
 * @param jet share of a jet turned where it lands most, by cell
 * @param fog share of fog let go there, by cell
 * @param poses best pose of each way in, best first; empty if no wand of the scene goes in
 * @param confirmed forward run with the best pose; null without a pose or where none was asked for
 * @param pass draw-back that wets most of the region; null where no jet strikes any of it
 * @param confirmedPass forward run with it
 */
public record ReachField(
        Scene scene,
        Planning planning,
        Cavity cavity,
        VoxelGrid grid,
        FieldRegion region,
        JetField jet,
        FogField fog,
        List<PoseShare> poses,
        @Nullable Confirmation confirmed,
        @Nullable PassShare pass,
        @Nullable Confirmation confirmedPass) {
    /** What every output says about the fog's share. */
    public static final String FROZEN = "frozen quiet air: the flow that the jets make is not in it";

    public ReachField {
        poses = List.copyOf(poses);
    }
}
