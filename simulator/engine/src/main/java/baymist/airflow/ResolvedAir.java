package baymist.airflow;

import baymist.geom.Vec3;
import baymist.scene.AirSpec;
import baymist.spray.JetPush;
import baymist.spray.SprayHits;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import org.jspecify.annotations.Nullable;

/**
 * Transient air through a job, window by window: {@link #advance} moves the air on and gives the mean field of the window in the
 * form that the fog takes. Pressure, vent flows and compression come from the plan; jets push where {@link SprayHits} says; fog
 * pulls the air down by its weight.
 *
 * <p>Windows must be asked for in order of time. Mutable, one thread; no result depends on the number of threads elsewhere.
 */
public final class ResolvedAir {
    /** What the mean field of a window may leave of the balance on the air's grid, root mean square. */
    public static final double TIGHT = 1e-9;

    /**
     * Fog does not move the air where its excess weight drives less than a fifth of the residual convection's speed: density
     * ratio below (1/5)² of dT/T (ASSUMED: what is lost is then hidden in convection that is not known better).
     */
    private static final double SLUMP_SHARE = 0.04;

    /** The same without residual convection: relative density difference that may be dropped. */
    private static final double LEAST_EXCESS = 1e-7;

    private static final double FOG_CELLS_A_WINDOW = 2;
    private static final double SHORTEST_WINDOW_S = 0.1;
    private static final double LONGEST_WINDOW_S = 10;

    private final AirStage plan;
    private final VoxelGrid grid;
    private final double[] openingAreaM2;
    private final int factor;
    private final FlowSettings flow;
    private final WallSampler walls;
    private final AirPath[] pathNow = new AirPath[1];
    private FlowSolver solver;
    private FluxRefiner refiner;
    private final StackExchange stack;
    private final double[] outflow;
    private final double[] scratch;
    private double lostPushN;

    /** Fog over air by mass, [air cells], as of the last weighing. */
    private double[] ratio = new double[0];

    /** Largest difference of the fog's pull on the air in the last window, m/s²; until it has been weighed that of dense fog. */
    private double excessMPerS2 = 0.5;

    private ResolvedAir(AirStage plan, VoxelGrid grid, double[] openingAreaM2, int factor) {
        this.plan = plan;
        this.grid = grid;
        this.openingAreaM2 = openingAreaM2.clone();
        this.factor = factor;
        this.flow = FlowSettings.run(plan.settings().air().kinematicViscosityM2PerS());
        this.walls = new WallSampler(grid, factor, plan.settings().air().kinematicViscosityM2PerS());
        AirSettings settings = plan.settings();
        this.stack = new StackExchange(
                grid,
                settings.gravity(),
                settings.gravityMPerS2(),
                settings.air().densityKgPerM3());
        this.outflow = new double[grid.cellCount()];
        this.scratch = new double[grid.cellCount()];
        this.pathNow[0] = plan.path(0);
        double[] open = pathNow[0].openFraction();
        this.solver = new FlowSolver(FlowGrid.of(grid, this.openingAreaM2, open, factor), flow);
        this.refiner = new FluxRefiner(grid, solver.grid(), open);
    }

    /**
     * Prepares the air of a job, at rest.
     *
     * @param plan with at least one window
     * @param openingAreaM2 [openings] exact areas, m²
     * @param factor fog cells along a side of the air's blocks: 1 to 4
     */
    public static ResolvedAir of(AirStage plan, VoxelGrid grid, double[] openingAreaM2, int factor) {
        return new ResolvedAir(plan, grid, openingAreaM2, factor);
    }

    /**
     * Length of the next window that fog should be held for, s: some two blocks of travel at the speed of now, or from rest under the
     * fog's weight as it was last, within bounds.
     */
    public double windowS() {
        double[] h = solver.grid().h;
        double way = FOG_CELLS_A_WINDOW * Math.min(h[0], Math.min(h[1], h[2]));
        double wanted = way / Math.max(solver.fastestMPerS(), 1e-9);
        wanted = Math.min(wanted, Math.sqrt(2 * way / Math.max(excessMPerS2, 1e-12)));
        return Math.max(SHORTEST_WINDOW_S, Math.min(LONGEST_WINDOW_S, wanted));
    }

