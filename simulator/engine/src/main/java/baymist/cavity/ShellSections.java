package baymist.cavity;

import baymist.scene.ShellSpec;
import baymist.scene.ShellSpec.HalfBreadth;
import baymist.scene.ShellSpec.Measured;
import baymist.scene.ShellSpec.Oval;
import baymist.scene.ShellSpec.Station;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;

/**
 * Right halves of a shell's sections, all divided in step, so that equal rows of neighbouring stations can be joined.
 *
 * <p>A row is a value of one parameter. Where all stations are ovals it is the share of the half turn from keel to crown;
 * otherwise the share of the height, with -1..0 across a flat bottom and 1..2 across a flat top, so that every measured
 * height is a row of its own.
 */
final class ShellSections {
    /** Largest gap between a chord and the curve that it stands for, m and as a share of the least half size. */
    static final double CHORD_M = 5e-4;

    static final double CHORD_SHARE = 5e-3;
    /** Half-turn divisions tried, from the fewest. */
    private static final int FEWEST = 8;

    private static final int MOST = 180;
    private static final int SAMPLES = 2000;
    private static final double SAME_ROW = 1e-9;

    private final List<Station> stations;
    private final boolean byHeight;
    private final double[] rows;
    /** Rows at which stringers stand, from the keel up the right side; numbers of rows. */
    private final int[] stringerRows;

    private ShellSections(List<Station> stations, boolean byHeight, double[] rows, int[] stringerRows) {
        this.stations = stations;
        this.byHeight = byHeight;
        this.rows = rows;
        this.stringerRows = stringerRows;
    }

    /** Divides the girth. The measures must have been checked. */
    static ShellSections of(ShellSpec spec) {
        boolean byHeight = spec.stations().stream().anyMatch(Measured.class::isInstance);
        boolean flats = spec.stations().stream().anyMatch(s -> s instanceof Measured m && hasFlat(m));
        ShellSections bare = new ShellSections(spec.stations(), byHeight, new double[0], new int[0]);
        TreeSet<Double> fixed = new TreeSet<>(List.of(0.0, 1.0));
        if (flats) {
            fixed.addAll(List.of(-1.0, 2.0));
        }
        for (Station s : spec.stations()) {
            if (s instanceof Measured m) {
                m.breadths().forEach(b -> fixed.add((b.upM() - low(m)) / (high(m) - low(m))));
            }
        }
        double[] feet = bare.feet(spec.stringers(), flats ? -1 : 0, flats ? 2 : 1);
        for (double f : feet) {
            fixed.add(f);
        }
        double[] rows = merged(fixed, bare.curveRows(spec));
        int[] at = new int[feet.length];
        for (int i = 0; i < at.length; i++) {
            at[i] = nearest(rows, feet[i]);
        }
        return new ShellSections(spec.stations(), byHeight, rows, at);
    }

    private static boolean hasFlat(Measured m) {
        List<HalfBreadth> b = m.breadths();
        return b.get(0).halfM() > 0 || b.get(b.size() - 1).halfM() > 0;
    }

    private static double low(Measured m) {
        return m.breadths().get(0).upM();
    }

    private static double high(Measured m) {
        return m.breadths().get(m.breadths().size() - 1).upM();
    }

    int rows() {
        return rows.length;
    }

    int[] stringerRows() {
        return stringerRows.clone();
    }

    /** Points {right, up} of a station's right half, keel first, m. [rows] */
    double[][] section(Station station) {
        double[][] points = new double[rows.length][];
        for (int k = 0; k < rows.length; k++) {
            points[k] = point(station, rows[k]);
        }
        return points;
    }

    private double[] point(Station station, double row) {
        if (station instanceof Measured m) {
            return measured(m, row);
        }
        Oval oval = (Oval) station;
        return byHeight ? ovalAtHeight(oval, Math.min(1, Math.max(0, row))) : ovalAtTurn(oval, row);
    }

    private static double[] ovalAtTurn(Oval o, double row) {
        if (row == 0) {
            return new double[] {0, o.centreUpM() - o.belowM()};
        }
        if (row == 1) {
            return new double[] {0, o.centreUpM() + o.aboveM()};
        }
        double angle = Math.PI * (row - 0.5);
        double right = Math.pow(Math.cos(angle), 2 / o.roundness());
        double up = Math.pow(Math.abs(Math.sin(angle)), 2 / o.roundness());
        return new double[] {o.halfWidthM() * right, o.centreUpM() + (angle < 0 ? -o.belowM() : o.aboveM()) * up};
    }

    private static double[] ovalAtHeight(Oval o, double row) {
        double up = o.centreUpM() - o.belowM() + row * (o.aboveM() + o.belowM());
        double share = up < o.centreUpM() ? (o.centreUpM() - up) / o.belowM() : (up - o.centreUpM()) / o.aboveM();
        if (row == 0 || row == 1 || share >= 1) {
            return new double[] {0, up};
        }
        return new double[] {o.halfWidthM() * Math.pow(1 - Math.pow(share, o.roundness()), 1 / o.roundness()), up};
    }

