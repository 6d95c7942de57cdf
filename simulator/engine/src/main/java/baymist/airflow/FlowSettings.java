package baymist.airflow;

import java.util.function.ToDoubleBiFunction;

/**
 * Settings of the resolved air.
 *
 * @param kinematicViscosityM2PerS of the air
 * @param walls how air slides along walls
 * @param wallSpeed speed of a moving wall along an axis, m/s, by {cell, side} and axis; NaN = a wall without friction; serves verification
 * @param turbulence whether k is carried and makes eddy viscosity
 * @param courant largest share of a face's air that may leave it in a step
 * @param tolerance what a projection may leave of each cell's balance, over the flow through it (root mean square)
 * @param mostIterations of one projection
 * @param largestStepS s
 */
record FlowSettings(
        double kinematicViscosityM2PerS,
        Walls walls,
        ToDoubleBiFunction<int[], Integer> wallSpeed,
        boolean turbulence,
        double courant,
        double tolerance,
        int mostIterations,
        double largestStepS) {
    /** Wall treatment. */
    enum Walls {
        /** No slip: Spalding's law, laminar where resolved. */
        NO_SLIP,
        /** No friction. */
        SLIP
    }

    /** Share of a face's air that leaves it in a step: Heun's scheme with the limiter is stable to some 0.9 in one direction. */
    static final double COURANT = 0.7;

    /** Loose tolerance of a run's steps; windows are projected tightly before fog sees them. */
    static final double LOOSE = 1e-3;

    /** Longest step of a run, s. */
    static final double LARGEST_STEP_S = 0.25;

    private static final int FEW = 4;

    /** Settings of a run. */
    static FlowSettings run(double kinematicViscosityM2PerS) {
        return new FlowSettings(
                kinematicViscosityM2PerS,
                Walls.NO_SLIP,
                (place, axis) -> 0.0,
                true,
                COURANT,
                LOOSE,
                FEW,
                LARGEST_STEP_S);
    }

    /** Laminar flow with exact projections. */
    static FlowSettings laminar(double kinematicViscosityM2PerS) {
        return new FlowSettings(
                kinematicViscosityM2PerS, Walls.NO_SLIP, (place, axis) -> 0.0, false, COURANT, 1e-12, 200, 1e9);
    }

    FlowSettings with(Walls kind) {
        return new FlowSettings(
                kinematicViscosityM2PerS,
                kind,
                wallSpeed,
                turbulence,
                courant,
                tolerance,
                mostIterations,
                largestStepS);
    }

    FlowSettings withWallSpeed(ToDoubleBiFunction<int[], Integer> speed) {
        return new FlowSettings(
                kinematicViscosityM2PerS, walls, speed, turbulence, courant, tolerance, mostIterations, largestStepS);
    }

    FlowSettings withTolerance(double value, int most) {
        return new FlowSettings(
                kinematicViscosityM2PerS, walls, wallSpeed, turbulence, courant, value, most, largestStepS);
    }

    FlowSettings withStep(double courantNumber, double largestS) {
        return new FlowSettings(
                kinematicViscosityM2PerS,
                walls,
                wallSpeed,
                turbulence,
                courantNumber,
                tolerance,
                mostIterations,
                largestS);
    }

    FlowSettings withTurbulence(boolean on) {
        return new FlowSettings(
                kinematicViscosityM2PerS, walls, wallSpeed, on, courant, tolerance, mostIterations, largestStepS);
    }
}
