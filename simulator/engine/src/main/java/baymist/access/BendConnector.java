package baymist.access;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Joins two headings in space by arc, straight and arc of one radius.
 *
 * <p>With <b>d</b> the direction of the straight, an arc of radius R from <b>t</b> to <b>d</b> through the angle a moves by
 * {@code R tan(a/2) (t + d)}. So {@code q - p - R τ0 t0 - R τ1 t1 = (L + R τ0 + R τ1) d} with τ = tan(a/2) fixes d: it is iterated, and finished
 * with Newton's method (after Hota & Ghose 2010, Optimal geometrical path in 3D with curvature constraint, IROS). In a plane these are the four
 * words CSC of Dubins (1957) with arcs below half a turn. An iteration that does not settle gives no join: the search loses that short cut, nothing
 * else.
 */
final class BendConnector {
    private static final int ROUNDS = 24;
    private static final double SETTLED = 1e-11;
    /** Arcs that the long ways round begin with, rad. */
    private static final double[] LEADS = {2 * Math.PI / 3, 4 * Math.PI / 3};

    private BendConnector() {}

    /** The join with arcs below half a turn, as three pieces (some of them may have length 0), or null. */
    static @Nullable List<PathPiece> join(Heading from, Heading to, double radiusM) {
        Vec3 gap = to.atM().minus(from.atM());
        if (!(gap.length() > 0)) {
            return null;
        }
        Vec3 d = gap.unit();
        Join join = new Join(from, to, radiusM);
        for (int round = 0; round < ROUNDS; round++) {
            Vec3 v = join.chord(d);
            double size = v.length();
            if (!(size > 1e-12) || !Double.isFinite(size)) {
                return null;
            }
            Vec3 next = v.times(1 / size);
            if (next.distance(d) < SETTLED) {
                return join.pieces(next);
            }
            Vec3 improved = round < ROUNDS / 3 ? next : join.newton(d);
            if (improved == null) {
                return null;
            }
            d = improved;
        }
        return null;
    }

    /**
     * Shortest of the joins whose first or last arc goes on through more than half a turn, or with arcs at the ends that turn away first; null if none
     * was found.
     */
    static @Nullable List<PathPiece> joinAnyWay(Heading from, Heading to, double radiusM) {
        List<PathPiece> best = join(from, to, radiusM);
        List<PathPiece> firsts = leads(from, to.atM(), radiusM);
        List<PathPiece> lasts = leads(new Heading(to.atM(), to.along().negate()), from.atM(), radiusM);
        for (PathPiece first : firsts) {
            for (PathPiece last : lasts) {
                Heading end = last.end();
                List<PathPiece> middle =
                        join(first.end(), new Heading(end.atM(), end.along().negate()), radiusM);
                if (middle == null) {
                    continue;
                }
                List<PathPiece> all = new ArrayList<>();
                all.add(first);
                all.addAll(middle);
                all.add(reversed(last));
                if (best == null || lengthM(all) < lengthM(best)) {
                    best = all;
                }
            }
        }
        return best;
    }

    /** Nothing, and arcs to both sides in the plane of the heading and the goal. */
    private static List<PathPiece> leads(Heading from, Vec3 goal, double radiusM) {
        List<PathPiece> leads = new ArrayList<>();
        leads.add(PathPiece.straight(from, 0));
        Vec3 towards = sideOf(from, goal, radiusM);
        for (double lead : LEADS) {
            leads.add(new PathPiece(from, towards, 1 / radiusM, lead * radiusM));
            leads.add(new PathPiece(from, towards.negate(), 1 / radiusM, lead * radiusM));
        }
        return leads;
    }

    private static Vec3 sideOf(Heading from, Vec3 goal, double radiusM) {
        Vec3 gap = goal.minus(from.atM());
        Vec3 side = gap.plus(-gap.dot(from.along()), from.along());
        return side.length() > 1e-9 * radiusM ? side.unit() : from.along().anyPerpendicular();
    }

    private static PathPiece reversed(PathPiece p) {
        Heading end = p.end();
        return new PathPiece(
                new Heading(end.atM(), end.along().negate()), p.carry(p.towards()), p.curvaturePerM(), p.lengthM());
    }

