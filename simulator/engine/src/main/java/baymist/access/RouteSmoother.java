package baymist.access;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Makes a path that was found on a lattice shorter and straighter between its ends.
 *
 * <ol>
 *   <li>Pieces of one curvature in one plane become one.
 *   <li>Short cuts: two places on the way are joined by arc, straight and arc where that is cheaper and allowed.
 *   <li>Stretching: the length of one piece is changed a little, those up to the middle of a later one follow rigidly, from there the goal is joined
 *       anew; changes that are cheaper stay; the changes are halved down to a hundredth of a radius.
 * </ol>
 *
 * <p>Cost is length plus a share of the sum of bends. Every path that is taken has been allowed by the caller's test; a fixed number of tries.
 */
final class RouteSmoother {
    private static final int ROUNDS = 3;
    private static final int MOST_TRIES = 6000;

    private final double radiusM;
    private final double bendCostM;
    private final Predicate<List<PathPiece>> allowed;
    private final boolean longWays;
    private int tries;

    /**
     * @param radiusM radius of the arcs that join
     * @param bendCostM length that a radian counts for, m
     * @param allowed whether a whole path from the start is free and within the limits
     */
    RouteSmoother(double radiusM, double bendCostM, boolean longWays, Predicate<List<PathPiece>> allowed) {
        this.radiusM = radiusM;
        this.bendCostM = bendCostM;
        this.longWays = longWays;
        this.allowed = allowed;
    }

    double cost(List<PathPiece> pieces) {
        double sum = 0;
        for (PathPiece p : pieces) {
            sum += p.lengthM() + bendCostM * p.bendRad();
        }
        return sum;
    }

    /** The same ends, at no more cost. */
    List<PathPiece> smooth(List<PathPiece> path) {
        List<PathPiece> best = merged(path);
        for (int round = 0; round < ROUNDS; round++) {
            double before = cost(best);
            best = merged(shortCuts(best));
            best = merged(stretch(best));
            if (cost(best) > before * (1 - 1e-5)) {
                break;
            }
        }
        return best;
    }

    /** Neighbours of one curvature in one plane put together, pieces without length left out. */
    static List<PathPiece> merged(List<PathPiece> path) {
        List<PathPiece> out = new ArrayList<>();
        for (PathPiece p : path) {
            if (p.lengthM() < 1e-9) {
                continue;
            }
            PathPiece last = out.isEmpty() ? null : out.get(out.size() - 1);
            if (last != null && continues(last, p)) {
                out.set(
                        out.size() - 1,
                        new PathPiece(
                                last.start(), last.towards(), last.curvaturePerM(), last.lengthM() + p.lengthM()));
            } else {
                out.add(p);
            }
        }
        return out;
    }

    private static boolean continues(PathPiece a, PathPiece b) {
        if (Math.abs(a.curvaturePerM() - b.curvaturePerM()) > 1e-9 * a.curvaturePerM()
                || a.bendRad() + b.bendRad() > 2 * Math.PI) {
            return false;
        }
        return a.curvaturePerM() == 0 || a.carry(a.towards()).distance(b.towards()) < 1e-7;
    }

    private List<PathPiece> shortCuts(List<PathPiece> path) {
        List<PathPiece> best = path;
        for (int i = 0; i < best.size(); i++) {
            for (int j = best.size() - 1; j > i && tries < MOST_TRIES; j--) {
                tries++;
                List<PathPiece> join =
                        cheapestJoin(best.get(i).start(), best.get(j).end(), i < 3 && j == best.size() - 1);
                if (join == null || cost(join) >= cost(best.subList(i, j + 1)) - 1e-7 * radiusM) {
                    continue;
                }
                List<PathPiece> candidate = new ArrayList<>(best.subList(0, i));
                candidate.addAll(join);
                candidate.addAll(best.subList(j + 1, best.size()));
                if (allowed.test(candidate)) {
                    best = merged(candidate);
                    break;
                }
            }
        }
        return best;
    }

    private @Nullable List<PathPiece> cheapestJoin(Heading from, Heading to, boolean thorough) {
        if (!longWays) {
            return BendConnector.join(from, to, radiusM);
        }
        List<PathPiece> plain = BendConnector.joinAnyWay(from, to, radiusM);
        if (!thorough) {
            return plain;
        }
        List<PathPiece> led = BendConnector.joinAfterArc(from, to, radiusM);
        return led != null && (plain == null || cost(led) < cost(plain)) ? led : plain;
    }

    private List<PathPiece> stretch(List<PathPiece> path) {
        List<PathPiece> best = path;
        Heading goal = path.get(path.size() - 1).end();
        for (double change = radiusM / 2; change > radiusM / 100; change /= 2) {
            boolean better = true;
            for (int round = 0; better && round < 8; round++) {
                better = false;
                for (int keep = 1; keep < best.size() && tries < MOST_TRIES; keep++) {
                    List<PathPiece> candidate = stretched(best, keep, change, goal);
                    if (candidate != null) {
                        best = merged(candidate);
                        better = true;
                    }
                }
            }
        }
        return best;
    }

    /** The first {@code keep} pieces with one of them longer or shorter, then a join; null if nothing is cheaper. */
    private @Nullable List<PathPiece> stretched(List<PathPiece> path, int keep, double change, Heading goal) {
        double cost = cost(path);
        for (int i = 0; i < keep; i++) {
            for (int sign = -1; sign <= 1; sign += 2) {
                List<PathPiece> candidate = rejoined(path, keep, i, sign * change, goal);
                if (candidate != null && cost(candidate) < cost - 1e-6 * radiusM && allowed.test(candidate)) {
                    return candidate;
                }
            }
        }
        return null;
    }

    private @Nullable List<PathPiece> rejoined(List<PathPiece> path, int keep, int i, double change, Heading goal) {
        tries++;
        List<PathPiece> kept = new ArrayList<>(path.subList(0, keep));
        if (i < keep - 1) {
            // the join takes over in the middle of the last piece, so that it can go on with the same arc or not
            PathPiece last = kept.get(keep - 1);
            kept.set(keep - 1, last.cut(last.lengthM() / 2));
        }
        List<PathPiece> moved = moved(kept, i, kept.get(i).lengthM() + change);
        List<PathPiece> join = BendConnector.join(moved.get(moved.size() - 1).end(), goal, radiusM);
        if (join == null) {
            return null;
        }
        moved.addAll(join);
        return moved;
    }

    /** Pieces with one length changed, the later ones carried along rigidly. */
    private static List<PathPiece> moved(List<PathPiece> pieces, int changed, double lengthM) {
        List<PathPiece> out = new ArrayList<>(pieces.subList(0, changed));
        PathPiece old = pieces.get(changed);
        PathPiece now = old.cut(Math.max(0, lengthM));
        out.add(now);
        Vec3 oldAcross = old.carry(old.towards());
        Vec3 newAcross = now.carry(now.towards());
        for (PathPiece p : pieces.subList(changed + 1, pieces.size())) {
            Vec3 along = p.start().along();
            Vec3 oldOther = along.cross(oldAcross);
            Heading start = out.get(out.size() - 1).end();
            Vec3 newOther = start.along().cross(newAcross);
            Vec3 towards = newAcross
                    .times(p.towards().dot(oldAcross))
                    .plus(p.towards().dot(oldOther), newOther)
                    .unit();
            PathPiece turned = new PathPiece(start, towards, p.curvaturePerM(), p.lengthM());
            out.add(turned);
            oldAcross = p.carry(oldAcross);
            newAcross = turned.carry(newAcross);
        }
        return out;
    }
}
