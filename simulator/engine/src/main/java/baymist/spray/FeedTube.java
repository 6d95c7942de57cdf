package baymist.spray;

import baymist.units.Air;

/**
 * What a long thin air bore ahead of the orifice costs: adiabatic flow of a perfect gas with friction (Fanno). It says how much
 * less air a thin hook tube passes than its bore as a plain orifice would, and what pressure is left at the tip.
 */
public final class FeedTube {
    private FeedTube() {}

    /**
     * Air through a bore into the orifices of a tip.
     *
     * @param massKgPerS air, kg/s
     * @param tipGaugePa total pressure before the orifices above ambient, Pa
     * @param inletMach Mach number at the beginning of the bore
     * @param chokedInBore whether the bore's own end is sonic and limits the flow
     */
    public record Flow(double massKgPerS, double tipGaugePa, double inletMach, boolean chokedInBore) {}

    /**
     * Mass flow through a tube choked at its exit, as a share of the frictionless choked flow of the same bore.
     *
     * <p>The Mach number M at the inlet solves {@code fL/D = (1 - M²)/(γM²) + (γ+1)/(2γ) ln((γ+1)M²/(2 + (γ-1)M²))} (Shapiro
     * 1953, ch. 6, Darcy friction factor); the share is the isentropic flow function at M over its value at 1. Valid when the
     * supply pressure suffices to choke the exit.
     *
     * @param frictionLength f L / D with Darcy's friction factor, 0 or more
     * @return 0..1
     */
    public static double flowFactor(double frictionLength) {
        return flowFunction(machAt(frictionLength)) / flowFunction(1);
    }

    /**
     * Flow from a supply at rest through a bore and then through a tip's orifices.
     *
     * <p>Along the bore {@code fL/D} falls by its own share (Shapiro 1953, ch. 6), and the total pressure with it: p01 F(M1) =
     * p02 F(M2), F the isentropic flow function. The orifices draw from p02. The two laws meet at one inlet Mach number, found by bisection;
     * where they would only meet beyond M2 = 1 the bore's end is sonic and the orifices see the pressure that passes that flow.
     *
     * @param boreM diameter of the bore, m, above 0
     * @param frictionLength f L / D, Darcy
     * @param orificesM diameter of one orifice with the area of all, m, above 0
     * @param coefficient discharge coefficient of the orifices
     * @param gaugePa pressure above ambient before the bore, Pa, above 0
     * @param supplyK temperature there, K
     */
    public static Flow through(
            double boreM,
            double frictionLength,
            double orificesM,
            double coefficient,
            double gaugePa,
            double supplyK,
            double ambientPa) {
        double p01 = ambientPa + gaugePa;
        double scale = Math.PI / 4 * boreM * boreM * p01 * Math.sqrt(Air.GAMMA / (Air.GAS_CONSTANT * supplyK));
        double most = machAt(frictionLength);
        double low = 0;
        double high = most;
        for (int i = 0; i < 200 && high - low > 1e-14 * most; i++) {
            double mach = 0.5 * (low + high);
            double gauge = exitTotalPa(p01, mach, frictionLength) - ambientPa;
            double passes = gauge > 0 ? orifice(orificesM, coefficient, gauge, supplyK, ambientPa) : 0;
            if (passes > scale * flowFunction(mach)) {
                low = mach;
            } else {
                high = mach;
            }
        }
        double mach = 0.5 * (low + high);
        double mass = scale * flowFunction(mach);
        if (high < most) {
            return new Flow(mass, Math.max(0, exitTotalPa(p01, mach, frictionLength) - ambientPa), mach, false);
        }
        return new Flow(mass, gaugeFor(mass, gaugePa, orificesM, coefficient, supplyK, ambientPa), mach, true);
    }

    private static double orifice(double d, double coefficient, double gaugePa, double supplyK, double ambientPa) {
        return ChokedOrifice.of(d, coefficient, gaugePa, supplyK, ambientPa).massKgPerS();
    }

    private static double gaugeFor(
            double mass, double mostPa, double d, double coefficient, double supplyK, double ambientPa) {
        double low = 0;
        double high = mostPa;
        for (int i = 0; i < 100; i++) {
            double gauge = 0.5 * (low + high);
            if (orifice(d, coefficient, gauge, supplyK, ambientPa) < mass) {
                low = gauge;
            } else {
                high = gauge;
            }
        }
        return 0.5 * (low + high);
    }

    /** Total pressure at the end of the bore, Pa. */
    private static double exitTotalPa(double p01, double inletMach, double frictionLength) {
        double left = lengthToChoke(inletMach) - frictionLength;
        double exitMach = left > 0 ? machAt(left) : 1;
        return p01 * flowFunction(inletMach) / flowFunction(exitMach);
    }

    /** Subsonic Mach number from which a friction length chokes. */
    private static double machAt(double frictionLength) {
        if (!(frictionLength >= 0)) {
            throw new IllegalArgumentException("f L / D " + frictionLength + ", 0 or more expected");
        }
        double low = 1e-6;
        double high = 1;
        for (int i = 0; i < 200 && high - low > 1e-15; i++) {
            double mach = 0.5 * (low + high);
            if (lengthToChoke(mach) > frictionLength) {
                low = mach;
            } else {
                high = mach;
            }
        }
        return 0.5 * (low + high);
    }

    private static double lengthToChoke(double mach) {
        double g = Air.GAMMA;
        double m2 = mach * mach;
        return (1 - m2) / (g * m2) + (g + 1) / (2 * g) * Math.log((g + 1) * m2 / (2 + (g - 1) * m2));
    }

    private static double flowFunction(double mach) {
        double g = Air.GAMMA;
        return mach * Math.pow(1 + (g - 1) / 2 * mach * mach, -(g + 1) / (2 * (g - 1)));
    }
}
