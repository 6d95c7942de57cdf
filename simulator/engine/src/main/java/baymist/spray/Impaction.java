package baymist.spray;

import baymist.units.Air;

/**
 * Share of the droplets of a jet that reach the wall it strikes.
 *
 * <p>Stokes number by the convention of impactors, {@code Stk = ρ d² U Cc/(9 μ Dj)} with the jet's diameter Dj (half of it in
 * the denominator would double the value); half of the drops land at Stk = 0.24 for a round nozzle (Marple and Willeke 1976;
 * Hinds 1999, table 5.4: √Stk50 = 0.49). The curve runs through the points of a round impactor at Re 3000 and a gap of one
 * diameter, from memory of Hinds (1999), ch. 5: √Stk 0.35: below 2 %; 0.42: 12 %; 0.46: 30 %; 0.53: 80 %; 0.58: 95 %; 0.65:
 * 99 %. The ends (0 below 0.30, all above 0.75) are ASSUMED.
 *
 * <p>For a spread jet on a far wall the speed is the ray's own and Dj = 2b; that estimate is good to about 30 % in diameter
 * (docs/theory/spray.md, 4).
 */
public final class Impaction {
    /** Stokes number at which half the drops of a round jet land. */
    public static final double STK50_ROUND = 0.24;

    /** The same for a slot (not used by the caster; Hinds 1999, table 5.4). */
    public static final double STK50_SLOT = 0.59;

    private static final double[] ROOT_STK = {0.30, 0.35, 0.42, 0.46, Math.sqrt(STK50_ROUND), 0.53, 0.58, 0.65, 0.75};
    private static final double[] SHARE = {0, 0.015, 0.12, 0.30, 0.5, 0.80, 0.95, 0.99, 1};

    private Impaction() {}

    /** Stokes number; {@code relaxationS} = ρ d² Cc/(18 μ), speed normal to the wall m/s, jet diameter m. */
    public static double stokes(double relaxationS, double speedMPerS, double jetDiameterM) {
        return 2 * relaxationS * speedMPerS / jetDiameterM;
    }

    /** Share that lands, 0..1, piecewise linear in √Stk, never falling. */
    public static double efficiency(double stokes) {
        double root = Math.sqrt(Math.max(0, stokes));
        if (root <= ROOT_STK[0]) {
            return 0;
        }
        for (int i = 1; i < ROOT_STK.length; i++) {
            if (root <= ROOT_STK[i]) {
                double w = (root - ROOT_STK[i - 1]) / (ROOT_STK[i] - ROOT_STK[i - 1]);
                return SHARE[i - 1] + w * (SHARE[i] - SHARE[i - 1]);
            }
        }
        return 1;
    }

    /** {@code d50 √Cc}, m, for a speed and a jet diameter: {@code √(9 μ Dj Stk50/(ρ U))}. */
    public static double cutTimesRootSlipM(double densityKgPerM3, double speedMPerS, double jetDiameterM, Air air) {
        return Math.sqrt(9 * air.viscosityPaS() * jetDiameterM * STK50_ROUND / (densityKgPerM3 * speedMPerS));
    }

    /** Cut diameter d50 with slip, m, by fixed-point iteration on the slip. */
    public static double cutM(double densityKgPerM3, double speedMPerS, double jetDiameterM, Air air) {
        double scaled = cutTimesRootSlipM(densityKgPerM3, speedMPerS, jetDiameterM, air);
        double d = scaled;
        for (int i = 0; i < 100; i++) {
            d = scaled / Math.sqrt(Droplet.slip(d, air));
        }
        return d;
    }
}