    private static double[] measured(Measured m, double row) {
        List<HalfBreadth> b = m.breadths();
        if (row < 0) {
            return new double[] {b.get(0).halfM() * (1 + row), low(m)};
        }
        if (row > 1) {
            return new double[] {b.get(b.size() - 1).halfM() * (2 - row), high(m)};
        }
        double up = low(m) + row * (high(m) - low(m));
        for (int k = 0; k + 1 < b.size(); k++) {
            double from = b.get(k).upM();
            double to = b.get(k + 1).upM();
            if (up <= to || k + 2 == b.size()) {
                double s = Math.min(1, Math.max(0, (up - from) / (to - from)));
                // rows of measured heights give the measured breadth itself
                s = Math.abs(s) < 1e-9 ? 0 : Math.abs(s - 1) < 1e-9 ? 1 : s;
                return new double[] {
                    b.get(k).halfM() + s * (b.get(k + 1).halfM() - b.get(k).halfM()), up
                };
            }
        }
        throw new IllegalStateException("a measured station has two heights at least");
    }

    /** Rows of a curve's own division: as stated, or the fewest that keep every oval station within the chord limits. */
    private double[] curveRows(ShellSpec spec) {
        List<Oval> ovals = new ArrayList<>();
        for (Station s : stations) {
            if (s instanceof Oval o) {
                ovals.add(o);
            }
        }
        if (ovals.isEmpty()) {
            return new double[0];
        }
        if (spec.segments() > 0) {
            return division((spec.segments() + 1) / 2);
        }
        int n = FEWEST;
        while (n < MOST && !within(ovals, division(n))) {
            n += 2;
        }
        return division(n);
    }

    private double[] division(int n) {
        double[] at = new double[n + 1];
        for (int k = 0; k <= n; k++) {
            at[k] = byHeight ? 0.5 * (1 - Math.cos(Math.PI * k / n)) : (double) k / n;
        }
        return at;
    }

    private boolean within(List<Oval> ovals, double[] at) {
        for (Oval o : ovals) {
            double least = Math.min(o.halfWidthM(), 0.5 * (o.aboveM() + o.belowM()));
            double limit = Math.min(CHORD_M, CHORD_SHARE * least);
            for (int k = 0; k + 1 < at.length; k++) {
                double[] a = point(o, at[k]);
                double[] b = point(o, at[k + 1]);
                double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
                for (int i = 1; i < 8; i++) {
                    double[] p = point(o, at[k] + (at[k + 1] - at[k]) * i / 8);
                    double off = Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length;
                    if (off > limit) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    /** Rows of the stringers of the right side and the crown: evenly round the girth of the station with the longest. */
    private double[] feet(int stringers, double from, double to) {
        double[] best = new double[0];
        for (Station s : stations) {
            double[] way = new double[SAMPLES + 1];
            for (int i = 1; i <= SAMPLES; i++) {
                double[] a = point(s, from + (to - from) * (i - 1) / SAMPLES);
                double[] b = point(s, from + (to - from) * i / SAMPLES);
                way[i] = way[i - 1] + Math.hypot(b[0] - a[0], b[1] - a[1]);
            }
            best = best.length == 0 || way[SAMPLES] > best[SAMPLES] ? way : best;
        }
        double[] feet = new double[(stringers + 1) / 2];
        for (int i = 0; i < feet.length; i++) {
            double want = best[SAMPLES] * (2 * i + 1) / stringers;
            int k = 1;
            while (k < SAMPLES && best[k] < want) {
                k++;
            }
            double s = (want - best[k - 1]) / (best[k] - best[k - 1]);
            feet[i] = 2 * i + 1 == stringers ? to : from + (to - from) * (k - 1 + s) / SAMPLES;
        }
        return feet;
    }

    /** All fixed rows, and those of the curve that do not nearly meet one. */
    private static double[] merged(NavigableSet<Double> fixed, double[] curve) {
        TreeSet<Double> all = new TreeSet<>();
        double before = Double.NEGATIVE_INFINITY;
        for (double f : fixed) {
            if (f - before > SAME_ROW) {
                all.add(f);
                before = f;
            }
        }
        TreeSet<Double> kept = new TreeSet<>(all);
        for (int k = 1; k + 1 < curve.length; k++) {
            double near = 0.1 * Math.min(curve[k] - curve[k - 1], curve[k + 1] - curve[k]);
            Double below = all.floor(curve[k]);
            Double above = all.ceiling(curve[k]);
            boolean free = (below == null || curve[k] - below > near) && (above == null || above - curve[k] > near);
            if (free) {
                kept.add(curve[k]);
            }
        }
        return kept.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static int nearest(double[] rows, double want) {
        int best = 0;
        for (int k = 1; k < rows.length; k++) {
            if (Math.abs(rows[k] - want) < Math.abs(rows[best] - want)) {
                best = k;
            }
        }
        return best;
    }
}
