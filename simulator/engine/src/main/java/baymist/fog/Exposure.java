package baymist.fog;

/**
 * What somebody near the openings breathes: the near field of the two-zone model (Hemeon 1963; Nicas 1996, Am. Ind. Hyg. Assoc. J. 57, 542-550, from
 * memory). Mist that leaves at a rate G is mixed through a half-sphere about the openings that room air passes at
 *
 * <pre> beta = ½ FSA s,   FSA = 2 pi r²,   c = G/beta </pre>
 *
 * over what the room holds already, which is taken as nothing.
 */
public final class Exposure {
    /** Radius of the near field, m: arm's reach (ASSUMED, as usual for the model). */
    public static final double NEAR_FIELD_M = 1;

    /** Speed of room air, m/s: ASSUMED, a closed hangar without draught has 0.05 to 0.3. */
    public static final double ROOM_SPEED_M_PER_S = 0.1;

    /** Permissible exposure limit of mineral oil mist, 8 h average, kg/m³: 5 mg/m³ (29 CFR 1910.1000, table Z-1). */
    public static final double LIMIT_KG_PER_M3 = 5e-6;

    /** Working day that the limit is an average over, s. */
    public static final double SHIFT_S = 8 * 3600;

    /** Lower flammable limit of oil mist, kg/m³: about 50 g/m³ (class-society figure for lubricating-oil mist, IACS 50 mg/L). */
    public static final double FLAMMABLE_KG_PER_M3 = 50e-3;

    /** A tenth of it, kg/m³, from which 29 CFR 1910.146 calls an atmosphere hazardous. */
    public static final double TENTH_OF_FLAMMABLE_KG_PER_M3 = 5e-3;

    private Exposure() {}

    /** Air that passes through the near field, m³/s. */
    public static double nearFieldM3PerS() {
        return 0.5 * 2 * Math.PI * NEAR_FIELD_M * NEAR_FIELD_M * ROOM_SPEED_M_PER_S;
    }

    /** Mist in the near field while it leaves at a rate, kg/m³. */
    public static double nearFieldKgPerM3(double rateKgPerS) {
        return rateKgPerS / nearFieldM3PerS();
    }

    /** Share of a day's limit that is taken in by standing there while this much leaves, at any pace. */
    public static double shareOfDay(double escapedKg) {
        return escapedKg / nearFieldM3PerS() / (LIMIT_KG_PER_M3 * SHIFT_S);
    }

    /** Room air that holds the mist at the limit, m³. */
    public static double roomM3(double escapedKg) {
        return escapedKg / LIMIT_KG_PER_M3;
    }
}
