package baymist.airflow;

import baymist.problem.SimulationException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Transient incompressible flow on a {@link FlowGrid}: Heun's scheme for advection, viscosity and forces with the pressure of
 * the step before, then one projection for the increment of the pressure (van Kan 1986, SIAM J. Sci. Stat. Comput. 7, 870). Owns the state; used by
 * one thread, so its bits depend on the input alone.
 */
final class FlowSolver {
    /** Speeds below this, without any drive, count as rest, m/s: a millimetre in ten seconds. */
    private static final double REST_M_PER_S = 1e-4;

    /** Growth of the step from one to the next. */
    private static final double GROWTH = 1.5;

    private static final int STEPS_AT_MOST = 50_000_000;
    private static final int MOST_TIGHT = 100;

    private final FlowGrid grid;
    private final FlowSettings settings;
    private final FlowMomentum momentum;
    private final FlowTurbulence turbulence;
    private final PoissonSolver.Session poisson;
    private final double[] u;
    private final double[] pressure;
    private final double[] first;
    private final double[] second;
    private final double[] trial;
    private final double[] flux;
    private final double[] left;
    private final double[] phi;
    private final double[] noEddies;

    /** One over the distance that each face's pressure falls over, 1/m, and over its control volume, 1/m³, [faces]. */
    private final double[] perDistance;

    private final double[] perVolume;
    private double timeS;
    private double stepS;
    private double leftOver;
    private boolean resting = true;
    private long steps;

    FlowSolver(FlowGrid grid, FlowSettings settings) {
        this.grid = grid;
        this.settings = settings;
        momentum = new FlowMomentum(grid, FlowLinks.of(grid), settings);
        turbulence = new FlowTurbulence(grid, settings.kinematicViscosityM2PerS());
        poisson = PoissonSolver.of(grid.graph(), grid.groups()).new Session();
        u = new double[grid.faces];
        first = new double[grid.faces];
        second = new double[grid.faces];
        trial = new double[grid.faces];
        flux = new double[grid.faces];
        pressure = new double[grid.cells];
        left = new double[grid.cells];
        phi = new double[grid.cells];
        noEddies = new double[grid.cells];
        perDistance = new double[grid.faces];
        perVolume = new double[grid.faces];
        for (int f = 0; f < grid.faces; f++) {
            perDistance[f] = 1 / grid.h[grid.axis[f]];
            perVolume[f] = 1 / grid.faceVolumeM3(f);
        }
    }

    FlowGrid grid() {
        return grid;
    }

    /** Speed through each face along its axis, m/s, [faces]; the state itself. */
    double[] speedMPerS() {
        return u;
    }

    /** Pressure over density, m²/s², [cells]; the state itself. */
    double[] pressureM2PerS2() {
        return pressure;
    }

    FlowTurbulence turbulence() {
        return turbulence;
    }

    double timeS() {
        return timeS;
    }

    /** Steps done so far. */
    long steps() {
        return steps;
    }

    /** Iterations of all pressure solves so far. */
    int iterations() {
        return poisson.iterations();
    }

    /** Largest imbalance of a cell after the last step over the largest flux, see {@link Projection}. */
    double leftOver() {
        return leftOver;
    }

    /** Whether the air was at rest, and not driven, in the last advance. */
    boolean resting() {
        return resting;
    }

    /** Puts the air in motion: the state is taken as it is. */
    void wake() {
        resting = false;
    }

    /**
     * Advances the air.
     *
     * @param meanFlux [faces] gains the time integral of the fluxes, m³
     * @throws SimulationException if the field is no longer finite
     */
    void advance(double durationS, FlowDrive drive, double[] meanFlux) {
        if (drive.idle() && fastest() < REST_M_PER_S) {
            settle(durationS);
            return;
        }
        resting = false;
        balancePressure(drive);
        double leftS = durationS;
        for (int n = 0; leftS > 1e-12 * durationS; n++) {
            if (n > STEPS_AT_MOST) {
                throw new SimulationException("airflow: steps of " + stepS + " s at " + timeS + " s do not end");
            }
            double dt = step(drive, leftS);
            leftS -= dt;
            for (int f = 0; f < grid.faces; f++) {
                meanFlux[f] += dt * flux[f];
            }
        }
    }

