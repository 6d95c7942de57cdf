package baymist.spray;

import baymist.geom.Vec3;
import org.jspecify.annotations.Nullable;

/**
 * Nearest crossing of a ray with the whole sheets of a cavity ({@code Cavity.sheets()}: openings not cut). It must be exact
 * (every triangle is considered) and safe to call from several threads.
 */
public interface SheetTracer {
    /** A crossing: distance along the unit direction, m, and the triangle of {@code Cavity.sheets()}. */
    record Crossing(double distanceM, int triangle) {}

    /** Decides whether a crossing counts; called in any order, perhaps for crossings beyond the nearest one. */
    @FunctionalInterface
    interface Filter {
        boolean counts(int triangle, double distanceM, double xM, double yM, double zM);
    }

    /**
     * Nearest crossing with {@code fromM < distance < toM} that counts, or null.
     *
     * @param direction unit vector
     */
    @Nullable
    Crossing nearest(Vec3 originM, Vec3 direction, double fromM, double toM, Filter filter);
}
