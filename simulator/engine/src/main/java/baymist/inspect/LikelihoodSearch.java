package baymist.inspect;

import java.util.function.ToDoubleFunction;

/** The least misfit over two bounded factors: a grid in their logarithms, made finer round the best three times. */
final class LikelihoodSearch {
    private static final int STEPS = 40;
    private static final int ZOOMS = 3;

    private final double logLiquid;
    private final double logSize;

    LikelihoodSearch(double liquidRange, double sizeRange) {
        logLiquid = Math.log(liquidRange);
        logSize = Math.log(sizeRange);
    }

    Setting best(ToDoubleFunction<Setting> misfit) {
        double cx = 0;
        double cy = 0;
        double wx = logLiquid;
        double wy = logSize;
        for (int zoom = 0; zoom <= ZOOMS; zoom++) {
            double least = Double.POSITIVE_INFINITY;
            double bx = cx;
            double by = cy;
            int rows = logSize > 0 ? STEPS : 0;
            for (int i = 0; i <= STEPS; i++) {
                double x = within(cx + wx * (2.0 * i / STEPS - 1), logLiquid);
                for (int j = 0; j <= rows; j++) {
                    double y = rows == 0 ? 0 : within(cy + wy * (2.0 * j / rows - 1), logSize);
                    double m = misfit.applyAsDouble(new Setting(Math.exp(x), Math.exp(y)));
                    if (m < least) {
                        least = m;
                        bx = x;
                        by = y;
                    }
                }
            }
            cx = bx;
            cy = by;
            wx /= 8;
            wy /= 8;
        }
        return new Setting(Math.exp(cx), Math.exp(cy));
    }

    private static double within(double v, double limit) {
        return Math.max(-limit, Math.min(limit, v));
    }

    /** Lowest and highest liquid factor, then size factor, among settings whose misfit stays below a limit. */
    double[] ranges(ToDoubleFunction<Setting> misfit, double limit) {
        Setting best = best(misfit);
        double[] r = {best.liquid(), best.liquid(), best.size(), best.size()};
        int n = 2 * STEPS;
        int rows = logSize > 0 ? n : 0;
        for (int i = 0; i <= n; i++) {
            for (int j = 0; j <= rows; j++) {
                Setting s = new Setting(
                        Math.exp(logLiquid * (2.0 * i / n - 1)),
                        rows == 0 ? 1 : Math.exp(logSize * (2.0 * j / rows - 1)));
                if (misfit.applyAsDouble(s) <= limit) {
                    r[0] = Math.min(r[0], s.liquid());
                    r[1] = Math.max(r[1], s.liquid());
                    r[2] = Math.min(r[2], s.size());
                    r[3] = Math.max(r[3], s.size());
                }
            }
        }
        return r;
    }
}
