package baymist.spray;

/**
 * Droplet size bins: representative diameter (m) and mass share of each, ascending, shares sum to 1 exactly enough that
 * the largest bin carries the rounding.
 *
 * @param diameterM [bins]; 0 marks a plain tracer
 * @param share [bins]
 */
public record SizeBins(double[] diameterM, double[] share) {
    public int count() {
        return diameterM.length;
    }
}
