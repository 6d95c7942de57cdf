package baymist.fog;

import baymist.scene.WallFinish;

/**
 * Deposition that was measured on the walls of a square air duct, 15 cm wide: Sippola and Nazaroff (2004), Aerosol Sci. Technol. 38, 914-925. Power laws
 * fitted here to their tables (32 values a wall on steel, 30 on lining; scatter as a factor, root mean square and largest):
 *
 * <pre>
 * steel   upright v+ = 1.38e-3 tau+^0.98 (2.2, 4.4)   ceiling v+ = 1.45e-4 tau+^0.77 (2.3, 6.4)
 * lining  upright v+ = 1.50e-2 tau+^0.73 (1.4, 1.9)   ceiling v+ = 1.34e-2 tau+^0.69 (1.5, 2.3)
 * </pre>
 *
 * <p>Droplets of 1 to 16 µm, u* 0.12 to 0.64 m/s, tau+ 0.003 to 20. Gentler air is an extrapolation. Between upright and ceiling the logarithm is
 * interpolated (ASSUMED); sheet that faces up takes the upright rate beside what settles, as the floors of the ducts did to within a factor of 2.
 */
final class MeasuredWalls {
    /** ASSUMED: no wall takes more than Wood's largest rate. */
    private static final double LARGEST_PLUS = 0.13;

    private MeasuredWalls() {}

    /**
     * Deposition speed besides settling, over u*.
     *
     * @param plusRelaxation tau+, 0 or more
     * @param normalUp component of the wall's normal against gravity, -1..1
     */
    static double plusSpeed(WallFinish finish, double plusRelaxation, double normalUp) {
        if (finish == WallFinish.SMOOTH || !(plusRelaxation > 0)) {
            return 0;
        }
        boolean steel = finish == WallFinish.BARE_STEEL;
        double upright = steel ? law(1.38e-3, 0.98, plusRelaxation) : law(1.50e-2, 0.73, plusRelaxation);
        double ceiling = steel ? law(1.45e-4, 0.77, plusRelaxation) : law(1.34e-2, 0.69, plusRelaxation);
        double share = Math.max(0, -normalUp);
        double between = Math.exp((1 - share) * Math.log(upright) + share * Math.log(Math.min(ceiling, upright)));
        return Math.min(between, LARGEST_PLUS);
    }

    private static double law(double coefficient, double power, double plusRelaxation) {
        return coefficient * Math.pow(plusRelaxation, power);
    }
}
