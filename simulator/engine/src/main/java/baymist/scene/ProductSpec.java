package baymist.scene;

/**
 * The product at its temperature of use.
 *
 * @param densityKgPerM3 kg/m³
 * @param viscosityPaS dynamic viscosity at {@code temperatureK}, Pa·s
 * @param surfaceTensionNPerM N/m
 * @param nonVolatile mass fraction that stays, 0..1
 * @param temperatureK K
 * @param residualFilmM film that never runs, m, 0 or more
 * @param yieldStressPa stress below which the film does not run, Pa; 0 = it always does
 * @param creepM how far the edge of a wet film gets in {@code creepS} on dry sheet, m; 0 = it stays
 * @param creepS time of {@code creepM}, s, above 0
 * @param settingS time after which the film does not run or creep any more, s; infinite for an oil that stays wet
 */
public record ProductSpec(
        String name,
        double densityKgPerM3,
        double viscosityPaS,
        double surfaceTensionNPerM,
        double nonVolatile,
        double temperatureK,
        double residualFilmM,
        double yieldStressPa,
        double creepM,
        double creepS,
        double settingS) {
    /** ASSUMED: protective oils are thixotropic and wet rough sheet; a Newtonian film would thin for ever. */
    public static final double RESIDUAL_FILM_M = 5e-6;

    public ProductSpec {
        if (!(residualFilmM >= 0 && yieldStressPa >= 0 && creepM >= 0 && creepS > 0 && settingS > 0)) {
            throw new IllegalArgumentException("residual film " + residualFilmM + " m, yield stress " + yieldStressPa
                    + " Pa, creep " + creepM + " m in " + creepS + " s, setting time " + settingS + " s");
        }
    }

    /** A Newtonian oil with the usual residual film that neither creeps nor sets. */
    public ProductSpec(
            String name,
            double densityKgPerM3,
            double viscosityPaS,
            double surfaceTensionNPerM,
            double nonVolatile,
            double temperatureK) {
        this(
                name,
                densityKgPerM3,
                viscosityPaS,
                surfaceTensionNPerM,
                nonVolatile,
                temperatureK,
                RESIDUAL_FILM_M,
                0,
                0,
                1,
                Double.POSITIVE_INFINITY);
    }
}
