package baymist.airflow;

/** Balance of momentum over a whole box, worked out from the state alone: none of the solver's own sums. */
final class FlowBalance {
    private FlowBalance() {}

    /**
     * Forces along an axis over density, m⁴/s².
     *
     * @param frictionM4PerS2 of all walls along the axis
     * @param pressureM4PerS2 of the end walls, as the walls feel it
     * @param gainM4PerS2 rate of change of the air's momentum
     * @param missingM4PerS2 thrust less all of them
     */
    record Forces(double frictionM4PerS2, double pressureM4PerS2, double gainM4PerS2, double missingM4PerS2) {}

    /** Advances the solver by one short step to see the gain. */
    static Forces along(FlowSolver solver, FlowDrive drive, int axis) {
        FlowGrid g = solver.grid();
        double[] before = solver.speedMPerS().clone();
        double dt = 1e-6;
        solver.advance(dt, drive, new double[g.faces]);
        double gain = 0;
        double thrust = 0;
        double friction = 0;
        double inertia = 0;
        double nu = 1.5e-5;
        double[] u = solver.speedMPerS();
        double[] eddy = solver.turbulence().eddyViscosityM2PerS();
        for (int f = 0; f < g.faces; f++) {
            if (g.axis[f] != axis) {
                continue;
            }
            gain += g.faceVolumeM3(f) * (u[f] - before[f]) / dt;
            thrust += drive.pushM4PerS2()[f];
            for (int d = 0; d < 6; d++) {
                if (d / 2 != axis) {
                    for (int c : new int[] {g.low[f], g.high[f]}) {
                        if (g.sideCount(c, d) == 0) {
                            double y = 0.5 * g.h[d / 2];
                            double shear = Math.pow(WallLaw.frictionSpeedMPerS(Math.abs(u[f]), y, nu), 2);
                            friction += 0.5 * g.sideM2[d / 2] * shear * Math.signum(u[f]);
                        }
                    }
                }
            }
        }
        // At an end wall the last half cell's own flux of momentum and viscous stress reach the wall with the pressure.
        for (int f = 0; f < g.faces; f++) {
            if (g.axis[f] == axis) {
                boolean lowEnd = g.sideCount(g.low[f], 2 * axis) == 0;
                boolean highEnd = g.sideCount(g.high[f], 2 * axis + 1) == 0;
                double stress = (nu + 0.5 * (eddy[g.low[f]] + eddy[g.high[f]])) / g.h[axis] * u[f] * g.areaM2[f];
                double carried = 0.5 * u[f] * g.areaM2[f] * 0.5 * u[f];
                inertia += highEnd ? carried + stress : 0;
                inertia -= lowEnd ? carried - stress : 0;
            }
        }
        double pressure = inertia;
        for (int c = 0; c < g.cells; c++) {
            double p = solver.pressureM2PerS2()[c] * g.sideM2[axis];
            pressure += g.sideCount(c, 2 * axis + 1) == 0 ? p : 0;
            pressure -= g.sideCount(c, 2 * axis) == 0 ? p : 0;
        }
        return new Forces(friction, pressure, gain, thrust - friction - pressure - gain);
    }
}
