package baymist.access;

import baymist.geom.Bvh;
import baymist.geom.Vec3;
import java.util.List;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * Where a round body has room among the sheets.
 *
 * <p>A piece of centreline is certified by halving: if the sheets are at least {@code radius + l/2} away from the middle of a
 * stretch of length l, no point of it is nearer than the radius, since distance changes by no more than the way gone (the bound of
 * Schwarzer, Saha & Latombe 2005, Adaptive dynamic collision checking, IEEE Trans. Robotics 21(3)). Otherwise the stretch is halved.
 * A stretch of less than {@link #FINEST_M} that cannot be certified counts as blocked: free means free, blocked may be free by
 * that much. The ball that is swept holds the flat-nosed rod, so this is on the safe side as well.
 *
 * <p>Holds a cache of distances: one thread at a time.
 */
final class FreeSpace {
    /** Shortest stretch that is still halved, m: what a blocked place may have been misjudged by. */
    static final double FINEST_M = 0.0001;

    private final Bvh bvh;
    private final DistanceField field;
    private final IntFunction<String> nameOf;
    private long exactQueries;
    private long lookUps;

    /**
     * @param sheets tree over everything that is in the way
     * @param nameOf what a technician calls a triangle of it
     * @param pitchM pitch of the lattice of distances, m
     */
    FreeSpace(Bvh sheets, IntFunction<String> nameOf, double pitchM) {
        this.bvh = sheets;
        this.nameOf = nameOf;
        this.field = new DistanceField(bvh, pitchM);
    }

    /**
     * What ends the way.
     *
     * @param alongM length of the piece that is certainly free, m
     * @param part name of the sheet met
     * @param placeM nearest point of the sheet, m
     * @param clearanceM distance of that point from the body's surface, m; negative = would be inside
     */
    record Block(double alongM, String part, Vec3 placeM, double clearanceM) {}

    /** What blocks a body of this radius along the piece first, or null if all of it is free. */
    @Nullable
    Block firstBlock(PathPiece piece, double radiusM) {
        return firstBlock(piece, 0, piece.lengthM(), radiusM);
    }

    /** Whether all of a piece is free; the far end and the middle are looked at first, since most pieces that fail do so there. */
    boolean free(PathPiece piece, double radiusM) {
        return roomM(piece.end().atM(), radiusM) >= radiusM && free(piece, 0, piece.lengthM(), radiusM);
    }

    private boolean free(PathPiece piece, double from, double to, double radiusM) {
        double half = (to - from) / 2;
        double d = roomM(piece.pointAt(from + half), radiusM + half);
        if (d >= radiusM + half) {
            return true;
        }
        if (d < radiusM || 2 * half <= FINEST_M) {
            return false;
        }
        // d is exact here: what lies within the slack of the middle is done
        double done = d - radiusM;
        return free(piece, from, from + half - done, radiusM) && free(piece, from + half + done, to, radiusM);
    }

    /** At least {@code neededM} if the sheets are that far from the point, otherwise their distance, m. */
    private double roomM(Vec3 p, double neededM) {
        lookUps++;
        if (field.atLeastM(p) >= neededM) {
            return neededM;
        }
        exactQueries++;
        return bvh.distanceBelow(p.x(), p.y(), p.z(), neededM);
    }

    private @Nullable Block firstBlock(PathPiece piece, double from, double to, double radiusM) {
        double half = (to - from) / 2;
        Vec3 middle = piece.pointAt(from + half);
        lookUps++;
        if (field.atLeastM(middle) >= radiusM + half) {
            return null;
        }
        exactQueries++;
        double d = bvh.distanceBelow(middle.x(), middle.y(), middle.z(), radiusM + half);
        if (d >= radiusM + half) {
            return null;
        }
        Bvh.Nearest nearest = 2 * half <= FINEST_M ? nearest(middle) : null;
        if (nearest != null && 2 * half <= FINEST_M) {
            return new Block(from, nameOf.apply(nearest.triangle()), nearest.point(), nearest.distanceM() - radiusM);
        }
        Block first = firstBlock(piece, from, from + half, radiusM);
        if (first != null) {
            return first;
        }
        return firstBlock(piece, from + half, to, radiusM);
    }

    /** Distance of the sheets from a point, m, exact; infinite where there is no sheet. */
    double distanceM(Vec3 p) {
        exactQueries++;
        return bvh.distanceBelow(p.x(), p.y(), p.z(), Double.POSITIVE_INFINITY);
    }

    Bvh.@Nullable Nearest nearest(Vec3 p) {
        exactQueries++;
        return bvh.nearest(p);
    }

    String nameOf(int triangle) {
        return nameOf.apply(triangle);
    }

    /**
     * Least clearance of a body along pieces, m, to {@code toleranceM}, and where.
     *
     * @return the least found, with its place; the true least lies no more than the tolerance below
     */
    Block leastClearance(List<PathPiece> pieces, double radiusM, double toleranceM) {
        Block[] least = {new Block(0, "", Vec3.ZERO, Double.POSITIVE_INFINITY)};
        double before = 0;
        for (PathPiece piece : pieces) {
            lower(piece, 0, piece.lengthM(), before, radiusM, toleranceM, least);
            before += piece.lengthM();
        }
        return least[0];
    }

    private void lower(
            PathPiece piece, double from, double to, double before, double radiusM, double toleranceM, Block[] least) {
        double half = (to - from) / 2;
        Vec3 middle = piece.pointAt(from + half);
        // where nothing on the stretch can come nearer than what is known, the nearest sheet need not be found
        double enough = radiusM + half + least[0].clearanceM() - toleranceM;
        if (Double.isFinite(enough) && roomM(middle, enough) >= enough) {
            return;
        }
        Bvh.Nearest nearest = nearest(middle);
        if (nearest == null) {
            return;
        }
        double clearance = nearest.distanceM() - radiusM;
        if (clearance < least[0].clearanceM()) {
            least[0] = new Block(before + from + half, nameOf.apply(nearest.triangle()), nearest.point(), clearance);
        }
        if (clearance - half >= least[0].clearanceM() - toleranceM || half <= 0) {
            return;
        }
        lower(piece, from, from + half, before, radiusM, toleranceM, least);
        lower(piece, from + half, to, before, radiusM, toleranceM, least);
    }

    /** Exact distance searches so far, those of the lattice included. */
    long exactQueries() {
        return exactQueries + field.exactQueries();
    }

    /** Look-ups of the lattice so far. */
    long lookUps() {
        return lookUps;
    }
}
