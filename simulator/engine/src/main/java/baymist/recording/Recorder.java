package baymist.recording;

import baymist.access.Insertion;
import baymist.access.Station;
import baymist.run.ForwardingObserver;
import baymist.run.RunMoment;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.run.TimePoint;
import baymist.scene.InitialFog;
import baymist.scene.Scene;
import baymist.spray.SprayHits;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Looks on while a job runs and keeps what is needed to show it over time. Changed only by the run that it watches. */
public final class Recorder extends ForwardingObserver {
    private final Scene scene;
    private final RecordingOptions options;
    private final LiveFilm live;
    private final List<WandTrack.Stretch> stretches = new ArrayList<>();
    private final List<double[]> curve = new ArrayList<>();
    private @Nullable Sheet sheet;

    /** What is known once the grid is: set at the end of the first moment. */
    private record Sheet(
            VoxelGrid grid, FogCells cells, FrameKeeper frames, double[] arrivedDirectKg, double[] arrivedFogKg) {}

    /**
     * @param whole hears everything that the run says, and can cancel it
     * @param live is shown the film on the way
     */
    public Recorder(Scene scene, RecordingOptions options, RunObserver whole, LiveFilm live) {
        super(whole);
        this.live = live;
        this.scene = scene;
        this.options = options;
    }

    /**
     * Runs a job and keeps it.
     *
     * @throws baymist.problem.SceneException if the scene can't be built or sprayed as stated
     * @throws baymist.problem.SimulationException if the numbers go wrong
     * @throws baymist.run.RunCancelledException if the observer asks for it
     */
    public static Recording run(Scene scene, RunOptions run, RecordingOptions options, RunObserver observer) {
        return run(scene, run, options, observer, LiveFilm.NONE);
    }

    /** The same with film shown on the way. */
    public static Recording run(
            Scene scene, RunOptions run, RecordingOptions options, RunObserver observer, LiveFilm live) {
        Recorder recorder = new Recorder(scene, options, observer, live);
        return recorder.recording(Simulation.run(scene, run, recorder));
    }

    @Override
    public void again() {
        sheet = null;
        stretches.clear();
        curve.clear();
        super.again();
    }

    @Override
    public void moment(RunMoment now) {
        Sheet on = sheet;
        if (on == null) {
            on = begin(now.grid());
            sheet = on;
        }
        Station station = now.station();
        Insertion insertion = now.insertion();
        if (station != null && insertion != null) {
            stretches.add(new WandTrack.Stretch(station, insertion));
        }
        SprayHits hits = now.hits();
        if (hits != null) {
            for (int i = 0; i < hits.hitSurfel().length; i++) {
                on.arrivedDirectKg()[hits.hitSurfel()[i]] += hits.hitKgPerS()[i] * now.durationS();
            }
        }
        SurfelSet surfels = on.grid().surfels();
        float[] film = new float[surfels.count()];
        double onItemsKg = 0;
        for (int s = 0; s < film.length; s++) {
            film[s] = (float) now.filmM(s);
            on.arrivedFogKg()[s] = now.depositedKg(s);
            onItemsKg += surfels.isProtected(s) ? now.filmKg(s) : 0;
        }
        on.frames().add(new Frame(now.endS(), film, fog(now, on.cells())));
        curve.add(new double[] {now.sprayedKg(), onItemsKg});
        live.film(now.cavity(), on.grid(), now.endS(), film);
        super.moment(now);
    }

    private Sheet begin(VoxelGrid grid) {
        FogCells cells = FogCells.of(grid, options.maxFogCells());
        SurfelSet surfels = grid.surfels();
        long each = 4L * (surfels.count() + cells.count());
        int most = (int) Math.max(2, Math.min(options.frames(), options.maxBytes() / Math.max(each, 1)));
        double density = scene.product().densityKgPerM3();
        double[] kgPerM = new double[surfels.count()];
        for (int s = 0; s < kgPerM.length; s++) {
            kgPerM[s] = density * surfels.areaM2()[s];
        }
        FrameKeeper frames = new FrameKeeper(most, kgPerM, cells.volumeM3());
        frames.add(new Frame(0, new float[surfels.count()], released(grid, cells)));
        return new Sheet(grid, cells, frames, new double[surfels.count()], new double[surfels.count()]);
    }

    /** Fog that is there from the start. */
    private float[] released(VoxelGrid grid, FogCells cells) {
        float[] fog = new float[cells.count()];
        InitialFog initial = scene.initialFog();
        if (initial == null) {
            return fog;
        }
        if (initial.pointM() == null) {
            Arrays.fill(fog, (float) initial.concentrationKgPerM3());
            return fog;
        }
        int block = cells.ofCell()[grid.cellHolding(initial.pointM())];
        fog[block] = (float) (initial.pointMassKg() / cells.volumeM3()[block]);
        return fog;
    }

    private static float[] fog(RunMoment now, FogCells cells) {
        double[] sum = new double[cells.count()];
        for (int c = 0; c < cells.ofCell().length; c++) {
            double volume = Math.max(now.grid().volumeM3(c), Double.MIN_NORMAL);
            sum[cells.ofCell()[c]] += volume * now.concentrationKgPerM3(c);
        }
        float[] mean = new float[sum.length];
        for (int b = 0; b < mean.length; b++) {
            mean[b] = (float) (sum[b] / cells.volumeM3()[b]);
        }
        return mean;
    }

    /** What was kept of the run that was watched. */
    public Recording recording(RunResult result) {
        Sheet on = sheet;
        if (on == null) {
            on = begin(result.grid());
            on.frames().add(new Frame(0, new float[result.grid().surfels().count()], released(on.grid(), on.cells())));
        }
        return new Recording(
                result,
                on.frames().frames(),
                on.cells(),
                curves(result.history()),
                new WandTrack(scene, result.cavity(), stretches),
                on.arrivedDirectKg(),
                on.arrivedFogKg(),
                on.frames().worst());
    }

    private Curves curves(List<TimePoint> history) {
        int n = history.size();
        double[] sprayed = new double[n];
        double[] items = new double[n];
        double released = history.get(0).airborneKg();
        for (int i = 0; i < n; i++) {
            sprayed[i] = released + (i == 0 ? 0 : curve.get(i - 1)[0]);
            items[i] = i == 0 ? 0 : curve.get(i - 1)[1];
        }
        return new Curves(
                history.stream().mapToDouble(TimePoint::timeS).toArray(),
                sprayed,
                history.stream().mapToDouble(TimePoint::airborneKg).toArray(),
                history.stream().mapToDouble(TimePoint::filmKg).toArray(),
                history.stream().mapToDouble(TimePoint::oversprayKg).toArray(),
                history.stream().mapToDouble(TimePoint::reached).toArray(),
                items);
    }
}
