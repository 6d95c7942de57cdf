package baymist.film;

/**
 * Whether a thin film is closed or a pattern of dots: docs/theory/film.md, equations (2) and (3). Drops of each size leave spots at random places;
 * what a surfel holds beyond what fog left there came from jets (or ran down), as drops of the spray's volume median.
 */
public final class DotPattern {
    private final double[] spotsPerMetre;
    private final double directSpotsPerMetre;

    /**
     * @param diameterM droplet diameter of each fog bin, m, [bins]; 0 = tracer, which leaves no spots
     * @param directDiameterM droplet diameter of what jets throw at the sheet, m; 0 = tracer
     */
    public DotPattern(double[] diameterM, double directDiameterM) {
        spotsPerMetre = new double[diameterM.length];
        for (int b = 0; b < diameterM.length; b++) {
            spotsPerMetre[b] = perMetre(diameterM[b]);
        }
        directSpotsPerMetre = perMetre(directDiameterM);
    }

    private static double perMetre(double diameterM) {
        double ratio = FilmFormulas.splatRatio(FilmFormulas.OIL_CONTACT_ANGLE_RAD);
        return diameterM > 0 ? 1.5 * ratio * ratio / diameterM : 0;
    }

    /**
     * Share of a surfel that is wet, 0..1.
     *
     * @param buildM wet build, m
     * @param fogBuildM build by bin that fog left there, m, [bins]
     */
    public double wettedShare(double buildM, double[] fogBuildM) {
        double spots = 0;
        double fog = 0;
        for (int b = 0; b < fogBuildM.length; b++) {
            spots += spotsPerMetre[b] * fogBuildM[b];
            fog += fogBuildM[b];
        }
        spots += directSpotsPerMetre * Math.max(0, buildM - fog);
        return -Math.expm1(-spots);
    }

    /** Whether that is a closed film. */
    public static boolean closed(double wettedShare) {
        return wettedShare >= FilmFormulas.FULL_COVER;
    }
}
