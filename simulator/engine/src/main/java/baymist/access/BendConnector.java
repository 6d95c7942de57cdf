package baymist.access;

import baymist.geom.Vec3;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Joins two headings in space by arc, straight and arc of one radius.
 *
 * <p>With <b>d</b> the direction of the straight, an arc of radius R from <b>t</b> to <b>d</b> through the angle a moves by
 * {@code R tan(a/2) (t + d)}, whichever way round it goes (tan is negative on the long way). So
 * {@code q - p - R τ0 t0 - R τ1 t1 = (L + R τ0 + R τ1) d} fixes d: it is iterated for each choice of the short or long way at both ends (after
 * Hota & Ghose 2010, Optimal geometrical path in 3D with curvature constraint, IROS). In a plane these are the four words CSC of
 * Dubins (1957). An iteration that does not settle gives no join: the search loses that short cut, nothing else.
 */
final class BendConnector {
    private static final int ROUNDS = 60;
    private static final double SETTLED = 1e-12;

    private BendConnector() {}

    /** Shortest of the joins found, as three pieces (some of them of length 0), or null. */
    static @Nullable List<PathPiece> join(Heading from, Heading to, double radiusM, boolean longWays) {
        List<PathPiece> best = null;
        double bestM = Double.POSITIVE_INFINITY;
        int ways = longWays ? 8 : 1;
        for (int way = 0; way < ways; way++) {
            boolean longFirst = (way & 1) != 0;
            boolean longLast = (way & 2) != 0;
            Vec3 d = settle(from, to, radiusM, longFirst, longLast, (way & 4) != 0);
            if (d == null) {
                continue;
            }
            List<PathPiece> pieces = pieces(from, to, radiusM, longFirst, longLast, d);
            if (pieces != null) {
                double length = lengthM(pieces);
                if (length < bestM) {
                    bestM = length;
                    best = pieces;
                }
            }
        }
        return best;
    }

    static double lengthM(List<PathPiece> pieces) {
        double sum = 0;
        for (PathPiece p : pieces) {
            sum += p.lengthM();
        }
        return sum;
    }

    private static @Nullable Vec3 settle(
            Heading from, Heading to, double radiusM, boolean longFirst, boolean longLast, boolean against) {
        Vec3 gap = to.atM().minus(from.atM());
        if (!(gap.length() > 0)) {
            return null;
        }
        Vec3 d = gap.unit();
        if (against) {
            d = d.negate();
        }
        for (int round = 0; round < ROUNDS; round++) {
            double first = halfTan(from.along(), d, longFirst);
            double last = halfTan(d, to.along(), longLast);
            Vec3 v = gap.plus(-radiusM * first, from.along()).plus(-radiusM * last, to.along());
            double size = v.length();
            if (!(size > 1e-12) || !Double.isFinite(size)) {
                return null;
            }
            Vec3 next = v.times((against ? -1 : 1) / size);
            double change = next.distance(d);
            if (change < SETTLED) {
                return next;
            }
            // half steps keep the far from contracting cases (long ways) from jumping to and fro
            Vec3 mean = round < 8 ? next : next.plus(d);
            if (!(mean.length() > 1e-9)) {
                return null;
            }
            d = mean.unit();
        }
        return null;
    }

    /** tan of half the angle from a to b, negative for the long way round. */
    private static double halfTan(Vec3 a, Vec3 b, boolean longWay) {
        double tan = Math.tan(angle(a, b) / 2);
        return longWay ? -tan : tan;
    }

    private static double angle(Vec3 a, Vec3 b) {
        return Math.atan2(a.cross(b).length(), a.dot(b));
    }

    private static @Nullable List<PathPiece> pieces(
            Heading from, Heading to, double radiusM, boolean longFirst, boolean longLast, Vec3 d) {
        PathPiece first = arc(from, d, radiusM, longFirst);
        Heading begin = first.end();
        double first2 = halfTan(from.along(), d, longFirst);
        double last2 = halfTan(d, to.along(), longLast);
        Vec3 v =
                to.atM().minus(from.atM()).plus(-radiusM * first2, from.along()).plus(-radiusM * last2, to.along());
        double straight = v.dot(d) - radiusM * (first2 + last2);
        if (straight < -1e-9) {
            return null;
        }
        PathPiece middle = PathPiece.straight(new Heading(begin.atM(), d), Math.max(0, straight));
        PathPiece last = arc(middle.end(), to.along(), radiusM, longLast);
        double miss = last.end().atM().distance(to.atM());
        return miss < 1e-6 * (radiusM + straight) ? List.of(first, middle, last) : null;
    }

    private static PathPiece arc(Heading from, Vec3 d, double radiusM, boolean longWay) {
        double angle = angle(from.along(), d);
        Vec3 side = d.plus(-d.dot(from.along()), from.along());
        if (side.length() < 1e-12) {
            return longWay
                    ? new PathPiece(from, from.along().anyPerpendicular(), 1 / radiusM, 2 * Math.PI * radiusM)
                    : PathPiece.straight(from, 0);
        }
        Vec3 towards = side.unit();
        return longWay
                ? new PathPiece(from, towards.negate(), 1 / radiusM, (2 * Math.PI - angle) * radiusM)
                : new PathPiece(from, towards, 1 / radiusM, angle * radiusM);
    }
}
