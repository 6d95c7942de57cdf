package baymist.airflow;

import baymist.geom.Vec3;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * Friction speed at a smooth wall from the tangential speed of the air near it.
 *
 * <p>Spalding (1961), "A single formula for the law of the wall", J. Appl. Mech. 28, 455 (White, Viscous Fluid Flow, eq.
 * 6-41): one curve from the wall through the buffer layer to the log law, valid to y+ of some 300 and, in ducts, usable to
 * the centre line. Constants are Spalding's own, kappa = 0.40 and B = 5.5, which fit the buffer layer best with his curve
 * (exp(-kappa B) = 0.1108 in his paper); the log laws of White (0.41, 5.0) and Pope 2000 (0.41, 5.2) lie within 5 %.
 */
public final class WallLaw {
    /** Von Karman's constant. */
    public static final double KAPPA = 0.40;

    /** Log-law intercept of a smooth wall. */
    public static final double INTERCEPT = 5.5;

    private WallLaw() {}

    /** Distance from the wall in wall units for a speed in wall units (Spalding). */
    public static double yPlus(double uPlus) {
        double k = KAPPA * uPlus;
        // exp(k) - 1 - k - k²/2 - k³/6 as a series where the difference cancels.
        double tail;
        if (k < 0.5) {
            double term = k * k * k * k / 24;
            tail = term * (1 + k / 5 * (1 + k / 6 * (1 + k / 7 * (1 + k / 8 * (1 + k / 9)))));
        } else {
            tail = Math.exp(k) - 1 - k - k * k / 2 - k * k * k / 6;
        }
        return uPlus + Math.exp(-KAPPA * INTERCEPT) * tail;
    }

    /**
     * Friction speed u*, m/s, for a tangential speed at a distance from the wall.
     *
     * @param speedMPerS at least 0
     * @param distanceM above 0
     */
    public static double frictionSpeedMPerS(double speedMPerS, double distanceM, double kinematicViscosityM2PerS) {
        double reynolds = speedMPerS * distanceM / kinematicViscosityM2PerS;
        if (!(reynolds > 0)) {
            return 0;
        }
        // u+ y+(u+) = Re; y+ >= u+ bounds u+ by sqrt(Re), and exp(kappa u+) by Re keeps the bracket finite.
        double low = 0;
        double high = Math.min(Math.sqrt(reynolds), Math.log1p(reynolds) / KAPPA + INTERCEPT + 3);
        double u = high;
        for (int n = 0; n < 100; n++) {
            double y = yPlus(u);
            double miss = Math.log(u * y / reynolds);
            if (miss > 0) {
                high = u;
            } else {
                low = u;
            }
            double slope = 1 / u + yPlusSlope(u) / y;
            double next = u - miss / slope;
            next = next > low && next < high ? next : 0.5 * (low + high);
            if (Math.abs(next - u) <= 1e-14 * u) {
                break;
            }
            u = next;
        }
        return speedMPerS / u;
    }

    private static double yPlusSlope(double uPlus) {
        double k = KAPPA * uPlus;
        double tail = k < 0.5
                ? k * k * k / 6 * (1 + k / 4 * (1 + k / 5 * (1 + k / 6 * (1 + k / 7))))
                : Math.exp(k) - 1 - k - k * k / 2;
        return 1 + KAPPA * Math.exp(-KAPPA * INTERCEPT) * tail;
    }

    /**
     * Friction speed at every surfel from the projected field, which slips along walls: tangential part of the cell's mean
     * velocity, at the distance of the cell's centre.
     *
     * @param fluxM3PerS [faces]
     * @return [surfels] m/s
     */
    public static double[] frictionSpeeds(VoxelGrid grid, double[] fluxM3PerS, double kinematicViscosityM2PerS) {
        return new WallSampler(grid, 1, kinematicViscosityM2PerS).frictionSpeeds(fluxM3PerS);
    }

    /**
     * Mean velocity of each cell, m/s, [3 * cells]: flux through its two sides over their open area, or over a whole side
     * where less is open. A side with a wall carries nothing and does not slow the tangential part.
     */
    static double[] cellVelocities(VoxelGrid grid, double[] fluxM3PerS) {
        double[] velocity = new double[3 * grid.cellCount()];
        sumCellFluxes(grid, fluxM3PerS, velocity);
        double[] area = velocityAreasM2(grid);
        for (int i = 0; i < velocity.length; i++) {
            velocity[i] /= area[i];
        }
        return velocity;
    }

    /** Fills in the sum of the fluxes through the two sides of each cell along each axis, m³/s, [3 * cells]. */
    static void sumCellFluxes(VoxelGrid grid, double[] fluxM3PerS, double[] sum) {
        Arrays.fill(sum, 0);
        int[] low = grid.faces().low();
        int[] high = grid.faces().high();
        byte[] axis = grid.faces().axis();
        for (int f = 0; f < low.length; f++) {
            sum[3 * low[f] + axis[f]] += fluxM3PerS[f];
            sum[3 * high[f] + axis[f]] += fluxM3PerS[f];
        }
    }

    /** Area that those sums belong to: what is open on both sides, or a whole side where less is, m², [3 * cells]. */
    static double[] velocityAreasM2(VoxelGrid grid) {
        FaceSet faces = grid.faces();
        double[] area = new double[3 * grid.cellCount()];
        for (int f = 0; f < faces.count(); f++) {
            int a = faces.axis()[f];
            area[3 * faces.low()[f] + a] += faces.areaM2()[f];
            area[3 * faces.high()[f] + a] += faces.areaM2()[f];
        }
        Vec3 h = grid.sizeM();
        double[] whole = {h.y() * h.z(), h.x() * h.z(), h.x() * h.y()};
        for (int i = 0; i < area.length; i++) {
            area[i] = Math.max(area[i], whole[i % 3]);
        }
        return area;
    }

    /** Friction force on all surfels, sum of rho u*² A, N. A value above the jets' thrust says that u* is too large. */
    public static double frictionForceN(VoxelGrid grid, AirField field, double densityKgPerM3) {
        double sum = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            double u = field.frictionSpeedMPerS()[s];
            sum += densityKgPerM3 * u * u * grid.surfels().areaM2()[s];
        }
        return sum;
    }
}
