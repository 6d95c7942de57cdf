package baymist.scene;

/** Volume distribution of the droplets that leave the tip. Diameters m. */
public sealed interface DropletSpec {
    /**
     * Factor either way within which a median is taken to be known where the scene says nothing. ASSUMED: makers' sheets, catch
     * plates and the scatter of correlations in their range (20 to 30 %, Lefebvre 1989, from memory) lie within it.
     */
    double USUAL_FACTOR = 1.3;

    /** Factor either way within which the median diameter is known, 1 or more: Dv50 lies between Dv50/f and Dv50·f. */
    default double dv50Factor() {
        return USUAL_FACTOR;
    }

    /** Rosin-Rammler with volume median and spread exponent q (ASTM E799 terms). */
    record RosinRammler(double dv50M, double spread) implements DropletSpec {}

    /** Log-normal with volume median and geometric standard deviation (above 1). */
    record LogNormal(double dv50M, double geometricDeviation) implements DropletSpec {}

    /** Three figures of a data sheet: a tenth, half and nine tenths of the volume are in smaller drops; ascending. */
    record Sheet(double dv10M, double dv50M, double dv90M) implements DropletSpec {}

    /** Explicit sizes with mass shares that sum to 1: arrays of equal length. */
    record Classes(double[] diameterM, double[] share) implements DropletSpec {
        public Classes {
            diameterM = diameterM.clone();
            share = share.clone();
        }
    }

    /**
     * Sizes by a published correlation for the tip, its air and its liquid, as Rosin-Rammler about the Sauter mean that it gives.
     *
     * @param spread exponent of Rosin-Rammler, above 1
     * @param outsideRange whether it may be used beyond the range that it was fitted to
     */
    record Correlation(Form form, double spread, boolean outsideRange) implements DropletSpec {
        /** Which correlation. */
        public enum Form {
            NUKIYAMA_TANASAWA,
            RIZK_LEFEBVRE,
            EL_SHANAWANY_LEFEBVRE
        }
    }

    /** A plain tracer: follows the air, neither settles nor deposits. */
    record Tracer() implements DropletSpec {
        @Override
        public double dv50Factor() {
            return 1;
        }
    }

    /**
     * Sizes as stated, moved by the setting of the nozzle.
     *
     * @param sizes as stated, not itself adjusted
     * @param setting factor on every diameter: below 1 = a finer setting
     * @param dv50Factor see {@link #dv50Factor()}
     */
    record Adjusted(DropletSpec sizes, double setting, double dv50Factor) implements DropletSpec {}
}
