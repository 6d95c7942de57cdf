package baymist.cli;

import baymist.explain.Explain;
import baymist.explain.ExplainOptions;
import baymist.explain.Explanation;
import baymist.field.FieldOptions;
import baymist.field.ReachField;
import baymist.field.ReachFields;
import baymist.plan.GriddedPasses;
import baymist.plan.PlanOptions;
import baymist.plan.PlanProof;
import baymist.plan.PlanResult;
import baymist.plan.Planner;
import baymist.run.CheckResult;
import baymist.run.ReachOptions;
import baymist.run.ReachResult;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.run.VoxelStudy;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import baymist.scene.io.SceneReader;
import baymist.scene.io.SceneSchema;
import baymist.size.PlanningRuns;
import baymist.size.SizeRequest;
import baymist.size.SizeResult;
import baymist.size.SizeStudy;
import baymist.study.Planning;
import baymist.study.PlanningRun;
import baymist.study.StudyStore;
import baymist.verify.OrderStudy;
import baymist.verify.Verification;
import baymist.verify.VerificationReport;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the commands ask of the engine; one seam, so that exit codes and output can be tested without long runs. */
interface Stages {
    /** The engine itself. */
    Stages ENGINE = new Stages() {
        @Override
        public Scene read(Path file) {
            return SceneReader.read(file);
        }

        @Override
        public RunResult run(Scene scene, RunOptions options, RunObserver observer) {
            return Simulation.run(scene, options, observer);
        }

        @Override
        public RunResult converge(Scene scene, double ratio, RunOptions options, RunObserver observer) {
            return VoxelStudy.run(scene, ratio, options, observer);
        }

        @Override
        public CheckResult check(Scene scene, RunOptions options, RunObserver observer) {
            return Simulation.check(scene, options, observer);
        }

        @Override
        public WandSpec readWand(Path file) {
            return SceneReader.readWand(file);
        }

        @Override
        public ReachResult reach(Scene scene, ReachOptions reach, RunOptions options, RunObserver observer) {
            return Simulation.reach(scene, reach, options, observer);
        }

        @Override
        public Explanation explain(Scene scene, ExplainOptions asked, RunOptions options, RunObserver observer) {
            return Explain.of(scene, asked, options, observer);
        }

        @Override
        public SizeResult size(
                Scene scene,
                SizeRequest request,
                boolean verify,
                @Nullable Path keep,
                RunOptions options,
                RunObserver observer) {
            StudyStore store = keep == null ? StudyStore.none() : StudyStore.in(keep);
            PlanningRun planning = new PlanningRun(Planning.DEFAULT, store);
            SizeResult result = SizeStudy.run(scene, request, new PlanningRuns(planning, options, verify, observer));
            if (!store.words().isEmpty()) {
                observer.note(store.words());
            }
            return result;
        }

        @Override
        public ReachField field(Scene scene, FieldOptions field, RunOptions options, RunObserver observer) {
            return ReachFields.of(scene, field, options, observer);
        }

        @Override
        public PlanResult plan(Scene scene, PlanOptions plan, RunOptions options, RunObserver observer) {
            return Planner.plan(scene, plan, options, observer);
        }

        @Override
        public String schema() {
            return SceneSchema.json();
        }

        @Override
        public VerificationReport verify(Path folder, String caseId, RunOptions options, RunObserver observer) {
            return Verification.run(folder, caseId, options, observer);
        }

        @Override
        public List<OrderStudy.Row> orders() {
            return OrderStudy.run();
        }
    };

    Scene read(Path file);

    RunResult run(Scene scene, RunOptions options, RunObserver observer);

    RunResult converge(Scene scene, double ratio, RunOptions options, RunObserver observer);

    CheckResult check(Scene scene, RunOptions options, RunObserver observer);

    WandSpec readWand(Path file);

    ReachResult reach(Scene scene, ReachOptions reach, RunOptions options, RunObserver observer);

    Explanation explain(Scene scene, ExplainOptions asked, RunOptions options, RunObserver observer);

    SizeResult size(
            Scene scene,
            SizeRequest request,
            boolean verify,
            @Nullable Path keep,
            RunOptions options,
            RunObserver observer);

    ReachField field(Scene scene, FieldOptions field, RunOptions options, RunObserver observer);

    PlanResult plan(Scene scene, PlanOptions plan, RunOptions options, RunObserver observer);

    /** A plan against a hundred gridded passes. */
    default PlanProof prove(Scene scene, PlanOptions plan, RunOptions options, RunObserver observer) {
        return PlanProof.of(scene, plan, GriddedPasses.COUNT, options, observer);
    }

    String schema();

    VerificationReport verify(Path folder, String caseId, RunOptions options, RunObserver observer);

    List<OrderStudy.Row> orders();
}
