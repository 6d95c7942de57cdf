package baymist.cli;

import baymist.plan.DoseSettings;
import baymist.plan.DoseStore;
import baymist.plan.PlanLimits;
import baymist.plan.PlanOptions;
import baymist.plan.PlanResult;
import baymist.report.PlanReport;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.scene.io.SceneWriter;
import baymist.study.Planning;
import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code baymist plan}: which passes, in which order? */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Plan the passes: entries, wands, depths, clock angles and draw-back rates for most coverage.",
        description = {
            "",
            "Computes what each station of each wand gives every surface in a second of trigger, puts passes together that"
                    + " leave least bare within the product that the scene's own passes take, runs the plan, corrects what the run"
                    + " shows otherwise, and verifies the best plan in a full run.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist plan scenes/wing-box.yaml",
            "  baymist plan scenes/wing-box.yaml --output plan.yaml && baymist run plan.yaml",
            "  baymist plan scenes/wing-box.yaml --cache out/doses         stopped and begun again, it goes on",
            "  baymist plan scenes/wing-box.yaml --trigger 60 --json | jq .verified.reached"
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "2:the scene or the call is wrong, or no wand goes in",
            "3:the computation failed, or a file could not be written"
        })
final class PlanCommand extends SceneCommand {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(names = "--output", paramLabel = "FILE", description = "Write the plan as a scene file that 'run' takes.")
    private @Nullable Path output;

    @Option(
            names = "--cache",
            paramLabel = "DIR",
            description = "Keep doses in this folder; a plan that was stopped goes on from what it had.")
    private @Nullable Path cache;

    @Option(
            names = "--trigger",
            paramLabel = "S",
            description = "Most seconds of trigger; default those of the scene's own passes.")
    private @Nullable Double trigger;

    @Option(names = "--passes", paramLabel = "N", description = "Most passes; default ${DEFAULT-VALUE}.")
    private int passes = PlanLimits.PASSES;

    @Option(
            names = "--rounds",
            paramLabel = "N",
            description = "Most rounds of plan and run; default ${DEFAULT-VALUE}.")
    private int rounds = PlanOptions.DEFAULT.rounds();

    @Option(names = "--coarse", description = "No full run at the end: planning resolution alone.")
    private boolean coarse;

    @Option(names = "--resolved", description = "Full run with resolved air, whatever the scene says; takes long.")
    private boolean resolved;

    PlanCommand(Console console, Stages stages) {
        super(console, stages);
    }

    @Override
    public Integer call() throws IOException {
        if (trigger != null && !(trigger > 0 && trigger < 1e6)) {
            throw new ParameterException(spec.commandLine(), "--trigger " + trigger + ": seconds above 0 expected");
        }
        if (passes < 1 || rounds < 1) {
            throw new ParameterException(spec.commandLine(), "--passes and --rounds: 1 or more expected");
        }
        if (resolved && coarse) {
            throw new ParameterException(spec.commandLine(), "--resolved is of the full run that --coarse leaves out");
        }
        Scene scene = begin();
        Scene asked = resolved ? scene.withAir(scene.air().withMode(AirSpec.Mode.RESOLVED, 0)) : scene;
        PlanOptions options = new PlanOptions(
                dose(),
                cache == null ? DoseStore.none() : DoseStore.in(cache),
                trigger == null ? Double.NaN : trigger,
                passes,
                rounds,
                !coarse);
        PlanResult plan;
        try (Progress progress = progress()) {
            plan = stages().plan(asked, options, runOptions(), progress);
        }
        if (output != null) {
            SceneWriter.write(plan.planned(), output);
        }
        tell(out -> out.print(PlanReport.text(plan)), out -> PlanReport.json(plan, out));
        if (output != null) {
            written(output);
        }
        return Exit.DONE;
    }

    /** A voxel size that is asked for holds for doses too. */
    private DoseSettings dose() {
        DoseSettings d = DoseSettings.DEFAULT;
        Planning p = d.planning();
        Planning own = options().voxel == null ? p : new Planning(1, p.sizeBins(), p.raysPerJet(), 1);
        return new DoseSettings(own, d.spacingM(), d.mostStations(), d.clocks(), d.pulseS(), d.carryS());
    }
}
