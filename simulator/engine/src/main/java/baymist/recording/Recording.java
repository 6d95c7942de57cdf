package baymist.recording;

import baymist.run.RunResult;
import baymist.scene.ProductSpec;
import baymist.voxel.SurfelSet;
import java.util.List;
import java.util.Locale;

/**
 * A run that can be looked at over time. Read-only: arrays are shared and must not be written to.
 *
 * <p>Film and fog are known at the frames and taken straight between them; curves are known at every moment; the wand is known at all
 * times.
 */
public final class Recording {
    private final RunResult result;
    private final List<Frame> frames;
    private final double[] timesS;
    private final FogCells fog;
    private final Curves curves;
    private final WandTrack wand;
    private final double[] arrivedDirectKg;
    private final double[] arrivedFogKg;
    private final double misplacedKg;

    Recording(
            RunResult result,
            List<Frame> frames,
            FogCells fog,
            Curves curves,
            WandTrack wand,
            double[] arrivedDirectKg,
            double[] arrivedFogKg,
            double misplacedKg) {
        this.result = result;
        this.frames = List.copyOf(frames);
        this.timesS = frames.stream().mapToDouble(Frame::timeS).toArray();
        this.fog = fog;
        this.curves = curves;
        this.wand = wand;
        this.arrivedDirectKg = arrivedDirectKg;
        this.arrivedFogKg = arrivedFogKg;
        this.misplacedKg = misplacedKg;
    }

    /** What the run found; the same as without a recording. */
    public RunResult result() {
        return result;
    }

    /** Number of frames, 2 or more. */
    public int frames() {
        return timesS.length;
    }

    /** Times of the frames, s, ascending; the first is 0, the last the end of the job. */
    public double[] timesS() {
        return timesS;
    }

    /** End of the job, s. */
    public double endS() {
        return timesS[timesS.length - 1];
    }

    public Frame frame(int frame) {
        return frames.get(frame);
    }

    /** Last frame at or before a time; the first for times before it. */
    public int frameAt(double timeS) {
        return Times.at(timesS, timeS);
    }

    /** Wet film build in a frame, m, [surfels]. */
    public float[] filmM(int frame) {
        return frames.get(frame).filmM();
    }

    /** Fog in a frame, kg/m³, [blocks of {@link #fog()}]. */
    public float[] fogKgPerM3(int frame) {
        return frames.get(frame).fogKgPerM3();
    }

    /** Wet film build at a time, m, [surfels]; a new array. */
    public float[] filmAt(double timeS) {
        return Times.mix(timesS, timeS, (low, high, w) -> mixed(filmM(low), filmM(high), w));
    }

    /** Fog at a time, kg/m³, [blocks]; a new array. */
    public float[] fogAt(double timeS) {
        return Times.mix(timesS, timeS, (low, high, w) -> mixed(fogKgPerM3(low), fogKgPerM3(high), w));
    }

    private static float[] mixed(float[] low, float[] high, double w) {
        float[] out = low.clone();
        if (w > 0) {
            for (int n = 0; n < out.length; n++) {
                // never beyond the two ends
                out[n] = (float) ((1 - w) * low[n] + w * high[n]);
            }
        }
        return out;
    }

    /** First frame whose film on a surfel is at least {@code filmM}, or -1. */
    public int firstFrameWith(int surfel, double filmM) {
        for (int f = 0; f < frames(); f++) {
            if (filmM(f)[surfel] >= filmM) {
                return f;
            }
        }
        return -1;
    }

    public FogCells fog() {
        return fog;
    }

    public Curves curves() {
        return curves;
    }

    /** The wand at a time, between stations too. */
    public WandMoment wandAt(double timeS) {
        return wand.at(timeS);
    }

    /** What jets threw on each surfel, kg, [surfels], wherever it ran afterwards. */
    public double[] arrivedDirectKg() {
        return arrivedDirectKg;
    }

    /** What fog left on each surfel, kg, [surfels], wherever it ran afterwards. */
    public double[] arrivedFogKg() {
        return arrivedFogKg;
    }

    /** What ran, dripped or crept to a surfel less what ran away from it, kg; film = direct + fog + this. */
    public double movedKg(int surfel) {
        SurfelSet surfels = result.grid().surfels();
        ProductSpec product = result.scene().product();
        double filmKg = result.filmM()[surfel] * product.densityKgPerM3() * surfels.areaM2()[surfel];
        return filmKg - arrivedDirectKg[surfel] - arrivedFogKg[surfel];
    }

    /** What was kept, in sentences for those who look at it. */
    public String statement() {
        int moments = curves.count();
        String kept = moments == frames()
                ? String.format(Locale.ROOT, "All %d moments of the run are kept.", moments)
                : String.format(
                        Locale.ROOT,
                        "%d of %d moments of the run are kept; a moment left out lies within %.2g %% of what was"
                                + " sprayed from the straight line between its neighbours.",
                        frames(),
                        moments,
                        100 * misplacedKg / Math.max(result.ledger().sprayedKg(), Double.MIN_NORMAL));
        return kept + " " + fog.sentence();
    }
}
