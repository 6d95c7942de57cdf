package baymist.film;

/**
 * Closed forms of thin liquid films: docs/theory/film.md. SI throughout; nu is the liquid's kinematic viscosity, m²/s. All of
 * them need a film Reynolds number below about 7 (a 25 µm oil film has 1e-4) and thickness far below the capillary length.
 */
public final class FilmFormulas {
    /** One thousandth of an inch, m, exact (inch of 25.4 mm, 1959). */
    public static final double MIL_M = 25.4e-6;

    private FilmFormulas() {}

    /**
     * Thickness of a film draining down an upright plate, m: sqrt(nu z/(g t)), Jeffreys (1930), Proc. Camb. Phil. Soc. 26, 204,
     * but never more than at the start.
     *
     * @param startM thickness at t = 0, m; infinite = flooded plate
     * @param belowEdgeM distance below the upper edge, m
     */
    public static double jeffreysM(double startM, double belowEdgeM, double timeS, double nu, double gravity) {
        return timeS == 0 ? startM : Math.min(startM, Math.sqrt(nu * belowEdgeM / (gravity * timeS)));
    }

    /** Time from which the film at a distance below the upper edge thins, s: nu z/(g h0²), from equating the two above. */
    public static double jeffreysOnsetS(double startM, double belowEdgeM, double nu, double gravity) {
        return nu * belowEdgeM / (gravity * startM * startM);
    }

    /** Mean thickness from the edge down to z, m, of {@link #jeffreysM}: two thirds of the local one once z has started to thin. */
    public static double jeffreysMeanM(double startM, double belowEdgeM, double timeS, double nu, double gravity) {
        if (timeS == 0) {
            return startM;
        }
        double front = Math.min(belowEdgeM, startM * startM * gravity * timeS / nu);
        double thinned = 2.0 / 3 * front * jeffreysM(startM, front, timeS, nu, gravity);
        return (thinned + (belowEdgeM - front) * (front < belowEdgeM ? startM : 0)) / belowEdgeM;
    }

    /** Volume flux of a film per width, m²/s: g h³/(3 nu), Nusselt (1916); gravity is the component along the sheet. */
    public static double nusseltFluxM2PerS(double thicknessM, double nu, double gravityAlong) {
        return gravityAlong * thicknessM * thicknessM * thicknessM / (3 * nu);
    }

    /** Mean speed of that film, m/s: g h²/(3 nu). */
    public static double nusseltMeanSpeedMPerS(double thicknessM, double nu, double gravityAlong) {
        return gravityAlong * thicknessM * thicknessM / (3 * nu);
    }

    /** Speed of its surface, m/s: 1.5 times the mean. */
    public static double nusseltSurfaceSpeedMPerS(double thicknessM, double nu, double gravityAlong) {
        return 1.5 * nusseltMeanSpeedMPerS(thicknessM, nu, gravityAlong);
    }

    /** Surface speed of a film dragged by air, m/s: tau h/mu (plane Couette flow). */
    public static double shearSurfaceSpeedMPerS(double thicknessM, double shearPa, double viscosityPaS) {
        return shearPa * thicknessM / viscosityPaS;
    }

    /** Thickness that a yield stress holds on a slope, m: tau_y/(rho g_along); infinite on the level. */
    public static double yieldFilmM(double yieldStressPa, double densityKgPerM3, double gravityAlong) {
        return yieldStressPa / (densityKgPerM3 * gravityAlong);
    }

    /** Capillary length, m: sqrt(sigma/(rho g)). */
    public static double capillaryLengthM(double surfaceTension, double densityKgPerM3, double gravity) {
        return Math.sqrt(surfaceTension / (densityKgPerM3 * gravity));
    }

    /** Spacing of the fastest growing drops below a ceiling, m: 2 pi sqrt(2) capillary lengths (Rayleigh-Taylor, thin film). */
    public static double fastestWaveM(double surfaceTension, double densityKgPerM3, double gravity) {
        return 2 * Math.PI * Math.sqrt(2) * capillaryLengthM(surfaceTension, densityKgPerM3, gravity);
    }

