package baymist.spray;

import baymist.scene.DropletSpec;
import java.util.stream.IntStream;

/**
 * Cuts a droplet size distribution into bins.
 *
 * <p>Edges are spaced evenly in log size between the 0.1 % and the 99.9 % volume quantile; the first and last bin also take
 * the tails, so the shares sum to 1 exactly (the largest takes the rounding). A bin is represented by its mass-weighted mean
 * diameter, which keeps the mean diameter of the whole.
 */
public final class DropletBins {
    private static final double TAIL = 1e-3;
    private static final int STEPS = 400;

    private DropletBins() {}

    /**
     * Size bins of a droplet statement.
     *
     * @param bins number of bins, at least 1; ignored for explicit classes and for the tracer
     */
    public static SizeBins of(DropletSpec spec, int bins) {
        if (bins < 1) {
            throw new IllegalArgumentException("size bins " + bins + ", at least 1 expected");
        }
        if (spec instanceof DropletSpec.Classes classes) {
            return sorted(classes);
        }
        if (spec instanceof DropletSpec.RosinRammler rr) {
            return cut(VolumeDistribution.of(rr), bins);
        }
        if (spec instanceof DropletSpec.LogNormal ln) {
            return cut(VolumeDistribution.of(ln), bins);
        }
        return new SizeBins(new double[] {0}, new double[] {1});
    }

    private static SizeBins cut(VolumeDistribution volume, int bins) {
        double low = Math.log(volume.quantileM(TAIL));
        double high = Math.log(volume.quantileM(1 - TAIL));
        double[] edge = new double[bins + 1];
        for (int i = 0; i <= bins; i++) {
            edge[i] = Math.exp(low + (high - low) * i / bins);
        }
        edge[0] = volume.quantileM(1e-12);
        edge[bins] = volume.quantileM(1 - 1e-12);
        double[] diameter = new double[bins];
        double[] share = new double[bins];
        double rest = 1;
        for (int i = 0; i < bins; i++) {
            double from = i == 0 ? 0 : volume.below(edge[i]);
            double to = i == bins - 1 ? 1 : volume.below(edge[i + 1]);
            share[i] = i == bins - 1 ? rest : to - from;
            rest -= share[i];
            diameter[i] = partialMean(volume, edge[i], edge[i + 1]);
        }
        return new SizeBins(diameter, share);
    }

    /** Mass-weighted mean of the drops between two sizes, m: by parts, Simpson's rule in log size. */
    private static double partialMean(VolumeDistribution volume, double a, double b) {
        double from = volume.below(a);
        double to = volume.below(b);
        double h = Math.log(b / a) / STEPS;
        double integral = 0;
        for (int i = 0; i <= STEPS; i++) {
            double d = a * Math.exp(i * h);
            double weight = i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2;
            integral += weight * (volume.below(d) - from) * d;
        }
        return b - integral * h / 3 / (to - from);
    }

    private static SizeBins sorted(DropletSpec.Classes classes) {
        double[] d = classes.diameterM();
        double[] s = classes.share();
        if (d.length == 0 || d.length != s.length) {
            throw new IllegalArgumentException("droplet classes need as many shares as diameters, and at least one");
        }
        int[] order = IntStream.range(0, d.length)
                .boxed()
                .sorted((i, j) -> Double.compare(d[i], d[j]))
                .mapToInt(Integer::intValue)
                .toArray();
        double[] diameter = new double[d.length];
        double[] share = new double[d.length];
        double sum = 0;
        for (double v : s) {
            sum += v;
        }
        double rest = 1;
        for (int i = 0; i < d.length; i++) {
            diameter[i] = d[order[i]];
            share[i] = i == d.length - 1 ? rest : s[order[i]] / sum;
            rest -= share[i];
        }
        return new SizeBins(diameter, share);
    }
}
