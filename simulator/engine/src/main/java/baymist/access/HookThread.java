package baymist.access;

import baymist.geom.PlacedOutline;
import baymist.geom.TriangleDistance;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;

/**
 * How a hook tube is threaded: slides and clock angles on a grid, flooded from outside over motions that are free from end to end.
 *
 * <p>A step slides the tube along its own centreline through the hole, or turns it about the hole's normal; the tube stands in the hole as
 * {@link HookFit} says. No point moves farther than m during a step. The step is free if the tube in the middle of it is free by m/2 of every sheet; if not,
 * it is halved, down to a tenth of a millimetre (Schwarzer, Saha & Latombe 2005). The entry's own sheet within 2 m of the hole is judged at those
 * middles without the margin, since the tube hardly moves there but along itself.
 */
final class HookThread {
    private static final double FINEST_M = 2e-4;
    private static final int DEEPEST_HALVING = 6;

    private final HookShape shape;
    private final HookSpace space;
    private final PlacedOutline hole;
    private final double holeRadiusM;
    private final double gaugeM;
    private final double mostM;
    private final double stepM;
    private final int slides;
    private final int clocks;
    private final int budget;
    /** Where each grid point was come to from; -1 = never, own index = start, [slides * clocks]. */
    private final int[] from;

    private final Map<Double, HookFit> known = new HashMap<>();
    private int tried;
    private long offers;

    HookThread(
            HookShape shape,
            HookSpace space,
            PlacedOutline hole,
            double holeRadiusM,
            double gaugeM,
            double mostM,
            int slides,
            int clocks,
            int budget) {
        this.shape = shape;
        this.space = space;
        this.hole = hole;
        this.holeRadiusM = holeRadiusM;
        this.gaugeM = gaugeM;
        this.mostM = mostM;
        this.slides = slides;
        this.clocks = clocks;
        this.budget = budget;
        this.stepM = mostM / (slides - 1);
        this.from = new int[slides * clocks];
    }

    /** Best stand at a slide; kept, since many clock angles ask for the same. */
    HookFit fit(double slideM) {
        return known.computeIfAbsent(slideM, s -> HookFit.of(shape, shape.lengthM() - s, holeRadiusM, gaugeM));
    }

    int slides() {
        return slides;
    }

    int clocks() {
        return clocks;
    }

    double slideM(int i) {
        return i * stepM;
    }

    double clockRad(int j) {
        return 2 * Math.PI * j / clocks;
    }

    HookFit fitAt(int i) {
        return fit(slideM(i));
    }

    boolean reached(int i, int j) {
        return from[i * clocks + j] >= 0;
    }

    int tried() {
        return tried;
    }

    HookPlace place(int i, int j) {
        return place(slideM(i), clockRad(j), fitAt(i));
    }

    HookPlace place(double slideM, double clockRad, HookFit fit) {
        return HookPlace.of(shape, slideM, clockRad, fit, hole);
    }

    /** Floods from the tube before the hole; deeper places go on first, so that a budget that ends early has gone deep. */
    void flood() {
        Arrays.fill(from, -1);
        PriorityQueue<long[]> open = new PriorityQueue<>(
                Comparator.comparingLong((long[] e) -> -e[0] / clocks).thenComparingLong(e -> e[1]));
        for (int j = 0; j < clocks; j++) {
            tried++;
            if (fitAt(0).clearanceM() >= 0 && space.free(place(0, j), 0, 0)) {
                from[j] = j;
                open.add(new long[] {j, offers++});
            }
        }
        while (!open.isEmpty() && tried < budget) {
            int at = (int) open.remove()[0];
            int i = at / clocks;
            int j = at % clocks;
            visit(open, at, i + 1, j);
            visit(open, at, i, (j + 1) % clocks);
            visit(open, at, i, (j + clocks - 1) % clocks);
            visit(open, at, i - 1, j);
        }
    }

    private void visit(PriorityQueue<long[]> open, int at, int i, int j) {
        if (i < 0 || i >= slides || from[i * clocks + j] >= 0) {
            return;
        }
        int i0 = at / clocks;
        double c0 = clockRad(at % clocks);
        double c1 = clockRad(j);
        if (c1 - c0 > Math.PI) {
            c1 -= 2 * Math.PI;
        } else if (c0 - c1 > Math.PI) {
            c1 += 2 * Math.PI;
        }
        if (fitAt(i).clearanceM() >= 0 && stepFree(slideM(i0), c0, slideM(i), c1, 0)) {
            from[i * clocks + j] = at;
            open.add(new long[] {i * clocks + j, offers++});
        }
    }

