package baymist.airflow;

/**
 * Limited value at a link from three values in a row: third-order upwind-biased where the field is smooth, no new extremes
 * where it is not. Koren (1993), "A robust upwind discretization method for advection, diffusion and source terms", in
 * Vreugdenhil and Koren, Numerical Methods for Advection-Diffusion Problems: psi(r) = max(0, min(2r, (1 + 2r)/3, 2)).
 */
final class Limiter {
    static final double THIRD = 1.0 / 3;

    private Limiter() {}

    /** Value between {@code up} and {@code down}, with {@code farUp} behind {@code up}. */
    static double between(double farUp, double up, double down) {
        return up + beyond(up - farUp, down - up);
    }

    /** What the value between has beyond the one upstream, for the steps to that one and from it to the one downstream. */
    static double beyond(double behind, double ahead) {
        if (ahead * behind <= 0) {
            return 0;
        }
        // psi(r) * ahead / 2 with r = behind/ahead, written without the quotient: the least of three sizes.
        double twice = behind + behind;
        double size = Math.abs((ahead + twice) * THIRD);
        double back = Math.abs(twice);
        double forth = Math.abs(ahead + ahead);
        size = back < size ? back : size;
        size = forth < size ? forth : size;
        return 0.5 * (ahead < 0 ? -size : size);
    }
}