    /**
     * Shortest join found that begins with an arc, or null: three arcs in a row (Dubins' words CCC) are such joins with next to no straight. They pay
     * only where the ends are less than four radii apart; the first arc's angle is found by sampling and golden section.
     */
    static @Nullable List<PathPiece> joinAfterArc(Heading from, Heading to, double radiusM) {
        if (to.atM().distance(from.atM()) > 4 * radiusM) {
            return null;
        }
        Vec3 towards = sideOf(from, to.atM(), radiusM);
        List<PathPiece> best = null;
        for (int sign = -1; sign <= 1; sign += 2) {
            Led led = new Led(from, towards.times(sign), to, radiusM);
            List<PathPiece> found = led.pieces(led.bestRad());
            if (found != null && (best == null || lengthM(found) < lengthM(best))) {
                best = found;
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

    private static double angle(Vec3 a, Vec3 b) {
        return Math.atan2(a.cross(b).length(), a.dot(b));
    }

    private record Led(Heading from, Vec3 towards, Heading to, double radiusM) {
        private static final int SAMPLES = 32;
        private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

        @Nullable
        List<PathPiece> pieces(double rad) {
            PathPiece first = new PathPiece(from, towards, 1 / radiusM, rad * radiusM);
            List<PathPiece> rest = joinAnyWay(first.end(), to, radiusM);
            if (rest == null) {
                return null;
            }
            List<PathPiece> all = new ArrayList<>();
            all.add(first);
            all.addAll(rest);
            return all;
        }

        double length(double rad) {
            List<PathPiece> all = pieces(rad);
            return all == null ? Double.POSITIVE_INFINITY : lengthM(all);
        }

        double bestRad() {
            double step = 2 * Math.PI / SAMPLES;
            int least = 0;
            double leastM = Double.POSITIVE_INFINITY;
            for (int i = 0; i < SAMPLES; i++) {
                double l = length(i * step);
                if (l < leastM) {
                    leastM = l;
                    least = i;
                }
            }
            double a = Math.max(0, (least - 1) * step);
            double b = (least + 1) * step;
            for (int i = 0; i < 20; i++) {
                double c = b - GOLDEN * (b - a);
                double d = a + GOLDEN * (b - a);
                if (length(c) <= length(d)) {
                    b = d;
                } else {
                    a = c;
                }
            }
            double middle = (a + b) / 2;
            return length(middle) < leastM ? middle : least * step;
        }
    }

    private record Join(Heading from, Heading to, double radiusM) {
        /** What is left of the gap when the parts of both arcs along the end directions are taken off, m; along d where d is right. */
        Vec3 chord(Vec3 d) {
            return to.atM()
                    .minus(from.atM())
                    .plus(-radiusM * Math.tan(angle(from.along(), d) / 2), from.along())
                    .plus(-radiusM * Math.tan(angle(d, to.along()) / 2), to.along());
        }

        /** One step of Newton's method for the part of the chord across d, differences for the derivatives. */
        @Nullable
        Vec3 newton(Vec3 d) {
            Vec3 e = d.anyPerpendicular();
            Vec3 f = d.cross(e);
            double h = 1e-7;
            Vec3 v = chord(d);
            Vec3 ve = chord(d.plus(h, e).unit());
            Vec3 vf = chord(d.plus(h, f).unit());
            // the chord must stay along the turned d: subtract its component that turns with d
            double along = v.dot(d);
            double a = ve.minus(v).dot(e) / h - along;
            double b = vf.minus(v).dot(e) / h;
            double c = ve.minus(v).dot(f) / h;
            double g = vf.minus(v).dot(f) / h - along;
            double det = a * g - b * c;
            if (!(Math.abs(det) > 1e-12 * radiusM * radiusM)) {
                return null;
            }
            double re = -v.dot(e);
            double rf = -v.dot(f);
            double x = (re * g - rf * b) / det;
            double y = (a * rf - c * re) / det;
            double size = Math.hypot(x, y);
            double limit = size > 0.5 ? 0.5 / size : 1;
            return d.plus(limit * x, e).plus(limit * y, f).unit();
        }

        @Nullable
        List<PathPiece> pieces(Vec3 d) {
            double tans = Math.tan(angle(from.along(), d) / 2) + Math.tan(angle(d, to.along()) / 2);
            double straight = chord(d).dot(d) - radiusM * tans;
            // a turn straight back has no plane of its own
            boolean back = from.along().dot(d) < -1 + 1e-9 || to.along().dot(d) < -1 + 1e-9;
            if (straight < -1e-9 || back) {
                return null;
            }
            PathPiece first = arc(from, d);
            PathPiece middle = PathPiece.straight(new Heading(first.end().atM(), d), Math.max(0, straight));
            PathPiece last = arc(middle.end(), to.along());
            Heading end = last.end();
            double miss = end.atM().distance(to.atM()) / (radiusM + straight)
                    + end.along().distance(to.along());
            return miss < 1e-6 ? List.of(first, middle, last) : null;
        }

        private PathPiece arc(Heading begin, Vec3 d) {
            Vec3 side = d.plus(-d.dot(begin.along()), begin.along());
            if (side.length() < 1e-12) {
                return PathPiece.straight(begin, 0);
            }
            return new PathPiece(begin, side.unit(), 1 / radiusM, angle(begin.along(), d) * radiusM);
        }
    }
}
