package baymist.field;

import baymist.access.ClockAngle;
import baymist.access.Surroundings;
import baymist.access.TipPose;
import baymist.airflow.AirField;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.run.CheckResult;
import baymist.run.Nozzles;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SupplySpec;
import baymist.scene.WandSpec;
import baymist.spray.DropletBins;
import baymist.spray.JetReach;
import baymist.spray.JetSource;
import baymist.spray.SizeBins;
import baymist.spray.TipFlow;
import baymist.spray.TipJets;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Makes reach fields; read {@link #of} from top to bottom. */
public final class ReachFields {
    /** Shortest and longest time that a pose is held for its forward run, s. */
    private static final double LEAST_HOLD_S = 1;

    private static final double MOST_HOLD_S = 20;

    private ReachFields() {}

    /**
     * The reach field of a region at planning resolution.
     *
     * @throws SceneException if the scene can't be run, has no wand, or has no such region
     */
    public static ReachField of(Scene stated, FieldOptions options, RunOptions run, RunObserver observer) {
        if (stated.wands().isEmpty()) {
            throw new SceneException(
                    "FLD-004",
                    SourcePlace.of(stated.file()),
                    "the scene has no `wands`, so there is no jet to look with; add one");
        }
        Scene scene = options.planning().of(stated, CavityBuilder.build(stated));
        RunResult before = null;
        Cavity cavity;
        VoxelGrid grid;
        if (scene.passes().isEmpty()) {
            CheckResult check = Simulation.check(scene, run, observer);
            cavity = check.cavity();
            grid = check.grid();
        } else {
            before = Simulation.run(scene, run, observer);
            cavity = before.cavity();
            grid = before.grid();
        }
        FieldRegion region = Regions.find(options.region(), scene, cavity, grid, before);
        try (Workers workers = new Workers(run.threads())) {
            List<PassSpec> holds = Holds.candidates(scene, region);
            SizeBins bins = DropletBins.of(
                    Nozzles.sizes(scene.passes().isEmpty() ? scene.withPasses(holds) : scene), scene.sizeBins());

            observer.stage("reach field: fog");
            AirField air = QuietAir.of(scene, cavity, grid);
            double hangS = scene.hangS() > 0 ? scene.hangS() : Double.POSITIVE_INFINITY;
            FogField fog = FogField.of(scene, grid, air, bins, region.surfels(), hangS, workers);

            observer.stage("reach field: jets");
            Surroundings around = Surroundings.of(cavity, scene);
            JetField jet = jets(scene, grid, around, region, bins, workers);

            observer.stage("reach field: poses");
            PoseSearch search = new PoseSearch(scene, cavity, grid, region, fog, bins, workers);
            List<PoseShare> poses = new ArrayList<>(search.best(holds, observer));
            PassShare pass = search.bestPass();
            Confirmation held = null;
            Confirmation drawn = null;
            if (!poses.isEmpty()) {
                PoseShare best = poses.get(0).holding(holdS(scene, region, poses.get(0)));
                poses.set(0, best);
                double promised =
                        best.share() * best.sprayedKgPerS() * best.hold().holdS();
                Confirming confirming = new Confirming(scene, grid, region, before, run, observer);
                held = options.confirm() ? confirming.with(best.hold(), promised) : null;
                drawn = options.confirm() && pass != null ? confirming.with(pass.pass(), Double.NaN) : null;
            }
            return new ReachField(
                    scene, options.planning(), cavity, grid, region, jet, fog, poses, held, pass, drawn);
        }
    }

    /** Field of the strongest jet of the scene's wands. */
    private static JetField jets(
            Scene scene, VoxelGrid grid, Surroundings around, FieldRegion region, SizeBins bins, Workers workers) {
        JetSource strongest = null;
        String whose = "";
        List<WandSpec> wands = new ArrayList<>(scene.wands().values());
        wands.sort(Comparator.comparing(WandSpec::name));
        TipPose anywhere = new TipPose(Vec3.ZERO, Vec3.X, ClockAngle.pin(Vec3.X, 0));
        for (WandSpec wand : wands) {
            SupplySpec atTip = TipFlow.of(scene.supply(), wand, scene.product(), scene.ambient())
                    .supply();
            for (JetSource jet : TipJets.of(wand.tip(), anywhere, atTip, scene.ambient())) {
                if (strongest == null || jet.momentumN() > strongest.momentumN()) {
                    strongest = jet;
                    whose = wand.name();
                }
            }
        }
        if (strongest == null || !(strongest.momentumN() > 0)) {
            int n = grid.cellCount();
            return new JetField(whose, new double[n], new double[3 * n], new double[n]);
        }
        double range = grid.sizeM().length()
                * Math.hypot(grid.nx(), Math.hypot(grid.ny(), grid.nz()));
        JetReach reach = JetReach.of(strongest, bins, scene.product(), scene.ambient(), range);
        return JetField.of(grid, around, region, reach, whose, workers);
    }

    /** Time after which the region has its target build on the average, to the half second, within limits. */
    private static double holdS(Scene scene, FieldRegion region, PoseShare pose) {
        double wanted = scene.targets().buildM() * region.areaM2() * scene.product().densityKgPerM3();
        double time = wanted / Math.max(pose.share() * pose.sprayedKgPerS(), 1e-12);
        double rounded = 0.5 * Math.ceil(2 * time);
        return Math.max(LEAST_HOLD_S, Math.min(MOST_HOLD_S, rounded));
    }

}
