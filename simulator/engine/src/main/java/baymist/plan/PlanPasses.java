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

    static List<PassSpec> of(DoseMatrix matrix, List<Stroke> plan, double hangS) {
        List<Stroke> sorted = new ArrayList<>(plan);
        sorted.sort(Comparator.comparingDouble((Stroke s) -> heightM(matrix, s))
                .thenComparingInt(Stroke::line)
                .thenComparingInt(Stroke::first));
        List<PassSpec> passes = new ArrayList<>();
        for (int i = 0; i < sorted.size(); i++) {
            Stroke s = sorted.get(i);
            DoseLine line = matrix.lines().get(s.line());
            double from = millimetres(line.startM(s.first()), true);
            double to = Math.min(from, millimetres(line.endM(s.last()), false));
            boolean last = i == sorted.size() - 1;
            passes.add(new PassSpec(
                    String.format(Locale.ROOT, "%d: %s", i + 1, line.pass().entry()),
                    line.pass().entry(),
                    line.pass().wand(),
                    from,
                    to,
                    s.rateMPerS(),
                    line.clockRad(),
                    0,
                    last ? 0 : hangS,
                    line.pass().aim(),
                    line.pass().place()));
        }
        return passes;
    }

    private static double millimetres(double m, boolean down) {
        double mm = 1e3 * m;
        return (down ? Math.floor(mm + 1e-6) : Math.ceil(mm - 1e-6)) / 1e3;
    }

    /** Height of the middle of a stroke against gravity, m, to the centimetre: what is as good as level goes in order of lines. */
    private static double heightM(DoseMatrix matrix, Stroke s) {
        DoseLine line = matrix.lines().get(s.line());
        Vec3 tip = line.insertion().path().tipM(line.depthsM()[(s.first() + s.last()) / 2]);
        return Math.round(-100 * tip.dot(matrix.scene().gravity())) / 100.0;
    }

    /** Waits between passes of a scene, the longest; 0 if it has none. */
    static double hangS(Scene scene) {
        return scene.passes().stream().mapToDouble(PassSpec::hangS).max().orElse(0);
    }
}
