package baymist.study;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.run.Structures;
import baymist.scene.CompareSpec;
import baymist.scene.DrillingSpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.WandSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Which access holes would help a job, one after the other. In each round the places that keep {@link HoleRules} and lie nearest
 * to bare surface are tried with
 * each wand that a drill passes: the job gets one more pass through the hole. The best is kept; it ends when the next one would
 * add less than
 * the scene's share, or no place is left.
 */
public final class HoleStudy {
    /** Places tried in a round, each with each wand. */
    static final int TRIED = 6;

    private final PlanningRun runs;
    private final int atOnce;

    public HoleStudy(PlanningRun runs, int atOnce) {
        this.runs = runs;
        this.atOnce = atOnce;
    }

    /**
     * A hole that was chosen.
     *
     * @param aloneGain share of the surface that it adds to the job as it stands
     * @param gain share that it adds after the holes before it
     * @param after the job with it and those before it
     */
    public record Chosen(HoleSite site, String name, String wand, double aloneGain, double gain, StudyResult after) {}

    /**
     * What came of it.
     *
     * @param places number of places that keep the rules, all drills together
     * @param tried runs with a hole
     * @param stop why no further hole is proposed
     * @param job the scene with all chosen holes and their passes
     */
    public record Holes(
            Scene scene,
            Planning planning,
            StudyResult before,
            List<Chosen> chosen,
            int places,
            int tried,
            String stop,
            Scene job) {
        public Holes {
            chosen = List.copyOf(chosen);
        }

        /** The job with all its holes. */
        public StudyResult after() {
            return chosen.isEmpty() ? before : chosen.get(chosen.size() - 1).after();
        }
    }

    /**
     * Looks for holes.
     *
     * @throws SceneException DRL-002 if the scene has no `drilling`, DRL-001 for unknown parts
     */
    public Holes run(Scene scene, Comparison.Watch watch) {
        DrillingSpec spec = scene.studies().drilling();
        if (spec == null) {
            throw new SceneException(
                    "DRL-002",
                    baymist.problem.SourcePlace.of(scene.file()),
                    "the scene has no `drilling` block, so no part may be drilled; name the parts that may, such as"
                            + " `drilling: {parts: [lower skin]}`");
        }
        StudyResult before = runs.run(scene, atOnce);
        List<Option> options = options(scene, spec);
        List<Chosen> chosen = new ArrayList<>();
        Scene job = scene;
        StudyResult now = before;
        int tried = 0;
        String stop = options.isEmpty() ? noPlace(scene, spec) : "";
        while (stop.isEmpty()) {
            if (chosen.size() >= spec.most()) {
                stop = "the scene allows no more than " + spec.most();
                break;
            }
            List<Option> round = nearest(job, now, options, chosen);
            String name = "access hole " + (chosen.size() + 1);
            List<Scene> jobs = new ArrayList<>();
            for (Option o : round) {
                jobs.add(with(job, o, name));
            }
            List<StudyResult> results = runs.runAll(jobs, atOnce, PlanningRun.Watch.NONE);
            tried += jobs.size();
            int best = best(results, now);
            double gain = best < 0 ? 0 : results.get(best).reached() - now.reached();
            if (best < 0 || gain < spec.leastGain()) {
                stop = String.format(
                        java.util.Locale.ROOT,
                        "the next hole would add %.1f %% of the surface, less than %.1f %%",
                        100 * gain,
                        100 * spec.leastGain());
                break;
            }
            Option o = round.get(best);
            double alone = chosen.isEmpty()
                    ? gain
                    : runs.run(with(scene, o, name), atOnce).reached() - before.reached();
            now = results.get(best);
            job = jobs.get(best);
            chosen.add(new Chosen(o.site(), name, o.wand(), alone, gain, now));
            watch.progress(chosen.size() / (double) spec.most(), o.site().words());
        }
        return new Holes(scene, runs.planning(), before, chosen, options.size(), tried, stop, job);
    }

    private static String noPlace(Scene scene, DrillingSpec spec) {
        boolean fits = scene.wands().values().stream().anyMatch(w -> DrillSize.passing(spec, w) != null);
        return fits
                ? "no place in the parts that may be drilled keeps all rules"
                : "no wand at hand passes any hole that may be drilled (largest: "
                        + Math.rint(1e5
                                        * DrillSize.allowed(spec)
                                                .get(DrillSize.allowed(spec).size() - 1)
                                                .diameterM())
                                / 100
                        + " mm)";
    }

    private record Option(HoleSite site, String wand) {}

