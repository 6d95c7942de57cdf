package baymist.coverage;

/**
 * Film on one protected item.
 *
 * @param limitM film above which it counts as exceeded, m
 * @param areaM2 its surface in the cavity that the voxels resolve, m²
 * @param unresolvedM2 its surface that they don't, without a verdict, m²
 * @param meanM mean film on it, m; 0 under a mask
 * @param maxM largest film on it, m; surfels below a hundredth of the mean size are left out. 0 under a mask
 * @param masked whether a bag or tape covers it
 * @param exceeded whether the largest film is above the limit; never under a mask
 * @param filmKg product on it, or on its mask, kg
 */
public record ItemDose(
        String name,
        double limitM,
        double areaM2,
        double unresolvedM2,
        double meanM,
        double maxM,
        boolean masked,
        boolean exceeded,
        double filmKg) {}
