package baymist.run;

import baymist.airflow.AirField;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;

/**
 * Largest share of a cell's air that leaves it per second in any moment of a job, seen from the air's own fluxes: times the fog's
 * smallest explicit step it is the Courant number (Courant, Friedrichs and Lewy 1928), which must stay below 1.
 */
final class CourantWatch {
    private final VoxelGrid grid;
    private final double[] out;
    private double largestPerS;

    CourantWatch(VoxelGrid grid) {
        this.grid = grid;
        this.out = new double[grid.cellCount()];
    }

    void look(AirField air) {
        java.util.Arrays.fill(out, 0);
        FaceSet faces = grid.faces();
        for (int f = 0; f < air.faceFluxM3PerS().length; f++) {
            double q = air.faceFluxM3PerS()[f];
            out[q > 0 ? faces.low()[f] : faces.high()[f]] += Math.abs(q);
        }
        for (int v = 0; v < air.ventFluxM3PerS().length; v++) {
            out[faces.ventCell()[v]] += Math.max(0, air.ventFluxM3PerS()[v]);
        }
        for (int c = 0; c < out.length; c++) {
            largestPerS = Math.max(largestPerS, out[c] / grid.volumeM3(c));
        }
    }

    /** Courant number with a step, or 0 where nothing moved. */
    double number(double stepS) {
        return Double.isFinite(stepS) ? largestPerS * stepS : 0;
    }
}
