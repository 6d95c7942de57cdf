package baymist.airflow;

import baymist.problem.SimulationException;
import java.util.function.DoubleUnaryOperator;

/**
 * Integrates one equation {@code dy/dt = f(y)} whose right side never grows with y, however stiff.
 *
 * <p>Implicit Euler with step doubling: one step of h against two of h/2; the difference controls the step and the
 * extrapolated value {@code 2 y(h/2, h/2) - y(h)} is kept (second order). An extrapolation that runs past the rest state is
 * replaced by the two half steps, which never do: the solution stays monotone. Each implicit step has one root, bracketed by
 * the old value and the explicit step, found by Ridders' method (Ridders 1979).
 */
final class Relaxation {
    private static final int MAX_STEPS = 200_000;
    private final DoubleUnaryOperator rate;
    private final double lowest;
    private final double relativeTolerance;
    private final double absoluteTolerance;

    /** Sees each accepted step. */
    @FunctionalInterface
    interface Observer {
        void step(double stepS, double before, double after);
    }

    /**
     * @param rate f(y), non-increasing for y at or above {@code lowest}, where it is not negative
     * @param lowest bound that y never passes
     * @param relativeTolerance, absoluteTolerance allowed difference between one step and two halves
     */
    Relaxation(DoubleUnaryOperator rate, double lowest, double relativeTolerance, double absoluteTolerance) {
        this.rate = rate;
        this.lowest = lowest;
        this.relativeTolerance = relativeTolerance;
        this.absoluteTolerance = absoluteTolerance;
    }

    /** Value after {@code durationS}. */
    double advance(double start, double durationS, Observer observer) {
        double y = start;
        double left = durationS;
        double h = durationS / 128;
        for (int n = 0; left > 0; n++) {
            double step = n >= MAX_STEPS || h >= 0.999 * left ? left : h;
            double whole = implicitStep(y, step);
            double halves = implicitStep(implicitStep(y, step / 2), step / 2);
            double error = Math.abs(halves - whole);
            double allowed = relativeTolerance * Math.max(Math.abs(y), Math.abs(halves)) + absoluteTolerance;
            if (error <= allowed || step < 1e-12 * durationS || n >= MAX_STEPS) {
                double next = extrapolated(y, whole, halves);
                if (!Double.isFinite(next)) {
                    throw new SimulationException("airflow: a balance over a window of " + durationS
                            + " s broke down: from " + y + " to " + next + " in a step of " + step + " s");
                }
                observer.step(step, y, next);
                y = next;
                left = step == left ? 0 : left - step;
            }
            h = step * Math.min(3, Math.max(0.2, 0.8 * Math.sqrt(allowed / Math.max(error, 1e-300))));
        }
        return y;
    }

    private double extrapolated(double y, double whole, double halves) {
        double next = 2 * halves - whole;
        boolean past = next < lowest || rate.applyAsDouble(next) * (halves - y) < 0;
        return past ? halves : next;
    }

    /** Root of {@code y - y0 - h f(y)}, which rises with slope 1 or more. */
    private double implicitStep(double y0, double h) {
        double explicit = y0 + h * rate.applyAsDouble(y0);
        double a = Math.max(lowest, Math.min(y0, explicit));
        double b = Math.max(y0, explicit);
        double fa = miss(a, y0, h);
        double fb = miss(b, y0, h);
        for (int n = 0; n < 80; n++) {
            if (fa >= 0) {
                return a;
            }
            if (fb <= 0) {
                return b;
            }
            if (b - a <= 4e-16 * Math.max(Math.abs(a), Math.abs(b)) + 1e-12 * absoluteTolerance) {
                break;
            }
            double middle = 0.5 * (a + b);
            double fm = miss(middle, y0, h);
            double root = Math.sqrt(fm * fm - fa * fb);
            double x = root > 0 ? middle - (middle - a) * fm / root : middle;
            double fx = miss(x, y0, h);
            // Keep the tightest bracket among a, middle, x, b.
            double low = Math.min(middle, x);
            double high = Math.max(middle, x);
            double fLow = middle < x ? fm : fx;
            double fHigh = middle < x ? fx : fm;
            if (fLow >= 0) {
                b = low;
                fb = fLow;
            } else if (fHigh >= 0) {
                a = low;
                fa = fLow;
                b = high;
                fb = fHigh;
            } else {
                a = high;
                fa = fHigh;
            }
        }
        return 0.5 * (a + b);
    }

    private double miss(double y, double y0, double h) {
        return y - y0 - h * rate.applyAsDouble(y);
    }
}
