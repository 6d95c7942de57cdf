package baymist.plan;

import baymist.scene.PassSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Plans to begin a search with: from the linear program, whole lines, the scene's own passes. */
final class Beginnings {
    /** Rates tried for new strokes, m/s, within the limits of a plan. */
    private static final double[] RATES = {0.05, 0.1, 0.2, 0.4};

    /** Depths that single strokes begin at, parts of a line. */
    private static final int DEPTHS = 5;

    /** Neighbouring stations whose times differ by less than this factor are drawn at one rate. */
    private static final double ALIKE = 2.5;

    private final DoseMatrix matrix;
    private final PlanLimits limits;

    Beginnings(DoseMatrix matrix, PlanLimits limits) {
        this.matrix = matrix;
        this.limits = limits;
    }

    /** Strokes where the program puts time: neighbouring stations of about the same time in one stroke at the rate that gives it. */
    List<Stroke> strokes(double[][] seconds) {
        List<Stroke> all = new ArrayList<>();
        for (int l = 0; l < seconds.length; l++) {
            double spacing = matrix.lines().get(l).spacingM();
            double least = 0.25 * spacing / limits.fastestMPerS();
            int k = 0;
            while (k < seconds[l].length) {
                int first = k;
                double time = 0;
                double low = Double.POSITIVE_INFINITY;
                double high = 0;
                while (k < seconds[l].length && seconds[l][k] >= least) {
                    low = Math.min(low, seconds[l][k]);
                    high = Math.max(high, seconds[l][k]);
                    if (high > ALIKE * low) {
                        break;
                    }
                    time += seconds[l][k++];
                }
                if (k > first) {
                    all.add(new Stroke(l, first, k - 1, limits.held((k - first) * spacing / time)));
                } else {
                    k++;
                }
            }
        }
        return all;
    }

    /** The best whole lines, each as one stroke. */
    List<List<Stroke>> wholeLines(int most) {
        List<List<Stroke>> all = new ArrayList<>();
        for (int l = 0; l < matrix.lines().size(); l++) {
            int last = matrix.lines().get(l).stations() - 1;
            List<List<Stroke>> line = new ArrayList<>();
            for (double rate : rates()) {
                List<Stroke> one = List.of(new Stroke(l, 0, last, rate));
                if (keeps(one)) {
                    line.add(one);
                }
            }
            line.stream().max(Comparator.comparingDouble(this::worth)).ifPresent(all::add);
        }
        all.sort(Comparator.comparingDouble((List<Stroke> p) -> -worth(p)));
        return List.copyOf(all.subList(0, Math.min(most, all.size())));
    }

    /**
     * The best single strokes to the entry by the matrix, at most one of a line: from depths evenly along it, at the rates that are tried and at the one that just
     * keeps the limits. What a hand does that knows no plan.
     */
    List<List<Stroke>> singles(int most) {
        List<List<Stroke>> all = new ArrayList<>();
        for (int l = 0; l < matrix.lines().size(); l++) {
            int n = matrix.lines().get(l).stations();
            List<List<Stroke>> line = new ArrayList<>();
            for (int part = 0; part < DEPTHS; part++) {
                int first = part * n / DEPTHS;
                List<Stroke> slowest = within(List.of(new Stroke(l, first, n - 1, limits.slowestMPerS())));
                if (!slowest.isEmpty()) {
                    line.add(slowest);
                }
                for (double rate : rates()) {
                    List<Stroke> one = List.of(new Stroke(l, first, n - 1, rate));
                    if (keeps(one)) {
                        line.add(one);
                    }
                }
            }
            line.stream().max(Comparator.comparingDouble(this::worth)).ifPresent(all::add);
        }
        all.sort(Comparator.comparingDouble((List<Stroke> p) -> -worth(p)));
        return List.copyOf(all.subList(0, Math.min(most, all.size())));
    }

    /** All lines of the best way together, in the same time each: every side gets its share. */
    List<Stroke> allLines() {
        List<Stroke> all = new ArrayList<>();
        int lines = Math.min(matrix.lines().size(), limits.passes());
        int step = (matrix.lines().size() + lines - 1) / lines;
        for (int l = 0; l < matrix.lines().size(); l += step) {
            all.add(new Stroke(l, 0, matrix.lines().get(l).stations() - 1, limits.slowestMPerS()));
        }
        return within(all);
    }

    /** Strokes like these passes: the line of the same wand in the same entry with the nearest clock angle; passes that have none are left out. */
    List<Stroke> like(List<PassSpec> passes) {
        List<Stroke> all = new ArrayList<>();
        for (PassSpec p : passes) {
            int best = -1;
            for (int l = 0; l < matrix.lines().size(); l++) {
                DoseLine line = matrix.lines().get(l);
                boolean same = line.pass().entry().equals(p.entry())
                        && line.pass().wand().equals(p.wand());
                if (same && (best < 0 || off(line, p) < off(matrix.lines().get(best), p))) {
                    best = l;
                }
            }
            if (best >= 0) {
                all.add(like(p, best));
            }
        }
        return within(all);
    }

    private static double off(DoseLine line, PassSpec pass) {
        double period = DoseLines.periodRad(line.wand().tip());
        return period == 0 ? 0 : Math.abs(Math.IEEEremainder(line.clockRad() - pass.clockRad(), period));
    }

    private Stroke like(PassSpec p, int l) {
        DoseLine line = matrix.lines().get(l);
        int first = 0;
        int last = line.stations() - 1;
        while (first < last && line.depthsM()[first] > p.fromDepthM()) {
            first++;
        }
        while (last > first && line.depthsM()[last] < p.toDepthM()) {
            last--;
        }
        return new Stroke(l, first, last, limits.held(p.drawBackMPerS()));
    }

    /** Strokes that might be added to a plan. */
    List<Stroke> additions() {
        List<Stroke> all = new ArrayList<>();
        for (int l = 0; l < matrix.lines().size(); l++) {
            int n = matrix.lines().get(l).stations();
            for (double rate : rates()) {
                all.add(new Stroke(l, 0, n - 1, rate));
                int part = Math.max(1, n / 4);
                for (int from = 0; from < n && part < n; from += part) {
                    all.add(new Stroke(l, from, Math.min(n, from + part) - 1, rate));
                }
            }
        }
        return all;
    }

    /** A plan within the limits: all strokes as much faster as it takes, the last ones left out where that is not enough. */
    List<Stroke> within(List<Stroke> plan) {
        List<Stroke> now = new ArrayList<>(plan.subList(0, Math.min(plan.size(), limits.passes())));
        while (!now.isEmpty() && !keeps(now)) {
            double factor = 1.0005 * use(now);
            List<Stroke> faster = new ArrayList<>();
            for (Stroke s : now) {
                double rate = limits.rounded(Math.min(limits.fastestMPerS(), s.rateMPerS() * factor));
                faster.add(new Stroke(s.line(), s.first(), s.last(), rate));
            }
            if (use(faster) > 0.9999 * use(now)) {
                faster.remove(faster.size() - 1);
            }
            now = faster;
        }
        return now;
    }

    private double use(List<Stroke> plan) {
        return limits.use(
                plan.stream().mapToDouble(matrix::triggerS).sum(),
                plan.stream().mapToDouble(matrix::productM3).sum());
    }

    private boolean keeps(List<Stroke> plan) {
        return use(plan) <= 1 + 1e-9;
    }

    private double worth(List<Stroke> plan) {
        return matrix.score(plan).worth(limits, plan.size());
    }

    private double[] rates() {
        return java.util.Arrays.stream(RATES).map(limits::held).distinct().toArray();
    }
}