    private void settle(double durationS) {
        resting = true;
        Arrays.fill(u, 0);
        Arrays.fill(flux, 0);
        double[] k = turbulence.k();
        for (int c = 0; c < grid.cells; c++) {
            double root = Math.sqrt(k[c]);
            double fade = 1
                    + 0.5
                            * BulkTurbulence.DISSIPATION_FACTOR
                            * root
                            * durationS
                            / turbulence.lengthM()[c];
            k[c] = k[c] / (fade * fade);
        }
        turbulence.refresh();
        timeS += durationS;
        stepS = 0;
    }

    private double fastest() {
        double most = 0;
        for (double v : u) {
            most = Math.max(most, Math.abs(v));
        }
        return most;
    }

    /**
     * Lets the pressure answer a new drive at once, so that forces that it can hold (the weight of even fog) move nothing, not
     * even within a step.
     */
    private void balancePressure(FlowDrive drive) {
        prepare(drive);
        momentum.rates(u, first, true);
        double[] mixed = drive.mixedM3PerS();
        for (int f = 0; f < u.length; f++) {
            first[f] -= u[f] * mixed[f] * perVolume[f];
        }
        Arrays.fill(left, 0);
        double scale = 0;
        for (int f = 0; f < u.length; f++) {
            double a = first[f] * grid.areaM2[f];
            left[grid.low[f]] -= a;
            left[grid.high[f]] += a;
            scale += a * a;
        }
        poisson.solve(left, phi, settings.tolerance() * Math.sqrt(scale), settings.mostIterations());
        for (int c = 0; c < phi.length; c++) {
            pressure[c] += phi[c];
        }
    }

    private void prepare(FlowDrive drive) {
        double[] eddies = settings.turbulence() ? turbulence.eddyViscosityM2PerS() : noEddies;
        momentum.prepare(u, drive, pressure, eddies);
    }

    private double step(FlowDrive drive, double mostS) {
        prepare(drive);
        momentum.rates(u, first, true);
        double dt = choose(mostS);
        double[] mixed = drive.mixedM3PerS();
        for (int f = 0; f < u.length; f++) {
            trial[f] = slowed(u[f] + dt * first[f], f, dt, mixed[f]);
        }
        momentum.rates(trial, second, false);
        for (int f = 0; f < u.length; f++) {
            u[f] = slowed(u[f] + 0.5 * dt * (first[f] + second[f]), f, dt, mixed[f]);
        }
        project(drive.outflowM3PerS(), dt);
        if (settings.turbulence()) {
            turbulence.step(flux, drive, dt);
        }
        timeS += dt;
        steps++;
        return dt;
    }

    /**
     * What acts against a face's own speed, implicit in that speed, so that it limits no step and never overshoots: orifice loss of narrow openings
     * towards rest, and the air of jets that takes the place of the face's air.
     */
    private double slowed(double speed, int face, double dt, double mixedM3PerS) {
        double k = grid.loss[face];
        double mixed = dt * mixedM3PerS * perVolume[face];
        return k == 0 ? speed / (1 + mixed) : speed / (1 + mixed + 0.5 * dt * k * Math.abs(speed) * perDistance[face]);
    }

    private double choose(double mostS) {
        double rate = momentum.totalRate();
        if (settings.turbulence()) {
            for (int f = 0; f < u.length; f++) {
                flux[f] = u[f] * grid.areaM2[f];
            }
            rate = Math.max(rate, turbulence.rate(flux));
        }
        double push = 0;
        for (int f = 0; f < u.length; f++) {
            double a = Math.abs(first[f]);
            push = Math.max(push, a * perDistance[f]);
        }
        // Accelerations count too: no face may pick up more than its own length in a step.
        rate = Math.max(rate, Math.sqrt(push));
        double dt = Math.min(settings.largestStepS(), settings.courant() / Math.max(rate, 1e-30));
        dt = stepS > 0 ? Math.min(dt, GROWTH * stepS) : dt;
        stepS = dt;
        if (dt >= mostS) {
            return mostS;
        }
        return mostS / Math.ceil(mostS / dt);
    }

