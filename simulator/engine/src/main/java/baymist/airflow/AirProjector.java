package baymist.airflow;

import baymist.geom.Vec3;
import baymist.problem.SimulationException;
import baymist.spray.SprayHits;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;

/**
 * Projected air: the field nearest to the analytic jets that conserves volume, lets the supplied air in at the tip and the
 * prescribed outflow out of the vents.
 *
 * <p>In every cell the outgoing face and vent fluxes equal {@code source - expansion * volume}, to the reported residual. The
 * expansion is that of the group of bays that holds the tip (or, with the trigger off, that vents most); cells of other groups
 * carry no flow, and their source is set to {@code expansion * volume}, so that the same identity holds there with zero flux.
 *
 * <p>An irrotational correction makes no eddies: recirculation is only what the jets' own flow implies. Immutable; any number
 * of threads may project at once.
 */
public final class AirProjector {
    /** Relative residual of the Poisson solve used by a run; 1e-6 is enough for fog, smaller costs a few iterations. */
    public static final double TOLERANCE = 1e-8;

    /** A solve that stops this many times above its tolerance is refused. */
    private static final double REFUSED = 1e3;

    private static final Vec3 ISOTROPIC = new Vec3(1, 1, 1);

    private final VoxelGrid grid;
    private final double[] openingAreaM2;
    private final double tolerance;

    /**
     * @param openingAreaM2 [openings] exact areas of the cavity's openings, m²
     * @param tolerance relative residual of the Poisson solve, e.g. {@link #TOLERANCE}
     */
    public AirProjector(VoxelGrid grid, double[] openingAreaM2, double tolerance) {
        this.grid = grid;
        this.openingAreaM2 = openingAreaM2.clone();
        this.tolerance = tolerance;
    }

    /**
     * Air while the trigger is held.
     *
     * @param openFraction [openings] open share of each opening, 0..1
     * @param pressure balance of the group that holds {@code hits.airCell()}
     * @param mixing diffusivity and residual friction speed of the window
     * @throws SimulationException if the Poisson solve does not converge
     */
    public AirField project(SprayHits hits, double[] openFraction, PressureWindow pressure, Mixing mixing) {
        AirPath path = new AirPath(grid, openingAreaM2, openFraction);
        if (hits.airCell() < 0) {
            return quiet(path, 0, PressureWindow.calm(pressure.startS(), pressure.durationS()), mixing);
        }
        return spraying(path, hits, pressure, mixing);
    }

    /**
     * Air with the trigger off: venting and blow-down only.
     *
     * @param ventingCell a cell of the group that {@code pressure} belongs to
     */
    public AirField projectQuiet(double[] openFraction, int ventingCell, PressureWindow pressure, Mixing mixing) {
        AirPath path = new AirPath(grid, openingAreaM2, openFraction);
        return quiet(path, path.groups().groupOf(ventingCell), pressure, mixing);
    }

    /** No air motion at all. */
    public AirField still(double[] openFraction, Mixing mixing) {
        FaceSet faces = grid.faces();
        return new AirField(
                new double[faces.count()],
                new double[faces.vents()],
                new double[grid.cellCount()],
                0,
                mixing.diffusivityM2PerS().clone(),
                mixing.quietFrictionMPerS().clone(),
                openFraction.clone(),
                0);
    }

    AirField spraying(AirPath path, SprayHits hits, PressureWindow pressure, Mixing mixing) {
        int group = path.groups().groupOf(hits.airCell());
        double[] source = new double[grid.cellCount()];
        StartField.addSupply(grid, hits, path, pressure.supplyM3PerS(), source);
        return solve(path, group, StartField.jets(grid, hits, path, group), source, pressure, mixing);
    }

    AirField quiet(AirPath path, int group, PressureWindow pressure, Mixing mixing) {
        if (pressure.ventOutflowM3PerS() == 0 && pressure.expansionPerS() == 0) {
            return still(path.openFraction(), mixing);
        }
        double[] source = new double[grid.cellCount()];
        return solve(path, group, new double[grid.faces().count()], source, pressure, mixing);
    }

    private AirField solve(
            AirPath path, int group, double[] start, double[] source, PressureWindow pressure, Mixing mixing) {
        FaceSet faces = grid.faces();
        double expansion = pressure.expansionPerS();
        double[] vents = path.vents().split(group, pressure.ventOutflowM3PerS());
        double[] outflow = new double[grid.cellCount()];
        for (int c = 0; c < outflow.length; c++) {
            if (path.groups().groupOf(c) != group) {
                source[c] = expansion * grid.volumeM3(c);
            }
            outflow[c] = source[c] - expansion * grid.volumeM3(c);
        }
        for (int v = 0; v < vents.length; v++) {
            outflow[faces.ventCell()[v]] -= vents[v];
        }
        double[] openFraction = path.openFraction();
        Projection projection = new Projection(grid, openFraction, ISOTROPIC, path.groups());
        Projection.Result result = projection.project(start, outflow, tolerance);
        check(result, pressure);
        double[] friction = WallLaw.frictionSpeeds(grid, result.fluxM3PerS(), mixing.kinematicViscosityM2PerS());
        for (int s = 0; s < friction.length; s++) {
            friction[s] = Math.max(friction[s], mixing.quietFrictionMPerS()[s]);
        }
        return new AirField(
                result.fluxM3PerS(),
                vents,
                source,
                expansion,
                mixing.diffusivityM2PerS().clone(),
                friction,
                openFraction,
                result.residual());
    }

    private void check(Projection.Result result, PressureWindow pressure) {
        double residual = result.solution().residual();
        if (!(residual <= REFUSED * tolerance) || !Double.isFinite(result.residual())) {
            throw new SimulationException("airflow: the air field of the window that begins at " + pressure.startS()
                    + " s did not converge: relative residual " + residual + " after "
                    + result.solution().iterations() + " iterations, " + tolerance + " wanted");
        }
    }
}