    private List<Option> options(Scene scene, DrillingSpec spec) {
        Cavity cavity = runs.structures().cavity(scene);
        List<Option> all = new ArrayList<>();
        try (Workers workers = new Workers(atOnce)) {
            VoxelGrid grid = grid(scene, workers);
            HoleRules rules = new HoleRules(scene, spec, cavity, grid);
            for (String name : scene.wands().keySet().stream().sorted().toList()) {
                WandSpec wand = java.util.Objects.requireNonNull(scene.wands().get(name));
                DrillSize drill = DrillSize.passing(spec, wand);
                if (drill != null) {
                    rules.sites(drill).forEach(s -> all.add(new Option(s, name)));
                }
            }
        }
        return all;
    }

    private VoxelGrid grid(Scene job, Workers workers) {
        Structures structures = runs.structures();
        return structures.of(runs.planning().of(job, structures.cavity(job))).grid(workers);
    }

    /** Options that see most bare surface near by, spread out; each place weighs bare area by 1 / (r² + a²) with a = the grid. */
    private List<Option> nearest(Scene job, StudyResult now, List<Option> options, List<Chosen> chosen) {
        try (Workers workers = new Workers(atOnce)) {
            VoxelGrid grid = grid(job, workers);
            List<Option> open = new ArrayList<>(options.stream()
                    .filter(o -> chosen.stream().allMatch(c -> HoleRules.apart(o.site(), c.site())))
                    .toList());
            double[] pull = new double[open.size()];
            workers.forEach(
                    pull.length, i -> pull[i] = pull(grid, now, job, open.get(i).site()));
            List<Integer> order = new ArrayList<>();
            for (int i = 0; i < pull.length; i++) {
                order.add(i);
            }
            order.sort(Comparator.comparingDouble((Integer i) -> -pull[i]).thenComparingInt(i -> i));
            return spread(order.stream().map(open::get).toList());
        }
    }

    /** The first ones, no two of a wand nearer than three grid spacings while there are others. */
    private static List<Option> spread(List<Option> ordered) {
        List<Option> kept = new ArrayList<>();
        for (double far : new double[] {0.15, 0}) {
            for (Option o : ordered) {
                boolean near = kept.stream()
                        .anyMatch(k -> k.wand().equals(o.wand())
                                && (k.equals(o)
                                        || k.site().centreM().distance(o.site().centreM()) < far));
                if (!near && kept.size() < TRIED) {
                    kept.add(o);
                }
            }
        }
        return kept;
    }

    private static double pull(VoxelGrid grid, StudyResult now, Scene job, HoleSite site) {
        SurfelSet surfels = grid.surfels();
        double haze = job.targets().hazeM();
        Vec3 p = site.centreM().plus(0.02, site.inward());
        double sum = 0;
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isStructure(s) && now.filmM()[s] < haze) {
                double x = surfels.centreX()[s] - p.x();
                double y = surfels.centreY()[s] - p.y();
                double z = surfels.centreZ()[s] - p.z();
                sum += surfels.areaM2()[s] / (x * x + y * y + z * z + 2.5e-3);
            }
        }
        return sum;
    }

    /** The job with one more hole and a pass through it, as `compare` states passes. */
    private static Scene with(Scene job, Option o, String name) {
        Scene drilled = new Change.RoundHole(
                        name,
                        o.site().part(),
                        o.site().centreM(),
                        o.site().drill().diameterM())
                .apply(job);
        CompareSpec spec = job.studies().compare();
        WandSpec wand = java.util.Objects.requireNonNull(job.wands().get(o.wand()));
        List<PassSpec> passes = new ArrayList<>(drilled.passes());
        double from =
                Double.isInfinite(spec.fromDepthM()) ? spec.fromDepthM() : Math.min(spec.fromDepthM(), wand.lengthM());
        passes.add(new PassSpec(
                name,
                name,
                o.wand(),
                from,
                Math.min(spec.toDepthM(), wand.lengthM()),
                spec.drawBackMPerS(),
                0,
                spec.holdS(),
                0,
                spec.place()));
        return SceneEdit.of(drilled).passes(passes).done();
    }

    private static int best(List<StudyResult> results, StudyResult now) {
        int best = -1;
        for (int i = 0; i < results.size(); i++) {
            StudyResult r = results.get(i);
            boolean more = r.done() && r.items().size() <= now.items().size();
            if (more && (best < 0 || Compared.score(r) > Compared.score(results.get(best)))) {
                best = i;
            }
        }
        return best;
    }
}
