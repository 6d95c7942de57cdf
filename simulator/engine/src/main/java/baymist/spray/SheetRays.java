package baymist.spray;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Follows rays through the exact sheets: open inner openings let them pass by their exact outline, closed ones stop them as a
 * closure, open outer ones let them out. Immutable; a call keeps its own state.
 */
final class SheetRays {
    /** Distance from the start within which crossings are ignored, m: the start may lie on a sheet. */
    static final double START_M = 1e-9;

    /** Distance behind the start from which open inner openings are noticed, m: the start may lie in the plane of one. */
    private static final double BEHIND_M = 1e-6;

    /** What ends a ray. */
    enum End {
        SHEET,
        CLOSURE,
        OUTSIDE,
        NOTHING
    }

    /**
     * A followed ray.
     *
     * @param distanceM to its end; infinite for NOTHING
     * @param part part struck, or -1
     * @param opening opening left through or closure struck, or -1
     * @param towardsAir unit normal of the sheet on the side that the ray came from
     * @param passedM distances at which it passed open inner openings, ascending
     * @param passedOpening the openings passed, in the same order
     */
    record Followed(
            End end, double distanceM, int part, int opening, Vec3 towardsAir, double[] passedM, int[] passedOpening) {
        /** Whether it struck a sheet or a closed opening. */
        boolean struck() {
            return end == End.SHEET || end == End.CLOSURE;
        }
    }

    private static final double[] NONE = new double[0];

    private final Cavity cavity;
    private final SheetTracer tracer;
    private final int[][] openingsOfPart;
    private final int[] gaps;

    SheetRays(Cavity cavity, SheetTracer tracer) {
        this.cavity = cavity;
        this.tracer = tracer;
        List<List<Integer>> byPart = new ArrayList<>();
        cavity.parts().forEach(p -> byPart.add(new ArrayList<>()));
        List<Integer> gapList = new ArrayList<>();
        for (int i = 0; i < cavity.openings().size(); i++) {
            Opening opening = cavity.openings().get(i);
            if (opening.kind() == Opening.Kind.GAP) {
                gapList.add(i);
            } else {
                byPart.get(opening.part()).add(i);
            }
        }
        openingsOfPart = byPart.stream().map(SheetRays::toArray).toArray(int[][]::new);
        gaps = toArray(gapList);
    }

    private static int[] toArray(List<Integer> list) {
        return list.stream().mapToInt(Integer::intValue).toArray();
    }

    /**
     * Follows a ray.
     *
     * @param openFraction open share of each opening; above 0 it lets the ray pass
     * @param toM length after which the ray counts as having met nothing
     */
    Followed follow(Vec3 origin, Vec3 direction, double toM, double[] openFraction) {
        Passed passed = new Passed();
        Vec3 behind = origin.plus(-BEHIND_M, direction);
        SheetTracer.Crossing hit = tracer.nearest(behind, direction, 0, toM + BEHIND_M, (triangle, s, x, y, z) -> {
            int opening = openingAt(triangle, new Vec3(x, y, z));
            if (opening < 0
                    || openFraction[opening] <= 0
                    || cavity.openings().get(opening).exterior()) {
                return s - BEHIND_M > START_M;
            }
            passed.add(Math.max(0, s - BEHIND_M), opening);
            return false;
        });
        if (hit == null) {
            passed.endAt(toM);
            double never = Double.POSITIVE_INFINITY;
            return new Followed(End.NOTHING, never, -1, -1, direction.negate(), passed.t, passed.opening);
        }
        double t = hit.distanceM() - BEHIND_M;
        int opening = openingAt(hit.triangle(), origin.plus(t, direction));
        int part = cavity.partOfSheet(hit.triangle());
        Vec3 normal = cavity.sheets().normal(hit.triangle());
        Vec3 towardsAir = normal.dot(direction) > 0 ? normal.negate() : normal;
        End end = End.SHEET;
        if (opening >= 0 && openFraction[opening] <= 0) {
            end = End.CLOSURE;
        } else if (opening >= 0 && cavity.openings().get(opening).exterior()) {
            end = End.OUTSIDE;
        } else if (part < 0) {
            end = End.OUTSIDE;
        }
        passed.endAt(t);
        return new Followed(end, t, part, opening, towardsAir, passed.t, passed.opening);
    }

    /** Distance to the nearest sheet or closed opening, m, at most {@code toM}. */
    double clearM(Vec3 origin, Vec3 direction, double toM, double[] openFraction) {
        Followed f = follow(origin, direction, toM, openFraction);
        return f.struck() ? f.distanceM() : toM;
    }

    /** Opening of the triangle's part that holds the point, or -1. The caps of gaps belong to the nearest gap. */
    private int openingAt(int triangle, Vec3 point) {
        int part = cavity.partOfSheet(triangle);
        if (part >= 0) {
            for (int i : openingsOfPart[part]) {
                if (cavity.openings().get(i).place().contains(point)) {
                    return i;
                }
            }
            return -1;
        }
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int i : gaps) {
            double d = cavity.openings().get(i).place().centreM().distance(point);
            if (d < least) {
                least = d;
                best = i;
            }
        }
        return best;
    }

    /** Normal of an opening's sheet, on the side to which {@code direction} points. */
    Vec3 normalAlong(int opening, Vec3 direction) {
        Vec3 normal = cavity.openings().get(opening).place().normal();
        return normal.dot(direction) < 0 ? normal.negate() : normal;
    }

    /** Passages through open inner openings, ascending in distance whatever the order in which they were met. */
    private static final class Passed {
        private double[] t = NONE;
        private int[] opening = new int[0];

        void add(double distance, int through) {
            int at = Arrays.binarySearch(t, distance);
            if (at >= 0) {
                return;
            }
            at = -at - 1;
            double[] longer = Arrays.copyOf(t, t.length + 1);
            int[] more = Arrays.copyOf(opening, t.length + 1);
            System.arraycopy(t, at, longer, at + 1, t.length - at);
            System.arraycopy(opening, at, more, at + 1, t.length - at);
            longer[at] = distance;
            more[at] = through;
            t = longer;
            opening = more;
        }

        /** Forgets what lies beyond the end of the ray. */
        void endAt(double end) {
            int n = 0;
            while (n < t.length && t[n] < end) {
                n++;
            }
            if (n < t.length) {
                t = Arrays.copyOf(t, n);
                opening = Arrays.copyOf(opening, n);
            }
        }
    }
}
