package baymist.size;

import baymist.scene.Scene;
import baymist.scene.SupplySpec;
import baymist.scene.WandSpec;
import baymist.spray.TipFlow;

/**
 * What the bores of a wand do to its supply.
 *
 * @param liquidKgPerS liquid at the tip, kg/s: as the scene states it, or from its catch-cup tests through this bore
 * @param liquidM3PerS the same by volume, m³/s
 * @param liquidLossPa pressure that the liquid loses along the bore, Pa
 * @param airLossPa pressure that the air loses along its way, Pa; 0 where the scene states no feed
 * @param supplyPa pressure of the supply above ambient, Pa; infinite where the scene states speeds instead
 */
public record Bore(double liquidKgPerS, double liquidM3PerS, double liquidLossPa, double airLossPa, double supplyPa) {
    /**
     * State of a wand under the scene's supply.
     *
     * @throws IllegalArgumentException if the scene's catch-cup tests can't be with this bore; the message says why
     */
    public static Bore of(Scene scene, WandSpec wand) {
        TipFlow flow = TipFlow.of(scene.supply(), wand, scene.product(), scene.ambient());
        double liquid = flow.supply().liquidKgPerS();
        double gauge = scene.supply() instanceof SupplySpec.Pressure p ? p.gaugePa() : Double.POSITIVE_INFINITY;
        return new Bore(
                liquid, liquid / scene.product().densityKgPerM3(), flow.liquidLossPa(), flow.airLossPa(), gauge);
    }

    /** Whether the liquid gets through: the bore must leave something of the pressure for the metering at the tip. */
    public boolean carries() {
        return liquidLossPa < supplyPa;
    }

    /** Whether the state at the tip depends on the wand at all. */
    static boolean dependsOnWand(SupplySpec supply) {
        return supply instanceof SupplySpec.Pressure p && (p.feed() != null || !p.cups().isEmpty());
    }
}
