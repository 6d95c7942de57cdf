package baymist.cavity;

import baymist.scene.CavitySpec.ControlSurface;
import baymist.scene.CavitySpec.Rib;
import baymist.scene.ControlSurfaceDetail.Beads;
import baymist.scene.ControlSurfaceDetail.Form;
import baymist.scene.ControlSurfaceDetail.Run;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Beads of one skin as a height over the plain sheet, a function of chord fraction s and station y.
 *
 * <p>Height = depth times profile (across the beads) times fading (along them, from 1 to 0 over the run-out). Beads are as many
 * as fit, centred: spanwise ones between {@code from} and {@code to}, chordwise ones between each two ribs. Lines along
 * which the height bends are rows and columns of the skin's grid, so trapezoids are exact; a sine has 16 facets.
 */
final class BeadPattern {
    /** Facets of one sine wave: its developed length is then short by about 0.3 % of the bead's excess. */
    static final int SINE_FACETS = 16;

    private final ControlSurface spec;
    private final Beads beads;
    /** Middles of the beads: chordwise distance at the root (spanwise beads) or y, m, ascending. */
    private final List<Double> middles = new ArrayList<>();
    /** Stretches along which beads run, m: chordwise distance at the root or y, each {from, to}. */
    private final List<double[]> runs = new ArrayList<>();

    BeadPattern(ControlSurface spec, Beads beads) {
        this.spec = spec;
        this.beads = beads;
        List<Rib> ribs = spec.ribs();
        double first = ribs.get(0).yM();
        double last = ribs.get(ribs.size() - 1).yM();
        if (beads.run() == Run.SPANWISE) {
            fit(beads.fromM(), beads.toM());
            if (beads.clearOfRibsM() == 0) {
                runs.add(new double[] {first, last});
            }
        } else {
            runs.add(new double[] {beads.fromM(), beads.toM()});
        }
        for (int i = 0; i + 1 < ribs.size(); i++) {
            double from = ribs.get(i).yM() + beads.clearOfRibsM();
            double to = ribs.get(i + 1).yM() - beads.clearOfRibsM();
            if (beads.run() == Run.CHORDWISE) {
                fit(from, to);
            } else if (beads.clearOfRibsM() > 0 && to - from > 2 * beads.runOutM()) {
                runs.add(new double[] {from, to});
            }
        }
    }

    int number() {
        return middles.size();
    }

    private void fit(double from, double to) {
        double spare = to - from - beads.widthM();
        if (spare < -1e-9) {
            return;
        }
        int n = (int) Math.floor(spare / beads.pitchM() + 1e-9) + 1;
        double start = (from + to) / 2 - (n - 1) * beads.pitchM() / 2;
        for (int i = 0; i < n; i++) {
            middles.add(start + i * beads.pitchM());
        }
    }

    /** Chord fractions at which the height bends. */
    SortedSet<Double> columns() {
        SortedSet<Double> out = new TreeSet<>();
        for (double a : beads.run() == Run.SPANWISE ? across() : along()) {
            out.add(a / spec.rootChordM());
        }
        return out;
    }

    /** Stations at which the height bends, m. */
    SortedSet<Double> rows() {
        return beads.run() == Run.SPANWISE ? along() : across();
    }

    private SortedSet<Double> across() {
        SortedSet<Double> out = new TreeSet<>();
        double half = beads.widthM() / 2;
        for (double middle : middles) {
            if (beads.form() == Form.SINE) {
                for (int k = 0; k <= SINE_FACETS; k++) {
                    out.add(middle - half + k * beads.widthM() / SINE_FACETS);
                }
            } else {
                out.add(middle - half);
                out.add(middle - half + beads.flankM());
                out.add(middle + half - beads.flankM());
                out.add(middle + half);
            }
        }
        return out;
    }

    private SortedSet<Double> along() {
        SortedSet<Double> out = new TreeSet<>();
        for (double[] run : runs) {
            out.add(run[0]);
            out.add(run[0] + runOut());
            out.add(run[1] - runOut());
            out.add(run[1]);
        }
        return out;
    }

    /** Spanwise beads that run through the ribs don't fade at all. */
    private double runOut() {
        return beads.run() == Run.SPANWISE && beads.clearOfRibsM() == 0 ? 0 : beads.runOutM();
    }

    /** Height of the skin over the plain sheet, m, positive outward. */
    double heightM(double s, double yM) {
        double aft = s * spec.rootChordM();
        boolean spanwise = beads.run() == Run.SPANWISE;
        return beads.depthM() * profile(spanwise ? aft : yM) * fading(spanwise ? yM : aft);
    }

    private double profile(double across) {
        double half = beads.widthM() / 2;
        double highest = 0;
        for (double middle : middles) {
            double t = Math.abs(across - middle);
            if (t < half) {
                double p = beads.form() == Form.SINE
                        ? 0.5 * (1 + Math.cos(Math.PI * t / half))
                        : Math.min(1, (half - t) / beads.flankM());
                highest = Math.max(highest, p);
            }
        }
        return highest;
    }

    private double fading(double along) {
        double runOut = runOut();
        double most = 0;
        for (double[] run : runs) {
            double in = Math.min(along - run[0], run[1] - along);
            // the ends of a run are taken from the same sums as the rows: rounding must not switch them off
            if (runOut == 0 ? in >= -1e-9 : in > 1e-12) {
                most = Math.max(most, runOut == 0 ? 1 : Math.min(1, in / runOut));
            }
        }
        return most;
    }
}
