package baymist.recording;

import java.util.ArrayList;
import java.util.List;

/**
 * Keeps the frames that matter: when there are too many, the one goes that a straight line in time between its neighbours stands in for
 * best. First and last always stay.
 */
final class FrameKeeper {
    private final int most;
    private final double[] surfelWeight;
    private final double[] blockWeight;
    private final List<Frame> frames = new ArrayList<>();
    /** Mass that leaving out each frame would misplace, kg; infinite for the ends. */
    private final List<Double> costs = new ArrayList<>();

    private double worst;

    /**
     * @param surfelWeight mass of a metre of film on each surfel, kg/m
     * @param blockWeight air in each block, m³
     */
    FrameKeeper(int most, double[] surfelWeight, double[] blockWeight) {
        this.most = most;
        this.surfelWeight = surfelWeight;
        this.blockWeight = blockWeight;
    }

    void add(Frame frame) {
        frames.add(frame);
        costs.add(Double.POSITIVE_INFINITY);
        int n = frames.size();
        if (n >= 3) {
            costs.set(n - 2, cost(n - 2));
        }
        if (n > most && n > 2) {
            drop();
        }
    }

    private void drop() {
        int least = 1;
        for (int i = 2; i < frames.size() - 1; i++) {
            least = costs.get(i) < costs.get(least) ? i : least;
        }
        worst = Math.max(worst, costs.get(least));
        frames.remove(least);
        costs.remove(least);
        for (int i = least - 1; i <= least; i++) {
            if (i > 0 && i < frames.size() - 1) {
                costs.set(i, cost(i));
            }
        }
    }

    /** Mass by which a frame differs from the straight line between its neighbours, kg. */
    private double cost(int i) {
        Frame before = frames.get(i - 1);
        Frame at = frames.get(i);
        Frame after = frames.get(i + 1);
        double span = after.timeS() - before.timeS();
        float w = span > 0 ? (float) ((at.timeS() - before.timeS()) / span) : 0;
        return off(before.filmM(), at.filmM(), after.filmM(), w, surfelWeight)
                + off(before.fogKgPerM3(), at.fogKgPerM3(), after.fogKgPerM3(), w, blockWeight);
    }

    private static double off(float[] before, float[] at, float[] after, float w, double[] weight) {
        double sum = 0;
        for (int n = 0; n < at.length; n++) {
            sum += weight[n] * Math.abs(at[n] - before[n] - w * (after[n] - before[n]));
        }
        return sum;
    }

    List<Frame> frames() {
        return List.copyOf(frames);
    }

    /** Most mass that a frame misplaces that was left out, against its neighbours at that time, kg. */
    double worst() {
        return worst;
    }
}
