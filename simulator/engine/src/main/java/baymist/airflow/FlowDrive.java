package baymist.airflow;

/**
 * What acts on the resolved air while it is advanced; all arrays are read only.
 *
 * @param outflowM3PerS wanted sum of outgoing face fluxes of each cell (supply less compression less vents), [cells]
 * @param ventFluxM3PerS flux outwards through each vent, [vents]
 * @param pushM4PerS2 force on each face's air over density, along its axis, [faces]
 * @param mixedM3PerS flow of the jets' own air that takes the place of each face's air and brings the momentum of {@code push}, [faces];
 *     a face that is as fast as the jet gains nothing
 * @param turbulenceM5PerS3 turbulent power handed to each cell over density, [cells]
 */
record FlowDrive(
        double[] outflowM3PerS,
        double[] ventFluxM3PerS,
        double[] pushM4PerS2,
        double[] mixedM3PerS,
        double[] turbulenceM5PerS3) {
    /** Without air of jets. */
    FlowDrive(double[] outflow, double[] ventFlux, double[] push, double[] turbulence) {
        this(outflow, ventFlux, push, new double[push.length], turbulence);
    }

    static FlowDrive none(FlowGrid grid) {
        return new FlowDrive(
                new double[grid.cells], new double[grid.vents], new double[grid.faces], new double[grid.cells]);
    }

    boolean idle() {
        return zero(outflowM3PerS) && zero(ventFluxM3PerS) && zero(pushM4PerS2) && zero(turbulenceM5PerS3);
    }

    private static boolean zero(double[] values) {
        for (double v : values) {
            if (v != 0) {
                return false;
            }
        }
        return true;
    }
}
