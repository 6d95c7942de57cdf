package baymist.spray;

import baymist.units.Air;

/**
 * Speed of the drops of each size along a jet's axis.
 *
 * <p>{@code v dv/dx = (u - v)(1 + 0.15 Re^0.687)/τ} with the jet's centre speed u(x), from rest at the nozzle (ASSUMED: a tip
 * that mixes outside gives the liquid hardly any speed of its own), by a step implicit in v: unconditionally positive, exact in
 * both limits (a fine drop follows the air, a heavy one keeps its speed). Gravity is left out: across a bay it turns the path of a
 * 100 µm drop at 5 m/s by 2.5 degrees.
 */
final class DropSpeeds {
    private static final int NODES = 96;

    private final double firstM;
    private final double logStep;
    /** Speed, m/s, [bins][nodes]; node n at firstM * exp(n * logStep). */
    private final double[][] speed;

    private final double[] endM;

    /**
     * @param reachM largest distance asked for, m
     * @param deadMPerS speed of drop and air below which a drop has become fog
     */
    DropSpeeds(ConfinedJet jet, SizeBins bins, double densityKgPerM3, Air air, double reachM, double deadMPerS) {
        firstM = 0.25 * jet.free().expandedDiameterM();
        logStep = Math.log(Math.max(reachM, 2 * firstM) / firstM) / (NODES - 1);
        speed = new double[bins.count()][NODES];
        endM = new double[bins.count()];
        for (int b = 0; b < bins.count(); b++) {
            march(jet, bins.diameterM()[b], densityKgPerM3, air, speed[b]);
            endM[b] = end(jet, speed[b], deadMPerS);
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

    /** Speed of a bin's drops on the axis at distance x, m/s. */
    double at(int bin, double x) {
        double place = Math.log(Math.max(x, firstM) / firstM) / logStep;
        int n = (int) Math.min(NODES - 2.0, place);
        double w = Math.min(1, place - n);
        return speed[bin][n] * (1 - w) + speed[bin][n + 1] * w;
    }

    /** Distance at which the drops of a bin have come to the end of the jet and are fog, m; infinite if not reached. */
    double endM(int bin) {
        return endM[bin];
    }
}
