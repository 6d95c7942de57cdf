package baymist.access;

import baymist.geom.RayHit;
import baymist.geom.RodClearance;
import baymist.geom.Vec3;
import baymist.scene.Obstacle;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One straight line through an entry, and how far the wand goes along it.
 *
 * @param u,v where the axis crosses the plane of the opening, outline coordinates, m
 * @param tu,tv tangent of its tilt
 * @param passes whether the rod passes the hole
 * @param depthM depth that it reaches, m; 0 if it does not pass
 * @param contact what ends it, null = the wand's length
 * @param coupling whether a coupling rather than the nose meets {@code contact} (or the hole, where that is null)
 * @param exit open opening that the axis leaves the cavity by, which ends it; -1 = none
 * @param kept obstacle outside that leaves no room to feed in more, null = none
 * @param ahead what the axis itself meets first, null = nothing within the wand's length
 */
record RodLine(
        double u,
        double v,
        double tu,
        double tv,
        Vec3 originM,
        Vec3 axis,
        boolean passes,
        double depthM,
        RodClearance.@Nullable Contact contact,
        boolean coupling,
        int exit,
        @Nullable Obstacle kept,
        @Nullable RayHit ahead) {
    /** The same line ended by an obstacle outside. */
    RodLine keptAt(double limitM, Obstacle by) {
        return new RodLine(u, v, tu, tv, originM, axis, limitM > 0, limitM, null, false, -1, by, ahead);
    }

    /** The body when the nose is at the deepest. */
    WandPose pose(double radiusM) {
        return new WandPose(List.of(originM, originM.plus(depthM, axis)), radiusM, depthM);
    }
}
