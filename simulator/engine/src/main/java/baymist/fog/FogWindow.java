package baymist.fog;

import baymist.airflow.AirField;
import baymist.geom.Vec3;
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

    /** Largest relative error of a cell's air budget. */
    final double airBudgetError;

    /** Whether any air moves. */
    final boolean airMoves;

    FogWindow(VoxelGrid grid, AirField field, @Nullable SprayHits spray, Vec3 down) {
        check(grid, field);
        this.field = field;
        this.spray = spray;
        FaceSet faces = grid.faces();
        flux = field.faceFluxM3PerS();
        ventFlux = field.ventFluxM3PerS();
        conductance = new double[faces.count()];
        fallArea = new double[faces.count()];
        ventFallArea = new double[faces.vents()];
        boolean moves = false;
        for (int e = 0; e < faces.count(); e++) {
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
        for (int v = 0; v < faces.vents(); v++) {
            ventFallArea[v] = faces.ventAreaM2()[v]
                    * open(faces.ventOpening()[v])
                    * faces.ventSign()[v]
                    * down.get(faces.ventAxis()[v]);
            moves |= ventFlux[v] != 0;
            requireFinite(ventFlux[v], "vent flux", v);
        }
        airMoves = moves;
        SurfelSet surfels = grid.surfels();
        wallArea = new double[surfels.count()];
        normalUp = new double[surfels.count()];
        for (int s = 0; s < surfels.count(); s++) {
            int closure = surfels.closure()[s];
            wallArea[s] = surfels.areaM2()[s] * (closure < 0 ? 1 : 1 - open(closure));
            normalUp[s] = -(surfels.normalX()[s] * down.x()
                    + surfels.normalY()[s] * down.y()
                    + surfels.normalZ()[s] * down.z());
            requireFinite(field.frictionSpeedMPerS()[s], "friction speed", s);
        }
        airBudgetError = moves ? airBudgetError(grid) : 0;
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

    private double airBudgetError(VoxelGrid grid) {
        FaceSet faces = grid.faces();
        double[] in = new double[grid.cellCount()];
        double[] out = new double[grid.cellCount()];
        for (int e = 0; e < flux.length; e++) {
            in[flux[e] > 0 ? faces.high()[e] : faces.low()[e]] += Math.abs(flux[e]);
            out[flux[e] > 0 ? faces.low()[e] : faces.high()[e]] += Math.abs(flux[e]);
        }
        for (int v = 0; v < ventFlux.length; v++) {
            (ventFlux[v] > 0 ? out : in)[faces.ventCell()[v]] += Math.abs(ventFlux[v]);
        }
        double worst = 0;
        for (int c = 0; c < in.length; c++) {
            in[c] += field.sourceM3PerS()[c];
            double stored = field.expansionPerS() * grid.volumeM3(c);
            double larger = Math.max(in[c], out[c]);
            if (larger > 0) {
                worst = Math.max(worst, Math.abs(in[c] - out[c] - stored) / larger);
            }
        }
        return worst;
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
