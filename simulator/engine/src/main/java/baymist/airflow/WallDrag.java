package baymist.airflow;

/**
 * Shear at a wall by Spalding's law ({@link WallLaw}) as a factor on the laminar one: {@code tau/rho = nu u/y * factor(u y/nu)}.
 * The factor is 1 while the wall is resolved. Tabulated once at 64 places an octave, linear between them (the places are the leading bits of
 * the number itself, so no logarithm is taken); within 1e-4 of the law. Immutable.
 */
final class WallDrag {
    /** Below this Reynolds number of speed and distance the law is laminar within 0.1 %. */
    private static final double LAMINAR = 4;

    /** The table ends at 4 times 2 to this power, some 1.7e7; beyond it the last factor holds. */
    private static final int OCTAVES = 22;

    private static final int PLACES_AN_OCTAVE = 64;

    /** Bits of a double below those that number the place. */
    private static final int LOWER_BITS = 52 - 6;

    private static final long FIRST = Double.doubleToRawLongBits(LAMINAR) >> LOWER_BITS;
    private static final int PLACES = OCTAVES * PLACES_AN_OCTAVE;

    private final double[] factor = new double[PLACES + 1];

    WallDrag() {
        for (int n = 0; n <= PLACES; n++) {
            double reynolds = Double.longBitsToDouble((FIRST + n) << LOWER_BITS);
            // u+ and y+ from u*, with u = Re nu/y in units of nu = y = 1.
            double friction = WallLaw.frictionSpeedMPerS(reynolds, 1, 1);
            factor[n] = friction * friction / reynolds;
        }
    }

    /** @param reynolds speed times distance over viscosity, 0 or more */
    double factor(double reynolds) {
        if (reynolds <= LAMINAR) {
            return 1;
        }
        long bits = Double.doubleToRawLongBits(reynolds);
        long place = (bits >> LOWER_BITS) - FIRST;
        if (place >= PLACES) {
            return factor[PLACES];
        }
        int n = (int) place;
        double part = (bits & ((1L << LOWER_BITS) - 1)) * (1.0 / (1L << LOWER_BITS));
        return factor[n] + part * (factor[n + 1] - factor[n]);
    }

    /** Friction speed u*, m/s; see {@link WallLaw#frictionSpeedMPerS}. */
    double frictionSpeedMPerS(double speedMPerS, double distanceM, double viscosityM2PerS) {
        return Math.sqrt(viscosityM2PerS * speedMPerS / distanceM * factor(speedMPerS * distanceM / viscosityM2PerS));
    }
}
