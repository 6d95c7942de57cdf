package baymist.spray;

/**
 * Shear of an impinging jet on the sheet, and how much film it leaves there: a stated estimate, reported and not taken off the film.
 *
 * <p>Beltaos and Rajaratnam (1974), round jet square to a wall at distance H: largest shear {@code τm = 0.16 ρ U0² (d/H)²} =
 * 0.2037 J/H² at r = 0.14 H, falling beyond (from memory; incidence lowers it, taken by its cosine, ASSUMED). Inside that radius τ grows
 * about linearly, τ = G r. A thin film dragged by it carries the flux τ h²/(2 μ) (plane Couette flow), so that for an even film
 * {@code dh/dt = -G h²/μ}, {@code h = h0/(1 + G h0 t/μ)}: whatever the start, no more than {@code μ/(G t)} stays.
 */
public final class WallShear {
    private static final double PEAK = 0.16 * 4 / Math.PI;
    private static final double PEAK_AT = 0.14;

    private WallShear() {}

    /** Largest wall shear, Pa, of a jet of thrust J (N) on a wall at distance H (m). */
    public static double peakPa(double thrustN, double distanceM) {
        return PEAK * thrustN / (distanceM * distanceM);
    }

    /** Distance from the stagnation point at which it acts, m. */
    public static double peakRadiusM(double distanceM) {
        return PEAK_AT * distanceM;
    }

    /** Force of the stagnation pressure on the wall over the thrust: 25 · (4/π)(π/114) = 0.877 (should be about 1). */
    public static double stagnationForceOverThrust() {
        return 25 * (4 / Math.PI) * (Math.PI / 114);
    }

    /**
     * Film left after a time, m.
     *
     * @param startM film before, m
     * @param shearPaPerM G, Pa/m
     */
    public static double leftM(double startM, double shearPaPerM, double timeS, double viscosityPaS) {
        return startM / (1 + shearPaPerM * startM * timeS / viscosityPaS);
    }

    /** Most film that can stay, m; infinite without shear or time. */
    public static double mostM(double shearTimePaSPerM, double viscosityPaS) {
        return shearTimePaSPerM > 0 ? viscosityPaS / shearTimePaSPerM : Double.POSITIVE_INFINITY;
    }
}