    /**
     * Advances the air within a window of the plan.
     *
     * @param window of the plan
     * @param durationS above 0
     * @param fogKgPerM3 suspended liquid, [fog cells], or an empty array for none
     * @return mean field over the duration; conserves volume on the fog's cells to {@link AirField#residual()}
     */
    public AirField advance(int window, double durationS, double[] fogKgPerM3) {
        AirPath path = plan.path(window);
        if (path != pathNow[0]) {
            reopen(path);
        }
        AirWindow w = plan.window(window);
        PressureWindow pressure = plan.pressure(window);
        SprayHits hits = w.hits();
        boolean spraying = hits != null && hits.airCell() >= 0;
        int group = spraying && hits != null ? path.groups().groupOf(hits.airCell()) : plan.group(window);
        double[] source = new double[grid.cellCount()];
        if (spraying && hits != null) {
            StartField.addSupply(grid, hits, path, pressure.supplyM3PerS(), source);
        }
        double[] vents = path.vents().split(group, pressure.ventOutflowM3PerS());
        if (weigh(fogKgPerM3)) {
            for (int g = 0; g < path.groups().count(); g++) {
                stack.share(path, g, g == group ? pressure.ventOutflowM3PerS() : 0, fogKgPerM3, vents);
            }
        }
        fillOutflow(path, group, pressure.expansionPerS(), source, vents);
        FlowDrive drive = drive(hits, refiner.gather(outflow), vents);
        double[] mean = new double[solver.grid().faces];
        solver.advance(durationS, drive, mean);
        for (int f = 0; f < mean.length; f++) {
            mean[f] /= durationS;
        }
        solver.tighten(mean, drive.outflowM3PerS(), TIGHT);
        return field(window, refiner.refine(mean, outflow), vents, source, pressure.expansionPerS());
    }

    private void reopen(AirPath path) {
        double[] open = path.openFraction();
        FlowSolver next = new FlowSolver(FlowGrid.of(grid, openingAreaM2, open, factor), flow);
        next.takeOver(solver);
        solver = next;
        refiner = new FluxRefiner(grid, next.grid(), open);
        pathNow[0] = path;
    }

    /** Wanted outflow of every fog cell through its faces; cells outside the group carry none (see {@link AirProjector}). */
    private void fillOutflow(AirPath path, int group, double expansion, double[] source, double[] vents) {
        FaceSet faces = grid.faces();
        for (int c = 0; c < outflow.length; c++) {
            if (path.groups().groupOf(c) != group) {
                source[c] = expansion * grid.volumeM3(c);
            }
            outflow[c] = source[c] - expansion * grid.volumeM3(c);
        }
        for (int v = 0; v < vents.length; v++) {
            outflow[faces.ventCell()[v]] -= vents[v];
        }
    }

    private FlowDrive drive(@Nullable SprayHits hits, double[] airOutflow, double[] vents) {
        FlowGrid air = solver.grid();
        double[] push = new double[air.faces];
        double[] mixed = new double[air.faces];
        double[] power = new double[air.cells];
        if (hits != null) {
            pushJets(hits.push(), push, mixed, power);
        }
        if (excessMPerS2 > 0) {
            pullFog(push);
        }
        return new FlowDrive(airOutflow, vents, push, mixed, power);
    }

    /**
     * Jets arrive at the cap: mass flow {@code J/cap} at that speed takes the place of the air that is there, which gains
     * {@code J (1 - u/cap)}. So the grid is never driven beyond the cap, however narrow the space.
     */
    private void pushJets(JetPush jets, double[] push, double[] mixed, double[] power) {
        FlowGrid air = solver.grid();
        double density = plan.settings().air().densityKgPerM3();
        double[][] force = {jets.x(), jets.y(), jets.z()};
        lostPushN = 0;
        for (int i = 0; i < jets.count(); i++) {
            int c = air.cellOf[jets.cell()[i]];
            power[c] += jets.powerW()[i] / density;
            double arriving = jets.flowKgPerS()[i] / density;
            for (int a = 0; a < 3; a++) {
                lostPushN += Math.abs(share(c, a, force[a][i] / density, push)) * density;
                share(c, a, arriving, mixed);
            }
        }
    }

