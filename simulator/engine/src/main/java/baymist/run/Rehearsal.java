package baymist.run;

import baymist.access.Insertion;
import baymist.access.PassPlan;
import baymist.access.Station;
import baymist.access.Stations;
import baymist.airflow.AirSettings;
import baymist.airflow.AirStage;
import baymist.airflow.AirWindow;
import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.coverage.CoverageAssessor;
import baymist.coverage.Fractions;
import baymist.coverage.ItemAssessor;
import baymist.film.FilmCreep;
import baymist.film.FilmRuns;
import baymist.film.FilmSettings;
import baymist.film.FilmState;
import baymist.fog.FogStepper;
import baymist.geom.Bvh;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.AirSpec;
import baymist.scene.DropletSpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.spray.DropletBins;
import baymist.spray.SizeBins;
import baymist.spray.SprayCaster;
import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Runs many jobs in one cavity, one after the other or side by side: sheets, voxels, ways in and casts of stations are made once and kept. The physics
 * is that of {@link Simulation#run}, in projected or still air; what a search does not look at (how sure the film is, bare regions, doses of bystanders) is left out.
 *
 * <p>Stations are moved to the next nanometre, so that those of passes that begin elsewhere are found again; the film differs from a run's by what that
 * moves. Safe to use by several threads; each job is computed by the one that asks, with the same bits however many there are.
 */
public final class Rehearsal {
    /** Stations are alike when their depths agree to this, m. */
    private static final double SAME_M = 1e-9;

    /** Casts kept; more are made anew each time (a cast takes some 100 kB). */
    private static final int MOST_CASTS = 4000;

    private final Scene scene;
    private final Cavity cavity;
    private final VoxelGrid grid;
    private final Bvh tree;
    private final double[] areasM2;
    private final MemoryBudget memory = MemoryBudget.ofHeap();
    private final Map<WayKey, Insertion> ways = new ConcurrentHashMap<>();
    private final Map<CastKey, SprayHits> casts = new ConcurrentHashMap<>();
    private final Map<DropletSpec, Jets> jets = new ConcurrentHashMap<>();

    private record WayKey(PassSpec pass) {}

    private record CastKey(WayKey way, DropletSpec sizes, double clockRad, double depthM, double travelM) {}

    private record Jets(SizeBins bins, SprayCaster caster) {}

    private Rehearsal(Scene scene, Structure structure, Workers workers) {
        this.scene = scene;
        this.cavity = structure.cavity();
        this.grid = structure.grid(workers);
        this.tree = structure.tree();
        this.areasM2 = OpenFractions.areasM2(cavity.openings());
    }

    /**
     * Film of a job.
     *
     * @param filmM wet build on each surfel, m, [surfels]
     * @param total shares of the structure's area
     * @param productM3 liquid sprayed, m³
     * @param triggerS time with the trigger held, s
     * @param itemsHit protected items with more film than their limit
     */
    public record Rehearsed(double[] filmM, Fractions total, double productM3, double triggerS, List<String> itemsHit) {
        public Rehearsed {
            itemsHit = List.copyOf(itemsHit);
        }
    }

    /**
     * Makes what all jobs share.
     *
     * @param scene at the resolution of the jobs; its passes do not matter
     * @param structures where sheets and voxels come from, shared with whatever else runs in them
     * @throws IllegalArgumentException if its air is resolved or fog hangs in it from the beginning
     */
    public static Rehearsal of(Scene scene, Structures structures, Workers workers) {
        if (scene.air().mode() == AirSpec.Mode.RESOLVED || scene.initialFog() != null) {
            throw new IllegalArgumentException(
                    "rehearsals are made in projected or still air, without fog at the start");
        }
        return new Rehearsal(scene, structures.of(scene), workers);
    }

    public Cavity cavity() {
        return cavity;
    }

    public VoxelGrid grid() {
        return grid;
    }

    public Scene scene() {
        return scene;
    }

    /**
     * One job.
     *
     * @param job the scene with other passes, waits or masks; the rest must be that of {@link #scene}
     * @throws SceneException if a pass can't be made or the cavity would be pumped up beyond its limit
     */
    public Rehearsed run(Scene job) {
        List<Insertion> insertions = job.passes().stream().map(this::way).toList();
        PassPlan plan = Stations.plan(job, insertions);
        Timeline timeline = Timeline.of(job, cavity, insertions, plan);
        DropletSpec sizes = Nozzles.sizes(job);
        Jets with = jets.computeIfAbsent(sizes, this::jets);
        List<AirWindow> windows = new ArrayList<>();
        for (Moment m : timeline.moments()) {
            Station station = m.station();
            SprayHits hits = station == null
                    ? null
                    : hits(job.passes().get(station.pass()), insertions.get(station.pass()), station, m, sizes, with);
            windows.add(new AirWindow(m.startS(), m.durationS(), hits, m.openFraction()));
        }
        AirStage air = AirStage.plan(AirSettings.of(job, job.ambient()), areasM2, grid, windows);
        if (air.peakGaugePa() > job.air().pressureLimitPa()) {
            throw new SceneException(
                    "RUN-003",
                    new SourcePlace(job.file(), 0, "air.pressure_limit"),
                    "the supply pumps the cavity up beyond its pressure limit because its vents are too small");
        }
        return carried(job, timeline, windows, air, with.bins());
    }

    private Rehearsed carried(Scene job, Timeline timeline, List<AirWindow> windows, AirStage air, SizeBins bins) {
        FilmState film = new FilmState(grid.surfels(), job.product(), ItemAssessor.masked(job, cavity, grid));
        var gravity = job.gravity().times(job.gravityMPerS2());
        FilmRuns runs = new FilmRuns(grid, job.product(), gravity, FilmSettings.of(job.product()));
        @Nullable FilmCreep creep = job.product().creepM() > 0 ? new FilmCreep(grid, job.product()) : null;
        double sprayedKg = 0;
        double triggerS = 0;
        try (Workers one = new Workers(1);
                MemoryBudget.Lease lease = memory.lease()) {
            lease.take(MemoryCheck.room(job, cavity, grid, memory));
            FogStepper fog = new FogStepper(
                    grid,
                    bins,
                    job.product().densityKgPerM3(),
                    job.ambient(),
                    gravity,
                    job.walls(),
                    job.transport(),
                    one);
            for (int m = 0; m < timeline.count(); m++) {
                SprayHits hits = windows.get(m).hits();
                double time = windows.get(m).durationS();
                fog.advance(air.field(m), hits, time);
                if (hits != null) {
                    film.addDirect(hits, time);
                    sprayedKg += hits.sprayedKgPerS() * time;
                    triggerS += time;
                }
                film.addFog(fog.depositedKg());
                runs.advance(film, timeline.moment(m).openFraction(), time);
                if (creep != null) {
                    creep.advance(film, time);
                }
            }
        }
        return rehearsed(job, film, sprayedKg, triggerS);
    }

    private Rehearsed rehearsed(Scene job, FilmState film, double sprayedKg, double triggerS) {
        double[] build = new double[film.count()];
        for (int s = 0; s < build.length; s++) {
            build[s] = film.wetBuildM(s);
        }
        List<String> hit = job.protectedItems().isEmpty()
                ? List.of()
                : ItemAssessor.assess(job, cavity, grid, build).stream()
                        .filter(i -> i.exceeded())
                        .map(i -> i.name())
                        .toList();
        return new Rehearsed(
                build,
                CoverageAssessor.total("all surfaces", grid, build, job.targets()),
                sprayedKg / job.product().densityKgPerM3(),
                triggerS,
                hit);
    }

    private Insertion way(PassSpec pass) {
        return ways.computeIfAbsent(
                key(pass),
                k -> Approach.ways(scene.withPasses(List.of(k.pass())), cavity)
                        .insertions()
                        .get(0));
    }

    /** What a way depends on: entry, wand, aim, sag and the deepest point. */
    private WayKey key(PassSpec pass) {
        return new WayKey(new PassSpec(
                "way",
                pass.entry(),
                pass.wand(),
                pass.fromDepthM(),
                0,
                1,
                0,
                0,
                0,
                pass.aim(),
                pass.sag(),
                SourcePlace.of(scene.file())));
    }

    private SprayHits hits(PassSpec pass, Insertion in, Station station, Moment moment, DropletSpec sizes, Jets with) {
        double depth = SAME_M * Math.rint(station.depthM() / SAME_M);
        double travel = SAME_M * Math.rint(station.travelM() / SAME_M);
        CastKey key = new CastKey(key(pass), sizes, pass.clockRad(), depth, travel);
        @Nullable SprayHits kept = casts.get(key);
        if (kept != null) {
            return kept;
        }
        Station at = new Station(0, in.path().tip(depth, pass.clockRad()), 0, station.durationS(), depth, travel);
        SprayHits made = with.caster().cast(at, Approach.wand(scene, pass), moment.openFraction());
        if (casts.size() < MOST_CASTS) {
            casts.put(key, made);
        }
        return made;
    }

    private Jets jets(DropletSpec sizes) {
        SizeBins bins = DropletBins.of(sizes, scene.sizeBins());
        return new Jets(bins, Spraying.caster(scene, cavity, grid, tree, bins, scene.raysPerJet()));
    }
}
