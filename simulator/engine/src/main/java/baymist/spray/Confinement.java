package baymist.spray;

import baymist.geom.Vec3;

/**
 * Finds where a jet becomes too wide for its surroundings: the free law holds while {@code 2b < D/3} (common engineering limit, from memory), D
 * being the clear distance from sheet to sheet square to the jet. D is taken at six places along the jet's axis from four pairs of opposite rays, 45 degrees apart;
 * the narrowest pair gives D1, the pair square to it D2. A sheet that lies on one side alone does not confine the jet.
 */
final class Confinement {
    /** Jet width over clearance above which the free law no longer holds. */
    static final double LARGEST_SHARE = 1.0 / 3;

    private static final int PLACES = 6;
    private static final int PAIRS = 4;

    /** Share of the reach at which the last place lies: just off the sheet that the jet strikes. */
    private static final double LAST = 0.98;

    private Confinement() {}

    /**
     * The law of a jet among the sheets.
     *
     * @param reachM distance along the axis to the sheet that the jet strikes, m
     */
    static ConfinedJet of(RoundJet jet, SheetRays rays, Vec3 origin, Vec3 axis, double reachM, double[] openFraction) {
        double perM = 2 * RoundJet.SPREAD / LARGEST_SHARE;
        Vec3 u = axis.anyPerpendicular();
        Vec3 v = axis.cross(u);
        double flat = Double.POSITIVE_INFINITY;
        double before = jet.coreM();
        for (int k = 0; k < PLACES; k++) {
            double x = reachM * Math.min(LAST, (k + 1.0) / PLACES);
            double needM = perM * x;
            double[] clear = pairs(rays, origin.plus(x, axis), u, v, needM, openFraction);
            int narrow = narrowest(clear);
            if (flat == Double.POSITIVE_INFINITY && clear[narrow] < needM) {
                flat = between(clear[narrow] / perM, before, x);
            }
            double other = clear[(narrow + PAIRS / 2) % PAIRS];
            if (flat < Double.POSITIVE_INFINITY && other < needM) {
                double shut = Math.max(flat, between(other / perM, before, x));
                return new ConfinedJet(jet, flat, shut, Math.sqrt(clear[narrow] * other));
            }
            before = Math.max(jet.coreM(), x);
        }
        return new ConfinedJet(jet, flat, Double.POSITIVE_INFINITY, 1);
    }

    private static double between(double value, double low, double high) {
        return Math.max(low, Math.min(value, high));
    }

    /** Clear distance of each pair, m; exact where it is less than {@code needM}, otherwise at least that. */
    private static double[] pairs(SheetRays rays, Vec3 at, Vec3 u, Vec3 v, double needM, double[] openFraction) {
        double[] clear = new double[PAIRS];
        for (int i = 0; i < PAIRS; i++) {
            double angle = Math.PI * i / PAIRS;
            Vec3 side = u.times(Math.cos(angle)).plus(Math.sin(angle), v);
            clear[i] = rays.clearM(at, side, needM, openFraction) + rays.clearM(at, side.negate(), needM, openFraction);
        }
        return clear;
    }

    private static int narrowest(double[] clear) {
        int best = 0;
        for (int i = 1; i < clear.length; i++) {
            if (clear[i] < clear[best]) {
                best = i;
            }
        }
        return best;
    }
}
