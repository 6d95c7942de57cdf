package baymist.spray;

import baymist.scene.DropletSpec;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

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
        VolumeDistribution volume = distribution(spec);
        if (volume != null) {
            return cut(volume, bins);
        }
        if (spec instanceof DropletSpec.Adjusted a) {
            SizeBins as = of(a.sizes(), bins);
            double[] moved = as.diameterM().clone();
            for (int b = 0; b < moved.length; b++) {
                moved[b] *= a.setting();
            }
            return new SizeBins(moved, as.share());
        }
        if (spec instanceof DropletSpec.Classes classes) {
            return sorted(classes);
        }
        return new SizeBins(new double[] {0}, new double[] {1});
    }

    /** Distribution of a statement; null for explicit classes and the tracer. */
    static @Nullable VolumeDistribution distribution(DropletSpec spec) {
        if (spec instanceof DropletSpec.RosinRammler rr) {
            return VolumeDistribution.of(rr);
        }
        if (spec instanceof DropletSpec.LogNormal ln) {
            return VolumeDistribution.of(ln);
        }
        if (spec instanceof DropletSpec.Sheet sheet) {
            return VolumeDistribution.of(sheet);
        }
        if (spec instanceof DropletSpec.Adjusted a) {
            VolumeDistribution stated = distribution(a.sizes());
            return stated == null ? null : new VolumeDistribution.Scaled(stated, a.setting());
        }
        if (spec instanceof DropletSpec.Correlation) {
            throw new IllegalArgumentException("sizes by a correlation are asked for a tip first");
        }
        return null;
    }

    /**
     * Shares of the same bins if every drop were larger by a factor: what the spray would put in each bin with another median
     * and the same shape. Together 1. Between explicit classes mass is split so that the mean log diameter is kept; beyond the
     * ends the end bins take it.
     *
     * @param factor on every diameter, above 0
     */
    public static double[] movedShares(DropletSpec spec, int bins, double factor) {
        VolumeDistribution volume = distribution(spec);
        if (volume == null) {
            return splitShares(of(spec, bins), factor);
        }
        double[] edge = edges(volume, bins);
        double[] share = new double[bins];
        double before = 0;
        for (int b = 0; b < bins; b++) {
            double upTo = b == bins - 1 ? 1 : volume.below(edge[b + 1] / factor);
            share[b] = upTo - before;
            before = upTo;
        }
        return share;
    }

    private static double[] splitShares(SizeBins bins, double factor) {
        double[] d = bins.diameterM();
        double[] share = new double[d.length];
        for (int b = 0; b < d.length; b++) {
            double to = d[b] * factor;
            int k = 0;
            while (k < d.length - 1 && d[k + 1] <= to) {
                k++;
            }
            double w = k == d.length - 1 || to <= d[k] ? 0 : Math.log(to / d[k]) / Math.log(d[k + 1] / d[k]);
            share[k] += (1 - w) * bins.share()[b];
            if (w > 0) {
                share[k + 1] += w * bins.share()[b];
            }
        }
        return share;
    }

    /** Edges of the bins, m, [bins + 1], without the tails. */
    private static double[] edges(VolumeDistribution volume, int bins) {
        double low = Math.log(volume.quantileM(TAIL));
        double high = Math.log(volume.quantileM(1 - TAIL));
        double[] edge = new double[bins + 1];
        for (int i = 0; i <= bins; i++) {
            edge[i] = Math.exp(low + (high - low) * i / bins);
        }
        return edge;
    }

    private static SizeBins cut(VolumeDistribution volume, int bins) {
        double[] edge = edges(volume, bins);
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
