package baymist.scene;

/** How air and liquid are driven to the tip. */
public sealed interface SupplySpec {
    DropletSpec droplets();

    /** Liquid sprayed by the whole tip, kg/s. */
    double liquidKgPerS();

    /**
     * Air from a regulated supply.
     *
     * @param gaugePa pressure above ambient at the tip, Pa
     * @param dischargeCoefficient of the air orifices, 0..1
     */
    record Pressure(double gaugePa, double dischargeCoefficient, double liquidKgPerS, DropletSpec droplets)
            implements SupplySpec {}

    /** Each jet stated by its exit speed through its own orifice, air at ambient density (for outside cases). */
    record ExitSpeed(double speedMPerS, double liquidKgPerS, DropletSpec droplets) implements SupplySpec {}
}
