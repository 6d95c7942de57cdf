package baymist.numeric;

/**
 * What three values of one quantity on grids of three sizes say about the grid: spread, observed order, and Roache's grid
 * convergence index. Procedure of Celik et al. (2008), ASME J. Fluids Eng. 130, 078001, after Roache (1994), J. Fluids Eng. 116, 405-413, with
 * the safety factor 1.25 for three grids; from memory, held against their worked examples in the tests.
 *
 * <p>With differences e21 = f2 - f1 and e32 = f3 - f2 (1 = finest) and ratios r21 = h2/h1, r32 = h3/h2 the order p solves
 * {@code e32/e21 = r21^p (r32^p - 1)/(r21^p - 1)}. An order of 0.4 or more exists when the values go in one direction and the right side's value there is
 * exceeded: else the grids are not in the range where the scheme's order shows, and order, extrapolated
 * value and index are not a number.
 *
 * @param spread largest less smallest value, in the unit of the quantity
 * @param monotone whether the three values rise or fall throughout (or are all the same)
 * @param order observed order p, or NaN
 * @param extrapolated value for a vanishing grid size (Richardson), or NaN
 * @param index grid convergence index of the finest grid as a half-width in the unit of the quantity, or NaN; 0 when all are the same
 */
public record GridConvergence(double spread, boolean monotone, double order, double extrapolated, double index) {
    /** Roache's factor of safety where three grids show the order. */
    public static final double SAFETY = 1.25;

    /**
     * Orders looked for; what lies beyond is an accident of three numbers. ASSUMED: below the lowest the extrapolation would multiply the
     * difference of two grids more than ninefold (at a ratio of 1.3).
     */
    private static final double LOWEST_ORDER = 0.4;

    private static final double HIGHEST_ORDER = 20;

    /**
     * What three grids say.
     *
     * @param sizeM representative grid sizes, finest first, rising, m
     * @param value the quantity on each grid, in the same order
     * @throws IllegalArgumentException if there are not three of each or the sizes do not rise
     */
    public static GridConvergence of(double[] sizeM, double[] value) {
        if (sizeM.length != 3 || value.length != 3) {
            throw new IllegalArgumentException(sizeM.length + " sizes and " + value.length + " values, three expected");
        }
        if (!(sizeM[0] > 0 && sizeM[1] > sizeM[0] && sizeM[2] > sizeM[1])) {
            throw new IllegalArgumentException(
                    "grid sizes " + sizeM[0] + ", " + sizeM[1] + ", " + sizeM[2] + " m, rising ones expected");
        }
        double spread =
                Math.max(value[0], Math.max(value[1], value[2])) - Math.min(value[0], Math.min(value[1], value[2]));
        double e21 = value[1] - value[0];
        double e32 = value[2] - value[1];
        if (e21 == 0 && e32 == 0) {
            return new GridConvergence(0, true, Double.NaN, value[0], 0);
        }
        double r21 = sizeM[1] / sizeM[0];
        double r32 = sizeM[2] / sizeM[1];
        boolean monotone = e21 * e32 > 0;
        double order = monotone ? order(e32 / e21, r21, r32) : Double.NaN;
        double beyond = Math.pow(r21, order) - 1;
        return new GridConvergence(spread, monotone, order, value[0] - e21 / beyond, SAFETY * Math.abs(e21) / beyond);
    }

    /** Bisection: the right side rises with p. */
    private static double order(double wanted, double r21, double r32) {
        double low = LOWEST_ORDER;
        double high = HIGHEST_ORDER;
        if (!(ratio(low, r21, r32) < wanted && wanted < ratio(high, r21, r32))) {
            return Double.NaN;
        }
        for (int i = 0; i < 100; i++) {
            double p = 0.5 * (low + high);
            if (ratio(p, r21, r32) < wanted) {
                low = p;
            } else {
                high = p;
            }
        }
        return 0.5 * (low + high);
    }

    private static double ratio(double p, double r21, double r32) {
        double a = Math.pow(r21, p);
        return a * Math.expm1(p * Math.log(r32)) / Math.expm1(p * Math.log(r21));
    }
}