    /**
     * Rate at which the fastest drops grow, 1/s: h³ rho² g²/(12 mu sigma), lubrication limit of Rayleigh-Taylor (Fermigier et
     * al. 1992, J. Fluid Mech. 236, 349, from memory). Beyond a critical tilt none form (Brun et al. 2015).
     */
    public static double hangingGrowthPerS(
            double thicknessM, double viscosityPaS, double surfaceTension, double densityKgPerM3, double gravity) {
        double weight = densityKgPerM3 * gravity;
        return thicknessM * thicknessM * thicknessM * weight * weight / (12 * viscosityPaS * surfaceTension);
    }

    /** Depth of capillary creep into a flat gap, m: sqrt(sigma w cos(theta) t/(3 mu)), slot form of Washburn (1921). */
    public static double slotCreepM(
            double gapM, double contactAngleRad, double timeS, double surfaceTension, double viscosityPaS) {
        return Math.sqrt(surfaceTension * gapM * Math.cos(contactAngleRad) * timeS / (3 * viscosityPaS));
    }

    /** Height that a gap lifts a liquid to, m: 2 sigma cos(theta)/(rho g w) (Jurin, flat gap). */
    public static double slotRiseM(
            double gapM, double contactAngleRad, double surfaceTension, double densityKgPerM3, double gravity) {
        return 2 * surfaceTension * Math.cos(contactAngleRad) / (densityKgPerM3 * gravity * gapM);
    }

    /** Radius of a drop that spreads under its weight, m: 0.894 (g V³/(3 nu))^(1/8) t^(1/8), Huppert (1982), J. Fluid Mech. 121, 43. */
    public static double spreadRadiusM(double volumeM3, double timeS, double nu, double gravity) {
        return 0.894 * Math.pow(gravity * volumeM3 * volumeM3 * volumeM3 / (3 * nu) * timeS, 1.0 / 8);
    }

    /** Liquid in a film, kg: rho A h. */
    public static double productKg(double densityKgPerM3, double areaM2, double thicknessM) {
        return densityKgPerM3 * areaM2 * thicknessM;
    }

    /** Finest step that a notched gauge resolves at a thickness, m (ASTM D4414); a claim finer than this can't be checked. */
    public static double notchGaugeStepM(double thicknessM) {
        if (thicknessM <= 150e-6) {
            return 13e-6;
        }
        return thicknessM <= 250e-6 ? 25e-6 : 50e-6;
    }

    /**
     * Diameter of the spot that a drop leaves over the drop's own diameter: a spherical cap of the same volume with the
     * contact angle (solid geometry).
     *
     * @param contactAngleRad above 0, below pi
     */
    public static double splatRatio(double contactAngleRad) {
        double c = Math.cos(contactAngleRad);
        double s = Math.sin(contactAngleRad);
        // Cap volume = pi r³ (2 - 3 c + c³)/(3 s³), drop volume = pi d³/6, ratio = 2 r/d.
        return 2 * s * Math.cbrt(0.5 / (2 - 3 * c + c * c * c));
    }

    /**
     * Share of a sheet wetted by drops that fall at random: 1 - exp(-n a), a spot's area times the number on a unit of area
     * (Poisson coverage, Kolmogorov 1937). Spots do not merge and level unless they touch.
     *
     * @param buildM volume on a unit of area, m
     * @param dropletM drop diameter, m
     */
    public static double wettedShare(double buildM, double dropletM, double contactAngleRad) {
        double ratio = splatRatio(contactAngleRad);
        return -Math.expm1(-1.5 * ratio * ratio * buildM / dropletM);
    }

    /** ASSUMED: share of wetted sheet from which spots are taken for a film. */
    public static final double FULL_COVER = 0.99;

    /** ASSUMED contact angle of oil on primed or bare sheet: oils wet it well; 20° is on the cautious side. */
    public static final double OIL_CONTACT_ANGLE_RAD = Math.toRadians(20);

    /** Build below which the sheet carries a pattern of dots, haze, and not a film, m: where {@link #wettedShare} is 0.99. */
    public static double fullCoverBuildM(double dropletM, double contactAngleRad) {
        double ratio = splatRatio(contactAngleRad);
        return -Math.log(1 - FULL_COVER) * dropletM / (1.5 * ratio * ratio);
    }

    /** Whether a build of drops of that size is a pattern of dots, at {@link #OIL_CONTACT_ANGLE_RAD}. */
    public static boolean isHaze(double buildM, double dropletM) {
        return buildM < fullCoverBuildM(dropletM, OIL_CONTACT_ANGLE_RAD);
    }
}
