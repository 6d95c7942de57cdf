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
 * @param spread share of each of the region's surfels if an even fog settled on it, summing to 1, [region's surfels]; read-only
 */
public record FogField(double hangS, double[][] byBin, double[] share, double[] spread) {
    /**
     * The field of a region.
     *
     * @param surfels the region
     * @param hangS time that fog hangs, s, above 0; infinite = until all has settled or left
     */
    public static FogField of(
            Scene scene, VoxelGrid grid, AirField air, SizeBins bins, int[] surfels, double hangS, Workers workers) {
        double[][] byBin = new double[bins.count()][];
        double[][] takes = new double[bins.count()][surfels.length];
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
            for (int i = 0; i < surfels.length; i++) {
                takes[b][i] =
                        operator.wallPerS(surfels[i]) * grid.volumeM3(grid.surfels().cell()[surfels[i]]);
            }
            byBin[b] = Double.isInfinite(hangS) ? destiny.ever(reaching) : destiny.within(reaching, hangS);
        });
        double[] share = new double[grid.cellCount()];
        for (int b = 0; b < byBin.length; b++) {
            for (int c = 0; c < share.length; c++) {
                share[c] += bins.share()[b] * byBin[b][c];
            }
        }
        return new FogField(hangS, byBin, share, spread(takes, bins));
    }

    private static double[] spread(double[][] takes, SizeBins bins) {
        double[] spread = new double[takes[0].length];
        double all = 0;
        for (int b = 0; b < takes.length; b++) {
            for (int i = 0; i < spread.length; i++) {
                spread[i] += bins.share()[b] * takes[b][i];
                all += bins.share()[b] * takes[b][i];
            }
        }
        for (int i = 0; i < spread.length; i++) {
            spread[i] = all > 0 ? spread[i] / all : 1.0 / spread.length;
        }
        return spread;
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
