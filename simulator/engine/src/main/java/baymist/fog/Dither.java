package baymist.fog;

import java.util.SplittableRandom;

/**
 * Factors that differ from 1 by at most half a unit in the last place of single precision, to be applied before rounding to it: many cells of
 * one shape have the same coefficients, and their rounding errors, all alike, would add up over thousands of steps. Errors that differ from cell to cell cancel. The
 * factors come in pairs whose mean is 1, and depend on place and size alone, so that neither threads nor the cut into groups change a bit.
 */
final class Dither {
    private static final int COUNT = 4096;
    private static final double[] FACTOR = factors();

    private Dither() {}

    private static double[] factors() {
        double[] factor = new double[COUNT];
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < COUNT / 2; i++) {
            double off = (random.nextDouble() - 0.5) * Math.scalb(1.5, -24);
            factor[i] = 1 + off;
            factor[i + COUNT / 2] = 1 - off;
        }
        return factor;
    }

    /** Rounds a coefficient of a place (and size: any odd step for each). */
    static float round(double value, int key) {
        return (float) (value * FACTOR[key & (COUNT - 1)]);
    }
}
