package baymist.airflow;

/**
 * Limited value at a link from three values in a row: third-order upwind-biased where the field is smooth, no new extremes
 * where it is not. Koren (1993), "A robust upwind discretization method for advection, diffusion and source terms", in
 * Vreugdenhil and Koren, Numerical Methods for Advection-Diffusion Problems: psi(r) = max(0, min(2r, (1 + 2r)/3, 2)).
 */
final class Limiter {
    private Limiter() {}

    /** Value between {@code up} and {@code down}, with {@code farUp} behind {@code up}. */
    static double between(double farUp, double up, double down) {
        double ahead = down - up;
        double behind = up - farUp;
        if (ahead * behind <= 0) {
            return up;
        }
        // psi(r) * ahead / 2 with r = behind/ahead, written without the quotient.
        double third = (ahead + 2 * behind) / 3;
        double change = ahead > 0
                ? Math.min(Math.min(2 * behind, third), 2 * ahead)
                : Math.max(Math.max(2 * behind, third), 2 * ahead);
        return up + 0.5 * change;
    }
}
