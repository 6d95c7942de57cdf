package baymist.explain;

import baymist.access.Insertion;
import baymist.access.TipPose;
import baymist.geom.Vec3;
import baymist.scene.ProductSpec;
import baymist.scene.WandSpec;
import baymist.spray.JetSource;
import baymist.spray.SprayView;
import java.util.ArrayList;
import java.util.List;

/**
 * Guesses what jets would do to the region from poses that no run has tried: straight sight and the free jet's law. It proposes; runs
 * decide.
 */
final class JetGuess {
    /** Clock angles that are tried. */
    static final int CLOCKS = 12;
    /** Angles tried from one jet to the next of a ring. */
    private static final int BETWEEN = 4;
    /** From so many jets on a ring leaves nothing between them that a turn would wet. ASSUMED. */
    private static final int CLOSE = 12;

    private final Patch patch;
    private final int[] points;
    private final SprayView view;
    private final double[] open;
    private final double targetKgPerM2;

    JetGuess(Patch patch, SprayView view, double[] open, ProductSpec product, double targetM) {
        this.patch = patch;
        this.points = patch.sample(SightFacts.POINTS);
        this.view = view;
        this.open = open;
        this.targetKgPerM2 = targetM * product.densityKgPerM3();
    }

    /**
     * A place to stand.
     *
     * @param clockRad angle of the pin, rad
     * @param fill share of the target that would be there after {@code holdS}, 0..1
     * @param holdS time to stand there, s
     */
    record Stand(double depthM, double clockRad, double fill, double holdS) {
        static final Stand NONE = new Stand(0, 0, 0, 0);
    }

    /** Points of the region that are in view from a tip. */
    boolean[] seen(Vec3 tip) {
        boolean[] clear = new boolean[points.length];
        for (int k = 0; k < clear.length; k++) {
            clear[k] = SightFacts.faces(tip, patch, points[k])
                    && view.look(tip, patch.point(points[k]), open).clear();
        }
        return clear;
    }

    /** Whether one straight line between two places is free. */
    boolean free(Vec3 from, Vec3 to) {
        return view.look(from, to, open).clear();
    }

    /** Product per area and time at each point, kg/m²s. */
    double[] rate(WandSpec wand, TipPose pose, boolean[] clear) {
        List<JetSource> jets = view.jets(wand, pose);
        double[] kg = new double[points.length];
        for (int k = 0; k < kg.length; k++) {
            kg[k] = clear[k]
                    ? view.arrival(jets, patch.point(points[k]), patch.normal(points[k]))
                            .kgPerM2S()
                    : 0;
        }
        return kg;
    }

    /** Share of the target that a rate leaves in a time. */
    double fill(double[] rate, double timeS) {
        double sum = 0;
        for (double r : rate) {
            sum += Math.min(1, r * timeS / targetKgPerM2);
        }
        return sum / rate.length;
    }

    /** Best depth and pin of a wand on its way, each place held for a time. */
    Stand best(WandSpec wand, Insertion in, double holdS) {
        Stand best = Stand.NONE;
        for (double depth : depths(in, 0.02)) {
            boolean[] ahead = seen(in.path().tip(depth, 0).positionM());
            for (double clock : clocks(wand)) {
                TipPose pose = in.path().tip(depth, clock);
                boolean[] clear = wand.kind() == WandSpec.Kind.BENT ? seen(pose.positionM()) : ahead;
                double fill = fill(rate(wand, pose, clear), holdS);
                if (fill > best.fill() + 1e-9) {
                    best = new Stand(depth, clock, fill, holdS);
                }
            }
        }
        return best;
    }

    /** What a draw-back along a way would leave, with the pin at the better of the clock angles. */
    Stand drawn(WandSpec wand, Insertion in, double fromM, double toM, double speedMPerS) {
        List<Double> depths =
                depths(in, 0.02).stream().filter(d -> d <= fromM && d >= toM).toList();
        Stand best = Stand.NONE;
        boolean[][] ahead = new boolean[depths.size()][];
        for (int i = 0; i < ahead.length; i++) {
            ahead[i] = seen(in.path().tip(depths.get(i), 0).positionM());
        }
        for (double clock : clocks(wand)) {
            double[] kg = new double[points.length];
            for (int i = 0; i < ahead.length; i++) {
                TipPose pose = in.path().tip(depths.get(i), clock);
                boolean bent = wand.kind() == WandSpec.Kind.BENT;
                double[] rate = rate(wand, pose, bent ? seen(pose.positionM()) : ahead[i]);
                for (int k = 0; k < kg.length; k++) {
                    kg[k] += rate[k] * (fromM - toM) / depths.size() / speedMPerS;
                }
            }
            double fill = fill(kg, 1);
            if (fill > best.fill() + 1e-9) {
                best = new Stand(fromM, clock, fill, (fromM - toM) / speedMPerS);
            }
        }
        return best;
    }

    /** Angles of the pin that make a difference for a wand. */
    static double[] clocks(WandSpec wand) {
        boolean round = wand.kind() != WandSpec.Kind.BENT && wand.tip().jets().size() > 1 && evenRound(wand);
        int jets = wand.tip().jets().size();
        double turnRad = round ? 2 * Math.PI / jets : 2 * Math.PI;
        double[] clocks = new double[!round ? CLOCKS : jets < CLOSE ? BETWEEN : 1];
        for (int c = 0; c < clocks.length; c++) {
            clocks[c] = turnRad * c / clocks.length;
        }
        return clocks;
    }

    /** Whether the jets stand evenly all round the wand. */
    static boolean evenRound(WandSpec wand) {
        double x = 0;
        double y = 0;
        int n = wand.tip().jets().size();
        for (var jet : wand.tip().jets()) {
            x += Math.sin(jet.offAxisRad()) * Math.cos(jet.clockRad());
            y += Math.sin(jet.offAxisRad()) * Math.sin(jet.clockRad());
        }
        return Math.hypot(x, y) < 0.05 * n;
    }

    /** Depths along a way, deepest first, some 40 at most. */
    static List<Double> depths(Insertion in, double leastM) {
        double deepest = Math.max(0.5 * in.maxDepthM(), in.maxDepthM() - 2e-3);
        List<Double> depths = new ArrayList<>();
        int n = (int) Math.max(1, Math.min(40, Math.ceil((deepest - leastM) / 0.02)));
        for (int i = 0; i <= n; i++) {
            double d = deepest - (deepest - leastM) * i / n;
            if (d > 0 && (depths.isEmpty() || d < depths.get(depths.size() - 1))) {
                depths.add(d);
            }
        }
        return depths;
    }
}
