package baymist.explain;

import baymist.access.ClockAngle;
import baymist.access.Station;
import baymist.access.TipPose;
import baymist.geom.Vec3;
import baymist.run.RunResult;
import baymist.scene.PassSpec;
import baymist.scene.WandSpec;
import baymist.spray.JetSource;
import baymist.spray.SprayView;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Did any jet see the region, and did its drops arrive? Straight lines from every station of the job to points spread over the region.
 *
 * @param seen share of the region in view of a station, 0..1
 * @param inside share in view and in the pattern of a jet there, 0..1
 * @param turned share that would be in a pattern with the pins of all passes turned to the best clock angles, 0..1
 * @param shade part that ends most lines from the nearest stations to what is not in view; empty = none
 * @param shadeShare share of those lines that it ends, 0..1
 * @param seenFromM median distance of the nearest station in view, m; infinite if none
 * @param cutM median size above which drops land where a jet sees the place best, m
 * @param incidence cosine there, median
 * @param landing share of the region where a jet would leave a tenth of the target by the free jet's law
 * @param clocks best clock angle of each pass, rad; NaN where turning changes nothing, [passes]
 * @param clockGain fill of the region by the free jet's law with that angle over the stated one, [passes]
 */
record SightFacts(
        double seen,
        double inside,
        double turned,
        String shade,
        double shadeShare,
        double seenFromM,
        double cutM,
        double incidence,
        double landing,
        double[] clocks,
        double[] clockGain) {
    /** Ends the name of the shade where the place looks away from the tip and its own sheet is between. */
    static final String OWN = ", which faces away";

    /** Points of a region that are looked at. */
    static final int POINTS = 40;
    /** Steps of the clock that are tried. */
    private static final int CLOCKS = 24;
    /** A turn is worth telling if it fills this much more of the region (ASSUMED). */
    private static final double WORTH = 0.02;

    /** Whether the place looks away from the nearest places of the tip: no other part is between. */
    boolean facesAway() {
        return shade.endsWith(OWN);
    }

    /** What one pass sees, by station and point. */
    private record Looks(List<Station> stations, WandSpec wand, boolean[][] clear) {}

    static SightFacts find(RunResult base, RunHistory history, Patch patch, SprayView view) {
        int[] points = patch.sample(POINTS);
        double[] open = openAt(history);
        List<Looks> passes = new ArrayList<>();
        for (int p = 0; p < base.scene().passes().size(); p++) {
            passes.add(looks(base, p, patch, points, view, open));
        }
        return new Finder(base, patch, points, view, passes, open).find();
    }

    /** Open shares while spraying; the state of the openings while passes run is the same in all of them but for the entry. */
    static double[] openAt(RunHistory history) {
        for (RunHistory.Kept k : history.moments()) {
            if (k.station() != null) {
                return k.openFraction();
            }
        }
        return history.moments().isEmpty()
                ? new double[0]
                : history.moments().get(0).openFraction();
    }

    private static Looks looks(RunResult base, int pass, Patch patch, int[] points, SprayView view, double[] open) {
        WandSpec wand = base.scene().wands().get(base.scene().passes().get(pass).wand());
        if (wand == null) {
            throw new IllegalStateException("a pass ran without its wand");
        }
        List<Station> stations =
                base.stations().stream().filter(s -> s.pass() == pass).toList();
        boolean[][] clear = new boolean[stations.size()][points.length];
        for (int i = 0; i < clear.length; i++) {
            Vec3 tip = stations.get(i).pose().positionM();
            for (int k = 0; k < points.length; k++) {
                clear[i][k] = faces(tip, patch, points[k])
                        && view.look(tip, patch.point(points[k]), open).clear();
            }
        }
        return new Looks(stations, wand, clear);
    }

    static boolean faces(Vec3 tip, Patch patch, int surfel) {
        return tip.minus(patch.point(surfel)).dot(patch.normal(surfel)) > 0;
    }

    /** Gathers over points. */
    private record Finder(
            RunResult base, Patch patch, int[] points, SprayView view, List<Looks> passes, double[] open) {
        SightFacts find() {
            int n = points.length;
            double seen = 0;
            double inside = 0;
            double landing = 0;
            List<Double> from = new ArrayList<>();
            List<Double> cuts = new ArrayList<>();
            List<Double> incidences = new ArrayList<>();
            Map<String, Integer> shades = new TreeMap<>();
            int unseen = 0;
            for (int k = 0; k < n; k++) {
                double nearest = Double.POSITIVE_INFINITY;
                boolean in = false;
                double film = 0;
                SprayView.@Nullable Arrival best = null;
                for (Looks l : passes) {
                    for (int i = 0; i < l.clear().length; i++) {
                        if (!l.clear()[i][k]) {
                            continue;
                        }
                        Station s = l.stations().get(i);
                        nearest = Math.min(nearest, s.pose().positionM().distance(patch.point(points[k])));
                        SprayView.Arrival a = arrival(l, s.pose(), k);
                        in |= a.inside();
                        film += a.kgPerM2S() * s.durationS();
                        best = best == null || a.cutM() < best.cutM() ? a : best;
                    }
                }
                if (Double.isFinite(nearest)) {
                    seen++;
                    from.add(nearest);
                } else {
                    unseen++;
                    shades.merge(shade(k), 1, Integer::sum);
                }
                inside += in ? 1 : 0;
                double tenth = 0.1 * base.scene().targets().buildM();
                landing += film / base.scene().product().densityKgPerM3() >= tenth ? 1 : 0;
                if (best != null && Double.isFinite(best.cutM())) {
                    cuts.add(best.cutM());
                    incidences.add(best.incidence());
                }
            }
            Map.Entry<String, Integer> shade = shades.entrySet().stream()
                    .max(Map.Entry.<String, Integer>comparingByValue()
                            .thenComparing(
                                    Map.Entry.<String, Integer>comparingByKey().reversed()))
                    .orElse(Map.entry("", 0));
            double[] clocks = new double[passes.size()];
            double[] gains = new double[passes.size()];
            boolean[] turned = new boolean[n];
            for (int p = 0; p < clocks.length; p++) {
                turn(p, clocks, gains, turned);
            }
            int could = 0;
            for (boolean t : turned) {
                could += t ? 1 : 0;
            }
            return new SightFacts(
                    seen / n,
                    inside / n,
                    (double) could / n,
                    shade.getKey(),
                    unseen > 0 ? (double) shade.getValue() / unseen : 0,
                    median(from),
                    median(cuts),
                    cuts.isEmpty() ? 0 : median(incidences),
                    landing / n,
                    clocks,
                    gains);
        }

        private SprayView.Arrival arrival(Looks l, TipPose pose, int k) {
            List<JetSource> jets = view.jets(l.wand(), pose);
            return view.arrival(jets, patch.point(points[k]), patch.normal(points[k]));
        }

        /** What ends the line from the nearest station to a point that none sees. */
        private String shade(int k) {
            Vec3 point = patch.point(points[k]);
            Station nearest = passes.stream()
                    .flatMap(l -> l.stations().stream())
                    .min(Comparator.comparingDouble(s -> s.pose().positionM().distance(point)))
                    .orElse(null);
            if (nearest == null) {
                return "";
            }
            Vec3 tip = nearest.pose().positionM();
            SprayView.Line line = view.look(tip, point, open);
            if (line.clear()) {
                return patch.part(points[k]) + OWN;
            }
            if (line.opening() >= 0) {
                return "closed '" + base.cavity().openings().get(line.opening()).name() + "'";
            }
            return line.part() >= 0 ? base.cavity().parts().get(line.part()).name() : "";
        }

        /** Tries the clock round: which angle of a pass's pin would fill most of the region by jets alone. */
        private void turn(int p, double[] clocks, double[] gains, boolean[] turned) {
            PassSpec pass = base.scene().passes().get(p);
            clocks[p] = Double.NaN;
            if (passes.get(p).wand().kind() == WandSpec.Kind.BENT
                    || JetGuess.clocks(passes.get(p).wand()).length == 1) {
                fill(p, pass.clockRad(), turned);
                return; // a hook's tip moves when it is turned; a ring looks all round already
            }
            double stated = fill(p, pass.clockRad(), null);
            double best = stated;
            for (int c = 0; c < CLOCKS; c++) {
                double clock = 2 * Math.PI * c / CLOCKS;
                double fill = fill(p, clock, null);
                if (fill > best + WORTH) {
                    best = fill;
                    clocks[p] = clock;
                }
            }
            gains[p] = best - stated;
            fill(p, Double.isNaN(clocks[p]) ? pass.clockRad() : clocks[p], turned);
        }

        private double fill(int p, double clock, boolean @Nullable [] insideOf) {
            Looks l = passes.get(p);
            double target =
                    base.scene().targets().buildM() * base.scene().product().densityKgPerM3();
            double[] kgPerM2 = new double[points.length];
            for (int i = 0; i < l.clear().length; i++) {
                Station s = l.stations().get(i);
                TipPose pose = new TipPose(
                        s.pose().positionM(),
                        s.pose().axis(),
                        ClockAngle.pin(s.pose().axis(), clock));
                List<JetSource> jets = view.jets(l.wand(), pose);
                for (int k = 0; k < points.length; k++) {
                    if (l.clear()[i][k]) {
                        SprayView.Arrival a = view.arrival(jets, patch.point(points[k]), patch.normal(points[k]));
                        kgPerM2[k] += a.kgPerM2S() * s.durationS();
                        if (insideOf != null) {
                            insideOf[k] |= a.inside();
                        }
                    }
                }
            }
            double sum = 0;
            for (double kg : kgPerM2) {
                sum += Math.min(1, kg / target);
            }
            return sum / points.length;
        }

        private static double median(List<Double> values) {
            return values.isEmpty()
                    ? Double.POSITIVE_INFINITY
                    : values.stream().sorted().toList().get(values.size() / 2);
        }
    }
}
