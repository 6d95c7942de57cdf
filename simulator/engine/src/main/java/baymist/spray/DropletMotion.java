package baymist.spray;

import baymist.units.Air;

/**
 * Straight flight of one sphere through still air under drag and gravity along its path, by the classical fourth-order
 * Runge-Kutta method with a step that follows the sphere's own relaxation. Used to check the drag laws against exact
 * solutions and to say how far a drop carries itself once the jet has left it.
 */
public final class DropletMotion {
    private DropletMotion() {}

    /** Speed (m/s) and distance (m) along the path. */
    public record State(double speedMPerS, double distanceM) {}

    /**
     * State after a time.
     *
     * @param diameterM m
     * @param densityKgPerM3 of the sphere
     * @param slip slip correction that divides the drag, 1 for none
     * @param gravityMPerS2 component along the direction of flight; buoyancy is neglected
     * @param startMPerS starting speed, m/s
     */
    public static State fly(
            double diameterM,
            double densityKgPerM3,
            Air air,
            DragLaw law,
            double slip,
            double gravityMPerS2,
            double startMPerS,
            double timeS) {
        double v = startMPerS;
        double x = 0;
        double t = 0;
        while (t < timeS) {
            double rate =
                    Math.abs(deceleration(v, diameterM, densityKgPerM3, air, law, slip)) / Math.max(Math.abs(v), 1e-9);
            double h = Math.min(timeS - t, Math.min(timeS / 200, 0.05 / Math.max(rate, 1e-12)));
            double k1 = gravityMPerS2 - deceleration(v, diameterM, densityKgPerM3, air, law, slip);
            double v2 = v + 0.5 * h * k1;
            double k2 = gravityMPerS2 - deceleration(v2, diameterM, densityKgPerM3, air, law, slip);
            double v3 = v + 0.5 * h * k2;
            double k3 = gravityMPerS2 - deceleration(v3, diameterM, densityKgPerM3, air, law, slip);
            double v4 = v + h * k3;
            double k4 = gravityMPerS2 - deceleration(v4, diameterM, densityKgPerM3, air, law, slip);
            x += h / 6 * (v + 2 * v2 + 2 * v3 + v4);
            v += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
            t += h;
        }
        return new State(v, x);
    }

    /** Distance to rest in still air without gravity, m: flight of 40 relaxation times, by which 1e-17 of the speed is left. */
    public static double stoppingDistanceM(
            double diameterM, double densityKgPerM3, Air air, DragLaw law, double startMPerS) {
        double slip = Droplet.slip(diameterM, air);
        double time = 40 * Droplet.relaxationTimeS(diameterM, densityKgPerM3, air);
        return fly(diameterM, densityKgPerM3, air, law, slip, 0, startMPerS, time)
                .distanceM();
    }

    /** Drag per mass along the motion, m/s²: {@code 3 ρ CD v|v| / (4 ρp d Cc)}. */
    private static double deceleration(double v, double d, double densityKgPerM3, Air air, DragLaw law, double slip) {
        double re = Droplet.reynolds(d, v, air);
        if (re < 1e-12) {
            return 18 * air.viscosityPaS() * v / (densityKgPerM3 * d * d * slip);
        }
        return 0.75 * air.densityKgPerM3() * law.coefficient(re) * v * Math.abs(v) / (densityKgPerM3 * d * slip);
    }
}
