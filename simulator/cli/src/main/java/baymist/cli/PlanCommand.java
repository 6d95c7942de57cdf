package baymist.cli;

import baymist.plan.DoseSettings;
import baymist.plan.DoseStore;
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
            "3:the computation failed, or a file could not be written",
            "4:with --must-reach: the plan reaches too little, or a bay can't be reached at all"
        })
final class PlanCommand extends SceneCommand {
    private static final int MOST_ROUNDS = 20;

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

    @Option(
            names = "--product",
            paramLabel = "ML",
            description = "Most millilitres of product; default what the scene states or its own passes take.")
    private @Nullable Double product;

    @Option(names = "--passes", paramLabel = "N", description = "Most passes; default what the scene states, or 12.")
    private @Nullable Integer passes;

    @Option(
            names = "--runs",
            paramLabel = "N",
            description =
                    "Most runs at planning resolution; default ${DEFAULT-VALUE}. More find better plans and take longer.")
    private int runs = PlanOptions.RUNS;

    @Option(names = "--drill", description = "Propose access holes too, where the scene's drilling block allows them.")
    private boolean drill;

    @Option(
            names = "--must-reach",
            paramLabel = "SHARE",
            description =
                    "Exit with 4 if the plan reaches less than this share of the inside (0.9 or 90%%), or a bay not at all.")
    private @Nullable String mustReach;

    @Option(names = "--coarse", description = "No full run at the end: planning resolution alone.")
    private boolean coarse;

    @Option(
            names = "--full-rounds",
            paramLabel = "N",
            description =
                    "Most further plans run in full where the full run reaches over a point less than was promised; default"
                            + " ${DEFAULT-VALUE}.")
    private int fullRounds = PlanOptions.FULL_ROUNDS;

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
        if (product != null && !(product > 0 && product < 1e6)) {
            throw new ParameterException(spec.commandLine(), "--product " + product + ": millilitres above 0 expected");
        }
        if (runs < 1 || (passes != null && passes < 1)) {
            throw new ParameterException(spec.commandLine(), "--passes and --runs: 1 or more expected");
        }
        if (fullRounds < 0 || fullRounds > MOST_ROUNDS) {
            throw new ParameterException(
                    spec.commandLine(), "--full-rounds " + fullRounds + ": 0 to " + MOST_ROUNDS + " expected");
        }
        double wanted = wanted();
        if (resolved && coarse) {
            throw new ParameterException(spec.commandLine(), "--resolved is of the full run that --coarse leaves out");
        }
        Scene scene = begin();
        Scene asked = resolved ? scene.withAir(scene.air().withMode(AirSpec.Mode.RESOLVED, 0)) : scene;
        PlanOptions options = new PlanOptions(
                dose(),
                cache == null ? DoseStore.none() : DoseStore.in(cache),
                trigger == null ? Double.NaN : trigger,
                product == null ? Double.NaN : 1e-6 * product,
                passes == null ? 0 : passes,
                runs,
                !coarse,
                drill,
                fullRounds,
                true);
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
        boolean enough =
                plan.reached() >= wanted && (mustReach == null || plan.blind().isEmpty());
        return enough ? Exit.DONE : Exit.NOT_ACCEPTABLE;
    }

    /** Share that must be reached, 0..1; 0 where none is asked for. */
    private double wanted() {
        if (mustReach == null) {
            return 0;
        }
        String text = mustReach.strip();
        boolean percent = text.endsWith("%");
        double share = Double.NaN;
        try {
            share = Double.parseDouble(percent ? text.substring(0, text.length() - 1) : text) / (percent ? 100 : 1);
        } catch (NumberFormatException e) {
            // told below
        }
        if (!(share > 0 && share <= 1)) {
            throw new ParameterException(
                    spec.commandLine(), "--must-reach " + mustReach + ": a share expected, such as 0.9 or 90%");
        }
        return share;
    }

    /** A voxel size that is asked for holds for doses too. */
    private DoseSettings dose() {
        DoseSettings d = DoseSettings.DEFAULT;
        Planning p = d.planning();
        Planning own = options().voxel == null ? p : new Planning(1, p.sizeBins(), p.raysPerJet(), 1);
        return new DoseSettings(own, d.spacingM(), d.mostStations(), d.clocks(), d.pulseS(), d.carryS());
    }
}
