package baymist.film;

/**
 * Whether a thin film is closed or a pattern of dots: docs/theory/film.md, equations (2) and (3). Drops of each size leave spots at random places;
 * what a surfel holds beyond what fog left there came from jets (or ran down), as drops of the spray's volume median.
 */
public final class DotPattern {
    private final double[] spotsPerMetre;
    private final double directSpotsPerMetre;

    /**
     * Spots that have spread as far as they do.
     *
     * @param diameterM droplet diameter of each fog bin, m, [bins]; 0 = tracer, which leaves no spots
     * @param directDiameterM droplet diameter of what jets throw at the sheet, m; 0 = tracer
     */
    public DotPattern(double[] diameterM, double directDiameterM) {
        this(diameterM, directDiameterM, Double.POSITIVE_INFINITY);
    }

    /**
     * Spots a while after the drops fell.
     *
     * @param spreadM surface tension times time over viscosity, m: how far a spot would have run by then
     */
    public DotPattern(double[] diameterM, double directDiameterM, double spreadM) {
        spotsPerMetre = new double[diameterM.length];
        for (int b = 0; b < diameterM.length; b++) {
            spotsPerMetre[b] = perMetre(diameterM[b], spreadM);
        }
        directSpotsPerMetre = perMetre(directDiameterM, spreadM);
    }

    /** Area of spots over volume of drops, 1/m. */
    private static double perMetre(double diameterM, double spreadM) {
        double volume = Math.PI / 6 * diameterM * diameterM * diameterM;
        double rest = 0.5 * diameterM * FilmFormulas.splatRatio(FilmFormulas.OIL_CONTACT_ANGLE_RAD);
        double radius = Math.min(rest, spreadingRadiusM(volume, spreadM));
        return diameterM > 0 ? Math.PI * radius * radius / volume : 0;
    }

    /**
     * Radius of a drop that still spreads over the sheet, m: {@code V^0.3 (σ t/μ)^0.1} (Tanner 1979, J. Phys. D 12, 1473, from memory), at
     * least the drop's own. It ends at the cap of the contact angle.
     */
    public static double spreadingRadiusM(double volumeM3, double spreadM) {
        double own = Math.cbrt(volumeM3 / (4.0 / 3 * Math.PI));
        return Math.max(own, Math.pow(volumeM3, 0.3) * Math.pow(spreadM, 0.1));
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
