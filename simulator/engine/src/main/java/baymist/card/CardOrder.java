package baymist.card;

import baymist.access.PassPlan;
import baymist.access.Station;
import baymist.geom.Vec3;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** The order of the passes on a card: low before high. */
public final class CardOrder {
    /** Heights that differ by less than this are one height (ASSUMED: a hand does not hold a wand truer). */
    static final double LEVEL_M = 0.025;

    private CardOrder() {}

    /**
     * Passes by the mean height of the tip while the trigger is on, lowest first; the scene's order where heights agree.
     *
     * @param gravity unit vector along gravity
     * @return indices of passes of the scene
     */
    public static List<Integer> of(PassPlan plan, int passes, Vec3 gravity) {
        double[] height = new double[passes];
        for (int p = 0; p < passes; p++) {
            height[p] = heightM(plan, p, gravity);
        }
        return IntStream.range(0, passes)
                .boxed()
                .sorted(Comparator.comparingLong((Integer p) -> Math.round(height[p] / LEVEL_M)))
                .toList();
    }

    /** Mean height of a pass's tip over time, m; 0 for a pass without stations. */
    static double heightM(PassPlan plan, int pass, Vec3 gravity) {
        double sum = 0;
        double time = 0;
        for (Station s : plan.stations()) {
            if (s.pass() == pass) {
                sum -= s.durationS() * s.pose().positionM().dot(gravity);
                time += s.durationS();
            }
        }
        return time > 0 ? sum / time : 0;
    }
}
