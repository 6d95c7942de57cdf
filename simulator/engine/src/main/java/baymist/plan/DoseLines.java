package baymist.plan;

import baymist.access.Insertion;
import baymist.access.Stations;
import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.run.Approach;
import baymist.scene.EntrySpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** All lines of a scene: every entry with every wand that goes in, along the entry's direction, at clock angles over the period of the tip. */
final class DoseLines {
    /** Depth that is left to the entry, m: nearer, the tip sprays out of it. */
    private static final double SHALLOWEST_M = 0.01;

    /** Stations on a short way, at least, but none shorter than the second, m. */
    private static final int FEWEST = 6;

    private static final double SHORTEST_M = 0.02;

    /** Angles (rad) and shares that differ by less are alike. */
    private static final double ALIKE = 1e-6;

    private DoseLines() {}

    static List<DoseLine> of(Scene scene, Cavity cavity, DoseSettings settings) {
        List<WandSpec> wands = new ArrayList<>(scene.wands().values());
        wands.sort(Comparator.comparing(WandSpec::name));
        List<PassSpec> passes = new ArrayList<>();
        for (EntrySpec entry : scene.entries()) {
            for (WandSpec wand : wands) {
                passes.add(pass(entry, wand));
            }
        }
        List<Insertion> insertions =
                Approach.ways(scene.withPasses(passes), cavity).insertions();
        List<DoseLine> lines = new ArrayList<>();
        int ways = 0;
        for (int i = 0; i < passes.size(); i++) {
            Insertion in = insertions.get(i);
            double deepest = in.feasible() ? Stations.deepestM(in) : 0;
            if (!(deepest > SHALLOWEST_M + 2e-3)) {
                continue;
            }
            WandSpec wand = Approach.wand(scene, passes.get(i));
            double[] open = OpenFractions.pass(cavity.openings(), in.openingIndex(), wand.outerM());
            double spacing = spacingM(deepest, settings);
            double[] depths = depths(deepest, spacing);
            double period = periodRad(wand.tip());
            int clocks = period == 0 ? 1 : clocks(period, settings.clocks());
            for (int k = 0; k < clocks; k++) {
                double clock = period * k / clocks;
                lines.add(new DoseLine(ways, passes.get(i), in, wand, open, clock, spacing, depths));
            }
            ways++;
        }
        return List.copyOf(lines);
    }

    /** Clock angles within the period of a tip: a ring that repeats soon is turned by a quarter of its period still, with few angles asked for by half of it. */
    private static int clocks(double periodRad, int inATurn) {
        long share = Math.round(inATurn * periodRad / (2 * Math.PI));
        return (int) Math.max(share, Math.max(2, Math.min(4, inATurn / 2)));
    }

    private static PassSpec pass(EntrySpec entry, WandSpec wand) {
        double deepest = Double.POSITIVE_INFINITY;
        return new PassSpec("dose", entry.name(), wand.name(), deepest, 0, 0.1, 0, 0, 0, entry.place());
    }

    /** Spacing of the stations on a way, whole millimetres, so that marks on a wand can be set to them. */
    private static double spacingM(double deepestM, DoseSettings settings) {
        double stroke = Math.floor(1e3 * deepestM + 1e-6) / 1e3 - SHALLOWEST_M;
        double few = Math.min(Math.min(FEWEST, settings.mostStations()), Math.floor(stroke / SHORTEST_M));
        double n = Math.max(few, Math.min(settings.mostStations(), Math.ceil(stroke / settings.spacingM() - 1e-9)));
        return Math.max(1, Math.floor(1e3 * stroke / Math.max(1, n) + 1e-6)) / 1e3;
    }

    /** Middles of the stretches from the deepest whole millimetre on; what is left of the way, less than a spacing, lies at the entry. */
    private static double[] depths(double deepestM, double spacingM) {
        double from = Math.floor(1e3 * deepestM + 1e-6) / 1e3;
        int n = (int) Math.max(1, Math.floor((from - SHALLOWEST_M) / spacingM + 1e-6));
        double[] depths = new double[n];
        for (int i = 0; i < n; i++) {
            depths[i] = from - spacingM * (i + 0.5);
        }
        return depths;
    }

    /** Angle after which the tip's pattern repeats, rad; 0 where turning it changes nothing. */
    static double periodRad(TipSpec tip) {
        List<TipSpec.Jet> jets = tip.jets();
        if (jets.stream().allMatch(j -> Math.abs(Math.sin(j.offAxisRad())) < ALIKE)) {
            return 0;
        }
        for (int n = jets.size(); n > 1; n--) {
            double turn = 2 * Math.PI / n;
            if (jets.stream().allMatch(j -> jets.stream().anyMatch(k -> turnsInto(j, turn, k)))) {
                return turn;
            }
        }
        return 2 * Math.PI;
    }

    private static boolean turnsInto(TipSpec.Jet a, double turn, TipSpec.Jet b) {
        boolean ahead = Math.abs(Math.sin(a.offAxisRad())) < ALIKE;
        double off = ahead ? 0 : Math.abs(Math.IEEEremainder(a.clockRad() + turn - b.clockRad(), 2 * Math.PI));
        return off < ALIKE
                && Math.abs(a.offAxisRad() - b.offAxisRad()) < ALIKE
                && Math.abs(a.orificeM() - b.orificeM()) < ALIKE * b.orificeM()
                && Math.abs(a.liquidShare() - b.liquidShare()) < ALIKE
                && Math.abs(a.airShare() - b.airShare()) < ALIKE;
    }
}
