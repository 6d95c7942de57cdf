package baymist.explain;

import baymist.access.Station;
import baymist.run.ForwardingObserver;
import baymist.run.RunMoment;
import baymist.run.RunObserver;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Looks on while a job runs and keeps what a later question about any place may need: fog in each cell, friction on each surfel, fog through
 * each inner opening, moment by moment. For planning resolution; a fine grid would fill the memory. Changed only by the run that it watches.
 */
final class RunHistory extends ForwardingObserver {
    /**
     * One moment.
     *
     * @param fogKgPerM3 fog at its end, kg/m³, [cells]
     * @param frictionMPerS friction speed, m/s, [surfels]
     * @param throughKgPerS fog from the low to the high side of each opening's faces, kg/s, [openings]
     * @param hits what the jets did, or null
     */
    record Kept(
            double startS,
            double durationS,
            @Nullable Station station,
            float[] fogKgPerM3,
            float[] frictionMPerS,
            double[] throughKgPerS,
            double[] openFraction,
            @Nullable SprayHits hits) {
        double endS() {
            return startS + durationS;
        }
    }

    private final List<Kept> moments = new ArrayList<>();
    private @Nullable SizeBins bins;
    private @Nullable VoxelGrid grid;

    RunHistory(RunObserver whole) {
        super(whole);
    }

    @Override
    public void moment(RunMoment now) {
        bins = now.bins();
        grid = now.grid();
        float[] fog = new float[now.grid().cellCount()];
        for (int c = 0; c < fog.length; c++) {
            fog[c] = (float) now.concentrationKgPerM3(c);
        }
        double[] friction = now.air().frictionSpeedMPerS();
        float[] kept = new float[friction.length];
        for (int s = 0; s < kept.length; s++) {
            kept[s] = (float) friction[s];
        }
        moments.add(new Kept(
                now.startS(),
                now.durationS(),
                now.station(),
                fog,
                kept,
                through(now, fog),
                now.air().openFraction(),
                now.hits()));
    }

    /** Fog that wind and eddies carry through inner openings as it stands at the end of the moment. */
    private static double[] through(RunMoment now, float[] fog) {
        FaceSet faces = now.grid().faces();
        double[] sum = new double[now.cavity().openings().size()];
        double[] flux = now.air().faceFluxM3PerS();
        double[] eddy = now.air().eddyDiffusivityM2PerS();
        for (int e = 0; e < faces.count(); e++) {
            int opening = faces.opening()[e];
            if (opening < 0) {
                continue;
            }
            int low = faces.low()[e];
            int high = faces.high()[e];
            double open = now.air().openFraction()[opening];
            double k = eddy[low] + eddy[high] > 0 ? 2 * eddy[low] * eddy[high] / (eddy[low] + eddy[high]) : 0;
            double exchange = k * faces.areaM2()[e] * open / now.grid().sizeM().get(faces.axis()[e]);
            sum[opening] += flux[e] * (flux[e] > 0 ? fog[low] : fog[high]) + exchange * (fog[low] - fog[high]);
        }
        return sum;
    }

    List<Kept> moments() {
        return moments;
    }

    /** Droplet sizes of the run that was watched. */
    SizeBins bins() {
        SizeBins seen = bins;
        if (seen == null) {
            throw new IllegalStateException("nothing has been watched yet");
        }
        return seen;
    }

    /** Cells of the run that was watched, its arrays are by them. */
    VoxelGrid grid() {
        VoxelGrid seen = grid;
        if (seen == null) {
            throw new IllegalStateException("nothing has been watched yet");
        }
        return seen;
    }
}
