package baymist.field;

import baymist.airflow.AirField;
import baymist.fog.FogDestiny;
import baymist.fog.FogOperator;
import baymist.numeric.Workers;
import baymist.scene.Scene;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;

/**
 * Share of the fog let go in each cell that settles on a region, in frozen quiet air.
 *
 * @param hangS time that it hangs, s
 * @param byBin for each size, 0..1, [bins][cells]; read-only
 * @param share over all sizes as they are sprayed, 0..1, [cells]; read-only
 */
public record FogField(double hangS, double[][] byBin, double[] share) {
    /**
     * The field of a region.
     *
     * @param surfels the region
     * @param hangS time that fog hangs, s, above 0; infinite = until all has settled or left
     */
    public static FogField of(
            Scene scene, VoxelGrid grid, AirField air, SizeBins bins, int[] surfels, double hangS, Workers workers) {
        double[][] byBin = new double[bins.count()][];
        workers.forEach(byBin.length, b -> {
            FogOperator operator = FogOperator.of(
                    grid,
                    air,
                    bins,
                    b,
                    scene.product().densityKgPerM3(),
                    scene.ambient(),
                    scene.gravity().times(scene.gravityMPerS2()),
                    scene.walls());
            FogDestiny destiny = new FogDestiny(operator);
            double[] reaching = operator.rateOfReaching(surfels);
            byBin[b] = Double.isInfinite(hangS) ? destiny.ever(reaching) : destiny.within(reaching, hangS);
        });
        double[] share = new double[grid.cellCount()];
        for (int b = 0; b < byBin.length; b++) {
            for (int c = 0; c < share.length; c++) {
                share[c] += bins.share()[b] * byBin[b][c];
            }
        }
        return new FogField(hangS, byBin, share);
    }

    /** Of what a tip sprays, the part that becomes fog and then settles on the region, kg/s. */
    double caughtKgPerS(SprayHits hits) {
        double sum = 0;
        int n = byBin.length;
        for (int i = 0; i < hits.fogCell().length; i++) {
            for (int b = 0; b < n; b++) {
                sum += hits.fogKgPerS()[i * n + b] * byBin[b][hits.fogCell()[i]];
            }
        }
        return sum;
    }
}