    /** Shares a force over the faces on both sides of a cell by area; returns what no face could take. */
    private double share(int cell, int axis, double force, double[] push) {
        FlowGrid air = solver.grid();
        double area = 0;
        for (int d = 2 * axis; d <= 2 * axis + 1; d++) {
            for (int n = 0; n < air.sideCount(cell, d); n++) {
                int f = air.sideAt(cell, d, n);
                area += f < air.faces ? air.areaM2[f] : 0;
            }
        }
        if (!(area > 0)) {
            return force;
        }
        for (int d = 2 * axis; d <= 2 * axis + 1; d++) {
            for (int n = 0; n < air.sideCount(cell, d); n++) {
                int f = air.sideAt(cell, d, n);
                if (f < air.faces) {
                    push[f] += force * air.areaM2[f] / area;
                }
            }
        }
        return 0;
    }

    /**
     * Weighs the fog: whether it pulls the air enough to count. In a vented group even fog counts, since the air outside has none.
     */
    private boolean weigh(double[] fogKgPerM3) {
        excessMPerS2 = 0;
        if (fogKgPerM3.length == 0) {
            return false;
        }
        AirSettings settings = plan.settings();
        ratio = refiner.gatherPerM3(fogKgPerM3);
        FlowGrid air = solver.grid();
        double least = pathNow[0].isVented() ? 0 : Double.POSITIVE_INFINITY;
        double most = 0;
        for (int c = 0; c < air.cells; c++) {
            ratio[c] /= air.volumeM3[c] * settings.air().densityKgPerM3();
            least = Math.min(least, ratio[c]);
            most = Math.max(most, ratio[c]);
        }
        double dropped = settings.residualConvection()
                ? SLUMP_SHARE
                        * ResidualConvection.WALL_DIFFERENCE_K
                        / settings.air().temperatureK()
                : LEAST_EXCESS;
        if (most - least < dropped) {
            return false;
        }
        excessMPerS2 = settings.gravityMPerS2() * (most - least);
        return true;
    }

    /** Boussinesq: each face's air is pulled by the weight of the fog in it beyond the mean. */
    private void pullFog(double[] push) {
        FlowGrid air = solver.grid();
        AirSettings settings = plan.settings();
        double sum = 0;
        double volume = 0;
        for (int c = 0; c < air.cells; c++) {
            sum += ratio[c] * air.volumeM3[c];
            volume += air.volumeM3[c];
        }
        double mean = sum / volume;
        Vec3 g = settings.gravity().unit().times(settings.gravityMPerS2());
        for (int f = 0; f < air.faces; f++) {
            double excess = 0.5 * (ratio[air.low[f]] + ratio[air.high[f]]) - mean;
            push[f] += g.get(air.axis[f]) * excess * air.faceVolumeM3(f);
        }
    }

    private AirField field(int window, double[] flux, double[] vents, double[] source, double expansion) {
        Mixing floor = plan.floor(window);
        AirSpec spec = plan.settings().spec();
        boolean spraying = plan.window(window).hits() != null;
        double stated = spraying ? spec.sprayDiffusivityM2PerS() : spec.quietDiffusivityM2PerS();
        double[] diffusivity = floor.diffusivityM2PerS().clone();
        if (stated < 0) {
            refiner.spread(solver.turbulence().eddyViscosityM2PerS(), 1 / BulkTurbulence.SCHMIDT, diffusivity);
        }
        double[] friction = floor.quietFrictionMPerS().clone();
        if (!solver.resting()) {
            walls.raise(flux, friction);
        }
        return new AirField(
                flux,
                vents,
                source,
                expansion,
                diffusivity,
                friction,
                pathNow[0].openFraction(),
                Projection.residual(grid, flux, outflow, scratch));
    }

    /** Fog cells along each side of a block. */
    public int factor() {
        return factor;
    }

    /** Cells of the air's grid. */
    public int cells() {
        return solver.grid().cells;
    }

    /** Steps done so far. */
    public long steps() {
        return solver.steps();
    }

    /** Whether the air was at rest, and left alone, in the last window. */
    public boolean resting() {
        return solver.resting();
    }

    /** Largest speed through a face now, m/s. */
    public double fastestMPerS() {
        return solver.fastestMPerS();
    }

    /** Kinetic energy of the resolved motion over density, m⁵/s². */
    double energyM5PerS2() {
        double sum = 0;
        for (int f = 0; f < solver.grid().faces; f++) {
            double u = solver.speedMPerS()[f];
            sum += 0.5 * solver.grid().faceVolumeM3(f) * u * u;
        }
        return sum;
    }

    /** Force of the jets that fell into cells without a face along it, N: the sheets take it. */
    public double lostPushN() {
        return lostPushN;
    }
}
