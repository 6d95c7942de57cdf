package baymist.airflow;

/**
 * Shear at a wall by Spalding's law ({@link WallLaw}) as a factor on the laminar one: {@code tau/rho = nu u/y * factor(u y/nu)}.
 * The factor is 1 while the wall is resolved. Tabulated once; between the points it is interpolated in the logarithms, which
 * is within 1e-4 of the law. Immutable.
 */
final class WallDrag {
    /** Below this Reynolds number of speed and distance the law is laminar within 0.1 %. */
    private static final double LAMINAR = 4;

    private static final double LARGEST = 1e7;
    private static final int POINTS = 256;

    private final double[] logFactor = new double[POINTS + 1];
    private final double step = Math.log(LARGEST / LAMINAR) / POINTS;

    WallDrag() {
        for (int n = 0; n <= POINTS; n++) {
            double reynolds = LAMINAR * Math.exp(n * step);
            // u+ and y+ from u*, with u = Re nu/y in units of nu = y = 1.
            double friction = WallLaw.frictionSpeedMPerS(reynolds, 1, 1);
            logFactor[n] = Math.log(friction * friction / reynolds);
        }
    }

    double factor(double reynolds) {
        if (reynolds <= LAMINAR) {
            return 1;
        }
        double at = Math.min(POINTS - 1e-9, Math.log(reynolds / LAMINAR) / step);
        int n = (int) at;
        return Math.exp(logFactor[n] + (at - n) * (logFactor[n + 1] - logFactor[n]));
    }
}
