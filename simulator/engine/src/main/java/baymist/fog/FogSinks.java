package baymist.fog;

import baymist.spray.SprayHits;
import baymist.voxel.FaceSet;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * What takes the droplets of one bin out of the air in one window, and what the spray hands in. Owned by a {@link FogBin}, refilled for
 * each window.
 */
final class FogSinks {
    private final VoxelGrid grid;
    private final int bin;
    private final int bins;

    /** Loss to each surfel, vent, scour entry of the cell that faces it, 1/s. */
    final double[] wallRate;

    final double[] ventRate;
    double[] scourRate = new double[0];

    /** Mass handed in by the spray, all cells together, kg/s. */
    double sourceKgPerS;

    FogSinks(VoxelGrid grid, int bin, int bins) {
        this.grid = grid;
        this.bin = bin;
        this.bins = bins;
        wallRate = new double[grid.surfels().count()];
        ventRate = new double[grid.faces().vents()];
    }

    void fill(FogWindow window, double settlingMPerS, WallSpeed walls) {
        fillWalls(window, walls);
        fillVents(window, settlingMPerS);
        fillSpray(window);
    }

    private void fillWalls(FogWindow window, WallSpeed walls) {
        SurfelSet surfels = grid.surfels();
        double[] frictionSpeed = window.field.frictionSpeedMPerS();
        double[] lastFriction = new double[6];
        double[] lastUp = new double[6];
        double[] lastSpeed = new double[6];
        Arrays.fill(lastFriction, Double.NaN);
        for (int s = 0; s < wallRate.length; s++) {
            int d = surfels.direction()[s];
            double area = window.wallArea[s];
            double up = window.normalUp[s];
            if (walls.dependsOnPlace() || frictionSpeed[s] != lastFriction[d] || up != lastUp[d]) {
                lastFriction[d] = frictionSpeed[s];
                lastUp[d] = up;
                lastSpeed[d] = walls.speedMPerS(s, bin, frictionSpeed[s], up);
            }
            wallRate[s] = area > 0 ? lastSpeed[d] * area / grid.volumeM3(surfels.cell()[s]) : 0;
        }
    }

    private void fillVents(FogWindow window, double settlingMPerS) {
        FaceSet faces = grid.faces();
        for (int v = 0; v < ventRate.length; v++) {
            double out = window.ventFlux[v] + settlingMPerS * window.ventFallArea[v];
            ventRate[v] = Math.max(out, 0) / grid.volumeM3(faces.ventCell()[v]);
        }
    }

    private void fillSpray(FogWindow window) {
        SprayHits spray = window.spray;
        sourceKgPerS = 0;
        if (spray == null) {
            scourRate = new double[0];
            return;
        }
        sourceKgPerS = sourceKgPerS(spray, bin, bins);
        scourRate = new double[spray.scourCell().length];
        for (int i = 0; i < scourRate.length; i++) {
            int c = spray.scourCell()[i];
            double rate = spray.scourM3PerS()[i] * spray.scourEfficiency()[i * bins + bin] / grid.volumeM3(c);
            if (!(rate >= 0) || Double.isInfinite(rate)) {
                throw new IllegalArgumentException("scour rate " + rate + " 1/s in entry " + i + ", bin " + bin);
            }
            scourRate[i] = rate;
        }
    }

    /** What a spray hands in of one bin, kg/s. */
    static double sourceKgPerS(SprayHits spray, int bin, int bins) {
        double sum = 0;
        for (int i = 0; i < spray.fogCell().length; i++) {
            double kgPerS = spray.fogKgPerS()[i * bins + bin];
            if (!(kgPerS >= 0) || Double.isInfinite(kgPerS)) {
                throw new IllegalArgumentException("fog source " + kgPerS + " kg/s in entry " + i + ", bin " + bin);
            }
            sum += kgPerS;
        }
        return sum;
    }
}
