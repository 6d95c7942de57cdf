package baymist.spray;

import baymist.units.Air;

/**
 * Flight of the drops of each size along a jet: their speed on the axis, how fast they fall by then and how far they have sunk.
 *
 * <p>{@code v dv/dx = (u - v)(1 + 0.15 Re^0.687)/τ} with the jet's centre speed u(x), from rest at the nozzle (ASSUMED: a tip
 * that mixes outside gives the liquid hardly any speed of its own), by a step implicit in v: unconditionally positive, exact in
 * both limits (a fine drop follows the air, a heavy one keeps its speed).
 *
 * <p>Across the jet gravity g alone acts: {@code dw/dt = g - w (1 + 0.15 Re^0.687)/τ} with {@code Re} by the speed relative to the air, both
 * components, and {@code dt = dx/v}; exact over each step for the drag at its end. In still air a fine drop sinks at its fall speed, a heavy one by
 * {@code g t²/2}. Off the axis drops are slower by the ray's share of speed, but have come there from the core: their time of flight is
 * that on the axis over the share, at most twice as long (ASSUMED).
 */
final class DropSpeeds {
    private static final int NODES = 96;

    /** Longest time of flight over that on the axis. */
    private static final double SLOWEST = 2;

    private final double firstM;
    private final double logStep;
    /** Speed, m/s, [bins][nodes]; node n at firstM * exp(n * logStep). */
    private final double[][] speed;

    /** Speed of fall, m/s, and distance sunk, m, in the time of the axis and in {@link #SLOWEST} times it, [2][bins][nodes]. */
    private final double[][][] fall;

    private final double[][][] sunk;
    private final double[] endM;

    /** Straight flight: without gravity. */
    DropSpeeds(ConfinedJet jet, SizeBins bins, double densityKgPerM3, Air air, double reachM, double deadMPerS) {
        this(jet, bins, densityKgPerM3, air, reachM, deadMPerS, 0);
    }

    /**
     * @param reachM largest distance asked for, m
     * @param deadMPerS speed of drop and air below which a drop has become fog
     * @param gravityMPerS2 acceleration of gravity, m/s², 0 or more
     */
    DropSpeeds(
            ConfinedJet jet,
            SizeBins bins,
            double densityKgPerM3,
            Air air,
            double reachM,
            double deadMPerS,
            double gravityMPerS2) {
        firstM = 0.25 * jet.free().expandedDiameterM();
        logStep = Math.log(Math.max(reachM, 2 * firstM) / firstM) / (NODES - 1);
        speed = new double[bins.count()][NODES];
        fall = new double[2][bins.count()][NODES];
        sunk = new double[2][bins.count()][NODES];
        endM = new double[bins.count()];
        for (int b = 0; b < bins.count(); b++) {
            march(jet, bins.diameterM()[b], densityKgPerM3, air, speed[b]);
            endM[b] = end(jet, speed[b], deadMPerS);
            if (gravityMPerS2 > 0 && bins.diameterM()[b] > 0) {
                for (int k = 0; k < 2; k++) {
                    double slower = k == 0 ? 1 : SLOWEST;
                    sink(
                            jet,
                            b,
                            bins.diameterM()[b],
                            densityKgPerM3,
                            air,
                            gravityMPerS2,
                            slower,
                            fall[k][b],
                            sunk[k][b]);
                }
            }
        }
    }

    private void march(ConfinedJet jet, double d, double densityKgPerM3, Air air, double[] out) {
        double tau = Droplet.relaxationTimeS(d, densityKgPerM3, air);
        double v = 0;
        double x = 0;
        for (int n = 0; n < NODES; n++) {
            double next = nodeM(n);
            double u = jet.centreSpeedMPerS(next);
            if (tau <= 0) {
                v = u;
            } else {
                double a = (next - x) * Droplet.dragFactor(Droplet.reynolds(d, u - v, air)) / tau;
                v = -a + Math.sqrt(a * a + v * v + 2 * a * u);
            }
            x = next;
            out[n] = v;
        }
    }

    private void sink(
            ConfinedJet jet,
            int bin,
            double d,
            double densityKgPerM3,
            Air air,
            double g,
            double slower,
            double[] fallOut,
            double[] sunkOut) {
        double tau = Droplet.relaxationTimeS(d, densityKgPerM3, air);
        double w = 0;
        double y = 0;
        double x = 0;
        double before = 0;
        for (int n = 0; n < NODES; n++) {
            double next = nodeM(n);
            double v = speed[bin][n];
            double dt = slower * (next - x) / Math.max(1e-9, 0.5 * (v + before));
            double along = jet.centreSpeedMPerS(next) - v;
            double[] state = DropletFall.step(w, y, dt, along, g, tau, d, air);
            w = state[0];
            y = state[1];
            x = next;
            before = v;
            fallOut[n] = w;
            sunkOut[n] = y;
        }
    }

    private double end(ConfinedJet jet, double[] v, double deadMPerS) {
        for (int n = NODES - 1; n >= 0; n--) {
            if (Math.max(v[n], jet.centreSpeedMPerS(nodeM(n))) >= deadMPerS) {
                return n == NODES - 1 ? Double.POSITIVE_INFINITY : nodeM(n + 1);
            }
        }
        return 0;
    }

    private double nodeM(int n) {
        return firstM * Math.exp(n * logStep);
    }

    /** Speed of a bin's drops on the axis at distance x (m), m/s. */
    double at(int bin, double x) {
        return onAxisMPerS(bin, place(x));
    }

    /** Place of a distance among the nodes, for the questions below. */
    double place(double x) {
        return Math.max(0, Math.min(NODES - 1, Math.log(Math.max(x, firstM) / firstM) / logStep));
    }

    /** Speed of a bin's drops on the axis at a {@link #place}, m/s. */
    double onAxisMPerS(int bin, double place) {
        return between(speed[bin], place);
    }

    /** Speed at which drops fall by then on a ray with this share of the axis' speed, m/s. */
    double fallMPerS(int bin, double place, double speedShare) {
        return slowed(fall, bin, place, speedShare);
    }

    /** How far drops have sunk by then on such a ray, m. */
    double sunkM(int bin, double place, double speedShare) {
        return slowed(sunk, bin, place, speedShare);
    }

    private static double slowed(double[][][] table, int bin, double place, double speedShare) {
        double slower = Math.max(1, Math.min(SLOWEST, 1 / speedShare));
        double w = (slower - 1) / (SLOWEST - 1);
        return between(table[0][bin], place) * (1 - w) + between(table[1][bin], place) * w;
    }

    private static double between(double[] nodes, double place) {
        int n = (int) Math.min(NODES - 2.0, place);
        double w = Math.min(1, place - n);
        return nodes[n] * (1 - w) + nodes[n + 1] * w;
    }

    /** Distance at which the drops of a bin have come to the end of the jet and are fog, m; infinite if not reached. */
    double endM(int bin) {
        return endM[bin];
    }
}
