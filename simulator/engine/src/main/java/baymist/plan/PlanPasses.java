package baymist.plan;

import baymist.geom.Vec3;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Strokes as passes of a scene, low before high: fog that sinks on a place must not meet film that still runs down on it. */
final class PlanPasses {
    private PlanPasses() {}

    /** Strokes in the order in which they are sprayed: line by line from the lowest, each from its far end. */
    static List<Stroke> sorted(DoseMatrix matrix, List<Stroke> plan) {
        List<Stroke> sorted = new ArrayList<>(plan);
        sorted.sort(Comparator.comparingDouble((Stroke s) -> heightM(matrix, plan, s.line()))
                .thenComparingInt(Stroke::line)
                .thenComparingInt(Stroke::first)
                .thenComparingInt(Stroke::last));
        return sorted;
    }

    static List<PassSpec> of(DoseMatrix matrix, List<Stroke> plan, double hangS) {
        List<Stroke> sorted = sorted(matrix, plan);
        List<PassSpec> passes = new ArrayList<>();
        for (int i = 0; i < sorted.size(); i++) {
            Stroke s = sorted.get(i);
            DoseLine line = matrix.lines().get(s.line());
            double from = millimetres(line.startM(s.first()), true);
            double to = Math.min(from, millimetres(line.endM(s.last()), false));
            passes.add(new PassSpec(
                    String.format(Locale.ROOT, "%d: %s", i + 1, line.pass().entry()),
                    line.pass().entry(),
                    line.pass().wand(),
                    from,
                    to,
                    s.rateMPerS(),
                    line.clockRad(),
                    0,
                    i == sorted.size() - 1 || goesOn(s, sorted.get(i + 1)) ? 0 : hangS,
                    line.pass().aim(),
                    line.pass().place()));
        }
        return passes;
    }

    /** Whether the next stroke is the same draw-back at another rate: no wait lies between. */
    static boolean goesOn(Stroke s, Stroke next) {
        return next.line() == s.line() && next.first() > s.last();
    }

    private static double millimetres(double m, boolean down) {
        double mm = 1e3 * m;
        return (down ? Math.floor(mm + 1e-6) : Math.ceil(mm - 1e-6)) / 1e3;
    }

    /** Mean height of a line's strokes against gravity, m, to the centimetre: what is as good as level goes in order of lines. */
    private static double heightM(DoseMatrix matrix, List<Stroke> plan, int l) {
        DoseLine line = matrix.lines().get(l);
        double sum = 0;
        int n = 0;
        for (Stroke s : plan) {
            if (s.line() == l) {
                Vec3 tip = line.insertion().path().tipM(line.depthsM()[(s.first() + s.last()) / 2]);
                sum -= tip.dot(matrix.scene().gravity());
                n++;
            }
        }
        return Math.round(100 * sum / Math.max(1, n)) / 100.0;
    }

    /** Waits between passes of a scene, the longest; 0 if it has none. */
    static double hangS(Scene scene) {
        return scene.passes().stream().mapToDouble(PassSpec::hangS).max().orElse(0);
    }
}
