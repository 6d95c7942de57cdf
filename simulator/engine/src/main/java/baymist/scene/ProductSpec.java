package baymist.scene;

/**
 * The product at its temperature of use.
 *
 * @param densityKgPerM3 kg/m³
 * @param viscosityPaS dynamic viscosity at {@code temperatureK}, Pa·s
 * @param surfaceTensionNPerM N/m
 * @param nonVolatile mass fraction that stays, 0..1
 * @param temperatureK K
 */
public record ProductSpec(
        String name,
        double densityKgPerM3,
        double viscosityPaS,
        double surfaceTensionNPerM,
        double nonVolatile,
        double temperatureK) {}
