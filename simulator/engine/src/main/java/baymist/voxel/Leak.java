package baymist.voxel;

import baymist.geom.Vec3;
import java.util.List;

/**
 * A place where outside air reaches the cavity although every opening is closed.
 *
 * @param positionM the tightest place on the way, m
 * @param where in words
 * @param wayM places that the air passes from outside to the inside, m; empty if no way was followed
 */
public record Leak(Vec3 positionM, String where, List<Vec3> wayM) {
    public Leak {
        wayM = List.copyOf(wayM);
    }

    public Leak(Vec3 positionM, String where) {
        this(positionM, where, List.of());
    }
}
