package baymist.run;

import baymist.access.Insertion;
import baymist.access.OutsideCheck;
import baymist.access.PassPlan;
import baymist.access.Stations;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.coverage.Coverage;
import baymist.coverage.CoverageAssessor;
import baymist.numeric.Workers;
import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** The whole program: from a scene to the surfaces that its passes miss. Read {@link #run} from top to bottom. */
public final class Simulation {
    private Simulation() {}

    /**
     * Runs a job.
     *
     * @throws baymist.problem.SceneException if the scene can't be built or sprayed as stated
     * @throws baymist.problem.SimulationException if the numbers go wrong
     * @throws RunCancelledException if the observer asks for it
     */
    public static RunResult run(Scene scene, RunOptions options, RunObserver observer) {
        return run(scene, options, observer, Structures.fresh());
    }

    /** The same; what other jobs of a study have built already is taken from there. */
    public static RunResult run(Scene scene, RunOptions options, RunObserver observer, Structures structures) {
        return run(scene, () -> structures.of(scene), true, options, observer);
    }

    /**
     * Runs a job that differs from one that was run in a few things, for the film alone. Cavity and voxels are taken over from the earlier
     * result where the scenes agree in what makes them; its film is the same to the bit as that of {@link #run}. Coverage is by area alone: without
     * seams, and regions without their way in.
     *
     * @throws baymist.problem.SceneException if the scene can't be built or sprayed as stated
     * @throws baymist.problem.SimulationException if the numbers go wrong
     * @throws RunCancelledException if the observer asks for it
     */
    public static RunResult film(Scene scene, RunResult earlier, RunOptions options, RunObserver observer) {
        Supplier<Structure> structure = () -> sameCavity(scene, earlier.scene())
                ? Structure.of(scene, earlier.cavity(), earlier.grid())
                : Structure.of(scene);
        return run(scene, structure, false, options, observer);
    }

    private static RunResult run(
            Scene scene, Supplier<Structure> built, boolean seams, RunOptions options, RunObserver observer) {
        StageClock clock = new StageClock(observer);
        try (Workers workers = new Workers(options.threads())) {
            clock.begin("sheets and openings");
            Structure structure = built.get();
            RunObserver steady = new SteadyObserver(observer);
            int rings = Ground.FIRST_RINGS;
            while (true) {
                RunResult result = run(scene, structure, rings, seams, options, workers, clock, steady);
                if (result != null) {
                    return result;
                }
                steady.again();
                rings++;
            }
        }
    }

    /** One try, or null if too much was carried beyond the computed bays and there is room for one ring of bays more. */
    private static @Nullable RunResult run(
            Scene scene,
            Structure structure,
            int rings,
            boolean seams,
            RunOptions options,
            Workers workers,
            StageClock clock,
            RunObserver observer) {
        try (MemoryBudget.Lease memory = options.memory().lease()) {
            Cavity cavity = structure.cavity();
            clock.begin("voxels");
            MemoryCheck.voxels(scene, cavity, options.memory());
            structure.grid(workers);

            clock.begin("wand");
            Approach.Ways ways = Approach.ways(scene, cavity);
            List<Insertion> insertions = ways.insertions();
            PassPlan plan = Stations.plan(scene, insertions).with(ways.findings());
            Timeline timeline = Timeline.of(scene, cavity, insertions, plan);

            clock.begin("spray");
            Ground ground = Ground.choose(
                    new Ground.Ask(scene, structure, timeline, options, memory, workers, observer), rings);
            VoxelGrid grid = ground.grid();
            Spraying spraying = ground.spraying();

            clock.begin("air, fog and film");
            Airing airing = Airing.plan(scene, grid, timeline, spraying, ground.openingAreaM2(), workers, observer);
            Job job = new Job(scene, cavity, ground, workers);
            double productKg = spraying.productKg(timeline) + job.fog().releasedKg();
            for (int m = 0; m < timeline.count(); m++) {
                Moment moment = timeline.moment(m);
                airing.carry(m, moment, job.fog(), spraying.hits(m), job::seen);
                job.film().advance(spraying.cast(m), job.fog(), moment);
                job.note(moment, spraying.hits(m), airing.peakGaugePa(m), spraying.beyondKgPerS(m));
                observer.moment(job.sight(moment, spraying.hits(m), insertions));
                observer.progress(timeline.progress(m), moment.endS());
                RunCancelledException.throwIf(observer.cancelled());
                if (ground.shouldGrow(job.carriedBeyondKg(), productKg)) {
                    observer.note(ground.growing(job.carriedBeyondKg(), productKg, moment.endS()));
                    return null;
                }
            }

            clock.begin("coverage");
            double[] build = job.film().buildM();
            Coverage coverage = seams
                    ? CoverageAssessor.assess(scene, cavity, grid, build, ground.seams(scene, cavity, workers))
                    : CoverageAssessor.assess(cavity, grid, build, scene.targets());
            return job.close(coverage, plan, insertions, spraying, airing, options, clock);
        }
    }

    /** Whether two scenes agree in all that cavity and voxels are made from. */
    private static boolean sameCavity(Scene a, Scene b) {
        return a.cavity().equals(b.cavity())
                && a.cuts().equals(b.cuts())
                && a.states().equals(b.states())
                && a.entries().equals(b.entries())
                && a.obstacles().equals(b.obstacles())
                && a.protectedItems().equals(b.protectedItems())
                && a.bayLabels().equals(b.bayLabels())
                && a.voxel().equals(b.voxel());
    }

    /** Looks at a scene without spraying: geometry, voxels, leaks, and how far each pass's wand goes. */
    public static CheckResult check(Scene scene, RunOptions options, RunObserver observer) {
        StageClock clock = new StageClock(observer);
        try (Workers workers = new Workers(options.threads())) {
            clock.begin("sheets and openings");
            Nozzles.sizes(scene);
            Cavity cavity = CavityBuilder.build(scene);
            clock.begin("voxels");
            MemoryCheck.voxels(scene, cavity, options.memory());
            VoxelGrid grid = BayNaming.named(Voxelizer.voxelize(cavity, scene.voxel(), workers), scene.bayLabels());
            clock.begin("wand");
            Approach.Ways ways = Approach.ways(scene, cavity);
            List<Finding> findings = new ArrayList<>(RunFindings.geometry(scene, cavity, grid));
            findings.addAll(ways.findings());
            findings.addAll(Nozzles.findings(scene));
            List<Insertion> insertions = ways.insertions().stream().distinct().toList();
            RunEstimate estimate = estimate(scene, cavity, grid, ways, options, findings);
            return new CheckResult(scene, cavity, grid, insertions, estimate, findings);
        }
    }

    /** What a run would take, or null where a pass can't be made: then an error says so, and there is nothing to reckon. */
    private static @Nullable RunEstimate estimate(
            Scene scene, Cavity cavity, VoxelGrid grid, Approach.Ways ways, RunOptions options, List<Finding> into) {
        List<Finding> refused = Stations.refusals(scene, ways.insertions());
        if (!refused.isEmpty()) {
            into.addAll(refused);
            into.addAll(OutsideCheck.findings(scene, ways.insertions()));
            return null;
        }
        PassPlan plan = Stations.plan(scene, ways.insertions());
        into.addAll(plan.findings());
        Timeline timeline = Timeline.of(scene, cavity, ways.insertions(), plan);
        PartPreview part = PartPreview.of(scene, cavity, grid, timeline, options.memory(), options.part());
        if (part != null) {
            into.add(part.computed());
            return part.estimate();
        }
        MemoryCheck.Reckoning takes = g -> RunEstimate.of(scene, g, timeline).memory();
        Finding large = MemoryCheck.finding(Severity.WARNING, scene, cavity, grid, takes, options.memory());
        if (large != null) {
            into.add(large);
        }
        return RunEstimate.of(scene, grid, timeline);
    }

    /** Looks where wands get to: every entry with every wand, search, sag, share of the cavity. Nothing is sprayed. */
    public static ReachResult reach(Scene scene, ReachOptions reach, RunOptions options, RunObserver observer) {
        StageClock clock = new StageClock(observer);
        try (Workers workers = new Workers(options.threads())) {
            clock.begin("sheets and openings");
            Cavity cavity = CavityBuilder.build(scene);
            clock.begin("voxels");
            MemoryCheck.voxels(scene, cavity, options.memory());
            VoxelGrid grid = Voxelizer.voxelize(cavity, scene.voxel(), workers);
            return new Reaching(scene, cavity, grid, reach).run(workers, observer);
        }
    }
}
