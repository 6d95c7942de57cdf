package baymist.spray;

import baymist.units.Air;

/**
 * What a long thin air bore ahead of the orifice costs: adiabatic flow with friction (Fanno), choked at its end. It says how
 * much less air a thin hook tube passes than its bore as a plain orifice would.
 */
public final class FeedTube {
    private FeedTube() {}

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
        return flowFunction(0.5 * (low + high)) / flowFunction(1);
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
