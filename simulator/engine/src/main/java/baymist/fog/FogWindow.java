package baymist.fog;

import baymist.airflow.AirField;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SimulationException;
import baymist.spray.SprayHits;
import baymist.voxel.FaceSet;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import org.jspecify.annotations.Nullable;

/** What holds for every bin while one air field holds: fluxes, conductances and open areas. Read-only once built. */
final class FogWindow {
    /** Air flux from low to high, m³/s, [faces]. */
    final double[] flux;

    /** Conductance K A / distance, m³/s, [faces]. */
    final double[] conductance;

    /** Open area times the component of gravity's direction from low to high, m², [faces]. */
    final double[] fallArea;

    /** Air flux outwards, m³/s, [vents]. */
    final double[] ventFlux;

    /** Open area times the component of gravity's direction outwards, m², [vents]. */
    final double[] ventFallArea;

    /** Area that droplets can settle on, m², [surfels]; the open share of a closure is none. */
    final double[] wallArea;

    /** Component of the wall normal against gravity, [surfels]. */
    final double[] normalUp;

    final AirField field;
    final @Nullable SprayHits spray;

    /** Whether any air moves. */
    final boolean airMoves;

    FogWindow(VoxelGrid grid, AirField field, @Nullable SprayHits spray, Vec3 down, Workers workers) {
        check(grid, field);
        this.field = field;
        this.spray = spray;
        FaceSet faces = grid.faces();
        flux = field.faceFluxM3PerS();
        ventFlux = field.ventFluxM3PerS();
        conductance = new double[faces.count()];
        fallArea = new double[faces.count()];
        ventFallArea = new double[faces.vents()];
        wallArea = new double[grid.surfels().count()];
        normalUp = new double[grid.surfels().count()];
        boolean[] moves = new boolean[faces.count() / FogLinks.BLOCK + 1];
        workers.forBlocks(
                faces.count(),
                FogLinks.BLOCK,
                (from, to) -> moves[from / FogLinks.BLOCK] = fillFaces(grid, down, from, to));
        workers.forBlocks(wallArea.length, FogLinks.BLOCK, (from, to) -> fillWalls(grid.surfels(), down, from, to));
        boolean any = false;
        for (boolean m : moves) {
            any |= m;
        }
        for (int v = 0; v < faces.vents(); v++) {
            ventFallArea[v] = faces.ventAreaM2()[v]
                    * open(faces.ventOpening()[v])
                    * faces.ventSign()[v]
                    * down.get(faces.ventAxis()[v]);
            any |= ventFlux[v] != 0;
            requireFinite(ventFlux[v], "vent flux", v);
        }
        airMoves = any;
    }

    private boolean fillFaces(VoxelGrid grid, Vec3 down, int from, int to) {
        FaceSet faces = grid.faces();
        boolean moves = false;
        for (int e = from; e < to; e++) {
            int a = faces.axis()[e];
            double area = faces.areaM2()[e] * open(faces.opening()[e]);
            conductance[e] = diffusivity(faces.low()[e], faces.high()[e])
                    * area
                    / grid.sizeM().get(a);
            fallArea[e] = area * down.get(a);
            moves |= flux[e] != 0;
            requireFinite(flux[e], "air flux", e);
            requireFinite(conductance[e], "eddy conductance", e);
        }
        return moves;
    }

    private void fillWalls(SurfelSet surfels, Vec3 down, int from, int to) {
        for (int s = from; s < to; s++) {
            int closure = surfels.closure()[s];
            wallArea[s] = surfels.areaM2()[s] * (closure < 0 ? 1 : 1 - open(closure));
            normalUp[s] = -(surfels.normalX()[s] * down.x()
                    + surfels.normalY()[s] * down.y()
                    + surfels.normalZ()[s] * down.z());
            requireFinite(field.frictionSpeedMPerS()[s], "friction speed", s);
        }
    }

    private double open(int opening) {
        return opening < 0 ? 1 : field.openFraction()[opening];
    }

    /** Harmonic mean: two half-cells in series; a still cell does not exchange by eddies. */
    private double diffusivity(int low, int high) {
        double a = field.eddyDiffusivityM2PerS()[low];
        double b = field.eddyDiffusivityM2PerS()[high];
        return a + b > 0 ? 2 * a * b / (a + b) : 0;
    }

    private static void check(VoxelGrid grid, AirField field) {
        FaceSet faces = grid.faces();
        requireLength("faceFluxM3PerS", field.faceFluxM3PerS(), faces.count());
        requireLength("ventFluxM3PerS", field.ventFluxM3PerS(), faces.vents());
        requireLength("sourceM3PerS", field.sourceM3PerS(), grid.cellCount());
        requireLength("eddyDiffusivityM2PerS", field.eddyDiffusivityM2PerS(), grid.cellCount());
        requireLength(
                "frictionSpeedMPerS", field.frictionSpeedMPerS(), grid.surfels().count());
        for (double k : field.eddyDiffusivityM2PerS()) {
            if (!(k >= 0)) {
                throw new SimulationException("fog: the air field hands over an eddy diffusivity of " + k + " m²/s");
            }
        }
        for (double f : field.openFraction()) {
            if (!(f >= 0 && f <= 1)) {
                throw new IllegalArgumentException("open fraction " + f + " is outside 0..1");
            }
        }
    }

    private static void requireLength(String name, double[] values, int expected) {
        if (values.length != expected) {
            throw new IllegalArgumentException(name + " has " + values.length + " entries, the grid has " + expected);
        }
    }

    private static void requireFinite(double value, String what, int index) {
        if (!Double.isFinite(value)) {
            throw new SimulationException("fog: the air field hands over a " + what + " of " + value + " at " + index);
        }
    }
}
