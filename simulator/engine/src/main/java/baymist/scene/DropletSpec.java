package baymist.scene;

/** Volume distribution of the droplets that leave the tip. Diameters m. */
public sealed interface DropletSpec {
    /** Rosin-Rammler with volume median and spread exponent q (ASTM E799 terms). */
    record RosinRammler(double dv50M, double spread) implements DropletSpec {}

    /** Log-normal with volume median and geometric standard deviation (above 1). */
    record LogNormal(double dv50M, double geometricDeviation) implements DropletSpec {}

    /** Explicit sizes with mass shares that sum to 1: arrays of equal length. */
    record Classes(double[] diameterM, double[] share) implements DropletSpec {
        public Classes {
            diameterM = diameterM.clone();
            share = share.clone();
        }
    }

    /** A plain tracer: follows the air, neither settles nor deposits. */
    record Tracer() implements DropletSpec {}
}