    /** Makes the field conserve volume; what it takes is added to the pressure. */
    private void project(double[] outflow, double dt) {
        System.arraycopy(outflow, 0, left, 0, left.length);
        double scale = 0;
        for (int f = 0; f < u.length; f++) {
            flux[f] = u[f] * grid.areaM2[f];
            left[grid.low[f]] -= flux[f];
            left[grid.high[f]] += flux[f];
            scale += flux[f] * flux[f];
        }
        for (double o : outflow) {
            scale += o * o;
        }
        double size = Math.sqrt(scale);
        leftOver = poisson.solve(left, phi, settings.tolerance() * size, settings.mostIterations());
        if (!Double.isFinite(leftOver)) {
            throw new SimulationException("airflow: the resolved air is no longer finite at " + timeS + " s after "
                    + steps + " steps, step " + dt + " s");
        }
        leftOver = size > 0 ? leftOver / size : 0;
        for (int f = 0; f < u.length; f++) {
            double change = (phi[grid.high[f]] - phi[grid.low[f]]) * perDistance[f];
            u[f] -= change;
            flux[f] -= change * grid.areaM2[f];
        }
        for (int c = 0; c < phi.length; c++) {
            pressure[c] += phi[c] / dt;
        }
    }

    /**
     * Makes any fluxes conserve volume on this grid.
     *
     * @param fluxM3PerS [faces], changed
     * @param relative what may be left, over the root of the sum of their squares
     */
    void tighten(double[] fluxM3PerS, double[] outflow, double relative) {
        double[] rest = outflow.clone();
        double scale = 0;
        for (int f = 0; f < fluxM3PerS.length; f++) {
            rest[grid.low[f]] -= fluxM3PerS[f];
            rest[grid.high[f]] += fluxM3PerS[f];
            scale += fluxM3PerS[f] * fluxM3PerS[f];
        }
        for (double o : outflow) {
            scale += o * o;
        }
        poisson.solve(rest, phi, relative * Math.sqrt(scale), MOST_TIGHT);
        for (int f = 0; f < fluxM3PerS.length; f++) {
            fluxM3PerS[f] -= grid.conductanceM(f) * (phi[grid.high[f]] - phi[grid.low[f]]);
        }
    }

    /** Takes over the motion of another solver on the same cells, whose faces may differ by openings. */
    void takeOver(FlowSolver before) {
        Map<Long, Integer> place = new HashMap<>();
        for (int f = 0; f < before.grid.faces; f++) {
            place.put(key(before.grid, f), f);
        }
        for (int f = 0; f < grid.faces; f++) {
            Integer old = place.get(key(grid, f));
            u[f] = old == null ? 0 : before.u[old];
        }
        System.arraycopy(before.pressure, 0, pressure, 0, pressure.length);
        System.arraycopy(before.turbulence.k(), 0, turbulence.k(), 0, pressure.length);
        turbulence.refresh();
        timeS = before.timeS;
        stepS = before.stepS;
        steps = before.steps;
        resting = before.resting;
    }

    private static long key(FlowGrid grid, int face) {
        return ((long) grid.low[face] << 32 | grid.high[face]) * 3 + grid.axis[face];
    }

    /** Largest speed through any face, m/s. */
    double fastestMPerS() {
        return fastest();
    }

    /** Fluxes through the faces now, m³/s, [faces]; a copy. */
    double[] fluxM3PerS() {
        double[] now = new double[u.length];
        for (int f = 0; f < now.length; f++) {
            now[f] = u[f] * grid.areaM2[f];
        }
        return now;
    }

    /** Makes the present speeds conserve volume without stepping, to the solver's own tolerance. */
    void projectNow(double[] outflow) {
        project(outflow, 1);
        Arrays.fill(pressure, 0);
        resting = false;
    }
}
