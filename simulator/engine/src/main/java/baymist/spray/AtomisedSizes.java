package baymist.spray;

import baymist.scene.DropletSpec;
import baymist.scene.DropletSpec.Correlation;
import baymist.scene.ProductSpec;
import baymist.units.Air;

/**
 * Droplet sizes that a correlation gives for a tip. See {@link Atomiser} for formulas and ranges.
 *
 * @param sizes Rosin-Rammler about the Sauter mean
 * @param estimate parts of the Sauter mean and whether the conditions lie in range
 * @param conditions that the correlation was asked for
 */
public record AtomisedSizes(
        DropletSpec.RosinRammler sizes, Atomiser.Estimate estimate, Atomiser.Conditions conditions) {
    /**
     * Sizes at a tip. Air speed is that at the throat, at most sonic, relative to liquid at rest; its density ambient; lip and
     * hydraulic diameter of the prefilming form are those of the air orifice (ASSUMED: a tip's liquid edge is about as wide).
     */
    public static AtomisedSizes of(Correlation law, TipFlow tip, ProductSpec product, Air air) {
        Atomiser.Conditions c = new Atomiser.Conditions(
                product.densityKgPerM3(),
                product.viscosityPaS(),
                product.surfaceTensionNPerM(),
                air.densityKgPerM3(),
                tip.airSpeedMPerS(),
                tip.airLiquidRatio());
        Atomiser.Estimate estimate = switch (law.form()) {
            case NUKIYAMA_TANASAWA -> Atomiser.nukiyamaTanasawa(c);
            case RIZK_LEFEBVRE -> Atomiser.rizkLefebvre(c, tip.orificeM());
            case EL_SHANAWANY_LEFEBVRE -> Atomiser.elShanawanyLefebvre(c, tip.orificeM(), tip.orificeM());
        };
        double scale = estimate.sauterM() * Special.gamma(1 - 1 / law.spread());
        double median = scale * Math.pow(Math.log(2), 1 / law.spread());
        return new AtomisedSizes(new DropletSpec.RosinRammler(median, law.spread()), estimate, c);
    }
}
