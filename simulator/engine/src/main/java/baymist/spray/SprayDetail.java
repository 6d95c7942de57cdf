package baymist.spray;

/**
 * What a cast tells besides its rates: the parts that say how sure the direct film is. Arrays follow {@link SprayHits#hitSurfel}.
 *
 * @param halfKgPerS what one half of the rays landed, kg/s, [hits]; the two halves interleave, so twice this and twice the rest are two
 *     estimates of the same film with half the rays each
 * @param byBinKgPerS what landed by droplet size, kg/s, [hits * bins], bin innermost
 * @param splashKgPerS liquid that strikes above the splash limit, kg/s; it is counted as staying
 * @param shearSurfel surfel that the centre of each jet strikes, [jets that strike]
 * @param shearPaPerM how fast the wall shear grows with the distance from there, Pa/m, [jets that strike]
 * @param shearRadiusM distance at which it is largest, m, [jets that strike]
 */
public record SprayDetail(
        double[] halfKgPerS,
        double[] byBinKgPerS,
        double splashKgPerS,
        int[] shearSurfel,
        double[] shearPaPerM,
        double[] shearRadiusM) {}