    private boolean stepFree(double s0, double c0, double s1, double c1, int depth) {
        double s = (s0 + s1) / 2;
        HookFit fit = fit(s);
        if (fit.clearanceM() < 0) {
            return false;
        }
        double motion = motionM(s0, c0, s1, c1);
        HookPlace middle = place(s, (c0 + c1) / 2, fit);
        tried++;
        if (space.free(middle, motion / 2, 2 * motion)) {
            return true;
        }
        if (depth >= DEEPEST_HALVING || motion < FINEST_M || !space.free(middle, 0, 0)) {
            return false;
        }
        return stepFree(s0, c0, s, (c0 + c1) / 2, depth + 1) && stepFree(s, (c0 + c1) / 2, s1, c1, depth + 1);
    }

    /** At least the way of any point of the tube between two places, m. */
    private double motionM(double s0, double c0, double s1, double c1) {
        double lever = Math.max(Math.max(s0, s1), shape.lengthM() - Math.min(s0, s1));
        HookFit a = fit(s0);
        HookFit b = fit(s1);
        double slide = Math.abs(s1 - s0);
        double turn = Math.abs(c1 - c0);
        // sliding turns the frame by the curvature in the hole; tilt and offset follow the fit
        double bend = slide * shape.sharpestNearPerM(Math.min(s0, s1), Math.max(s0, s1));
        double tilt = Math.abs(a.tiltRad() * Math.signum(a.bendDirection().dot(b.bendDirection())) - b.tiltRad());
        boolean sameSide = a.bendDirection().dot(b.bendDirection()) > 0;
        double offset = sameSide ? Math.abs(a.offsetM() - b.offsetM()) : Math.abs(a.offsetM()) + Math.abs(b.offsetM());
        return slide + lever * (turn + bend + tilt) + offset + turn * Math.abs(a.offsetM());
    }

    /** Grid points from outside to one that was reached. */
    List<int[]> way(int i, int j) {
        List<int[]> back = new ArrayList<>();
        int at = i * clocks + j;
        while (true) {
            back.add(new int[] {at / clocks, at % clocks});
            if (from[at] == at || from[at] < 0) {
                break;
            }
            at = from[at];
        }
        Collections.reverse(back);
        return back;
    }

    /** Deepest slide that was reached, -1 if none. */
    int deepest() {
        for (int i = slides - 1; i >= 0; i--) {
            for (int j = 0; j < clocks; j++) {
                if (reached(i, j)) {
                    return i;
                }
            }
        }
        return -1;
    }

    /** Reached clock angle nearest to the wanted one at a slide, -1 if none. */
    int nearestClock(int i, double wantedRad) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int j = 0; j < clocks; j++) {
            double d = Math.abs(Math.IEEEremainder(clockRad(j) - wantedRad, 2 * Math.PI));
            if (reached(i, j) && d < least) {
                least = d;
                best = j;
            }
        }
        return best;
    }

    /** A sheet that stops the tube, at one of its clock angles. */
    record Stop(HookSpace.Touch touch, int clock) {}

    /**
     * What keeps the tube from going one step deeper at the deepest slide: the sheet that it overlaps least when it tries, with the distance that the tube
     * still has from that place before.
     */
    @Nullable
    Stop stop(int i) {
        if (i + 1 >= slides) {
            return null;
        }
        HookSpace.Touch best = null;
        int at = -1;
        for (int j = 0; j < clocks; j++) {
            if (!reached(i, j) || fitAt(i + 1).clearanceM() < 0) {
                continue;
            }
            HookSpace.Touch touch = space.nearest(place(i + 1, j));
            if (touch != null && (best == null || touch.clearanceM() > best.clearanceM())) {
                best = touch;
                at = j;
            }
        }
        if (best == null) {
            return null;
        }
        WandPose before = place(i, at).pose();
        double left = Double.POSITIVE_INFINITY;
        for (int k = 0; k + 1 < before.centrelineM().size(); k++) {
            Vec3 foot = TriangleDistance.closestOnSegment(
                    best.placeM(),
                    before.centrelineM().get(k),
                    before.centrelineM().get(k + 1));
            left = Math.min(left, foot.distance(best.placeM()));
        }
        return new Stop(new HookSpace.Touch(best.part(), best.placeM(), Math.max(0, left - before.radiusM())), at);
    }

    double mostM() {
        return mostM;
    }

    Vec3 holeM() {
        return hole.centreM();
    }
}
