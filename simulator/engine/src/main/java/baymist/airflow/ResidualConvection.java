package baymist.airflow;

import baymist.geom.Vec3;
import baymist.voxel.Bay;

/**
 * Air motion that never stops: sheet metal is never at one temperature. A wall difference of 1 K (ASSUMED, a closed hangar
 * without sun) drives air at {@code sqrt(g dT/T H)}: 0.07 m/s in a bay 0.15 m high.
 */
public final class ResidualConvection {
    /** Wall temperature difference, K. ASSUMED. */
    public static final double WALL_DIFFERENCE_K = 1;

    /**
     * Eddy diffusivity over convection speed times height. ASSUMED: measured rooms without air change give 0.001 (Cheng et al.
     * 2011 with the same 1 K), a mixing-length bound is 0.07; the core of a small bay is mostly stratified.
     */
    private static final double MIXING_SHARE = 0.01;

    /** Slope of the velocity at the wall in Ostrach's similarity solution, Pr 0.72. */
    private static final double OSTRACH_SLOPE = 0.6760;

    private ResidualConvection() {}

    /** Extent of a bay along gravity, m. */
    public static double heightM(Bay bay, Vec3 gravity) {
        Vec3 size = bay.bounds().max().minus(bay.bounds().min());
        Vec3 g = gravity.unit();
        return Math.abs(g.x()) * size.x() + Math.abs(g.y()) * size.y() + Math.abs(g.z()) * size.z();
    }

    /** Speed scale {@code sqrt(g dT/T H)}, m/s. */
    public static double speedMPerS(double gravityMPerS2, double temperatureK, double heightM) {
        return Math.sqrt(gravityMPerS2 * WALL_DIFFERENCE_K / temperatureK * heightM);
    }

    /** Eddy diffusivity of the residual convection, m²/s. */
    public static double diffusivityM2PerS(double gravityMPerS2, double temperatureK, double heightM) {
        return MIXING_SHARE * speedMPerS(gravityMPerS2, temperatureK, heightM) * heightM;
    }

    /**
     * Eddy diffusivity in a room by its air change, m²/s: {@code K = L² (0.52 a + 0.31)} in m²/h, L the cube root of the
     * volume, a air changes per hour (Cheng et al. 2011, Environ. Sci. Technol. 45, 4016; fitted to 0.2 to 5 per hour in
     * rooms, 0.001 to 0.013 m²/s). In a bay it is an extrapolation, used as a lower bound with the trigger off.
     */
    public static double roomDiffusivityM2PerS(double volumeM3, double airChangesPerHour) {
        double length = Math.cbrt(volumeM3);
        return length * length * (0.52 * airChangesPerHour + 0.31) / 3600;
    }

    /**
     * Friction speed of the laminar boundary layer on an upright wall of height H, m/s:
     * {@code u*² = 4 nu²/H² (Gr/4)^(3/4) f''(0)}, f''(0) = 0.676 in air (Ostrach 1953, NACA Report 1111; Gr below 1e9).
     */
    public static double frictionSpeedMPerS(
            double gravityMPerS2, double temperatureK, double heightM, double kinematicViscosityM2PerS) {
        double nu = kinematicViscosityM2PerS;
        double grashof = gravityMPerS2 * WALL_DIFFERENCE_K / temperatureK * heightM * heightM * heightM / (nu * nu);
        return 2 * nu / heightM * Math.sqrt(Math.pow(grashof / 4, 0.75) * OSTRACH_SLOPE);
    }
}
