package baymist.cli;

import baymist.plan.PlanOptions;
import baymist.plan.PlanProof;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.report.ConvergenceReport;
import baymist.report.PlansPage;
import baymist.run.CoverageConvergence;
import baymist.run.RunOptions;
import baymist.run.VoxelStudy;
import baymist.verify.ValidationFolder;
import baymist.verify.VerificationReport;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code baymist verify}: the reference cases against their published or exact answers. */
@Command(
        name = "verify",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Run the reference cases and compare them with published and exact answers.",
        description = {
            "",
            "Prints one row a case: quantity, expected, found, error, tolerance, source.",
            "",
            "With --write it writes the validation pages: tables and plots of every case and of the order of each"
                    + " operator; with --coverage as well, only the coverage of those scenes at three voxel sizes, which"
                    + " takes minutes a scene.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist verify",
            "  baymist verify --case FD-06-20-s",
            "  baymist verify --write docs/validation",
            "  baymist verify --write docs/validation --coverage scenes/tail-cone.yaml"
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:every case is within its tolerance",
            "2:the call or a case file is wrong",
            "3:a computation failed",
            "4:a case is outside its tolerance"
        })
final class VerifyCommand implements Callable<Integer>, DebugOption.Holder {
    private final Console console;
    private final Stages stages;

    @Option(names = "--case", paramLabel = "ID", description = "Only this case.", defaultValue = "")
    private String caseId = "";

    @Option(
            names = "--folder",
            paramLabel = "DIR",
            description = "Folder with the cases; default ${DEFAULT-VALUE}.",
            defaultValue = "scenes/verification")
    private Path folder = Path.of("scenes/verification");

    @Option(
            names = "--write",
            paramLabel = "DIR",
            description = "Write cases.md, errors.svg, order.md and order.svg into this folder.")
    private @Nullable Path write;

    @Option(
            names = "--coverage",
            paramLabel = "SCENE",
            description =
                    "With --write: write coverage.md instead, this scene (repeat it for more) at three voxel sizes.")
    private List<Path> coverage = new ArrayList<>();

    @Option(
            names = "--plans",
            paramLabel = "SCENE",
            description =
                    "With --write: put this scene's row (repeat it for more) into plans.md instead: the plan against a hundred"
                            + " gridded single passes.")
    private List<Path> plans = new ArrayList<>();

    @Option(names = "--full", description = "With --plans: run plan and best pass at the scene's own resolution too.")
    private boolean full;

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(names = "--quiet", description = "No progress.")
    private boolean quiet;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private DebugOption debug;

    VerifyCommand(Console console, Stages stages) {
        this.console = console;
        this.stages = stages;
    }

    @Override
    public boolean debug() {
        return debug.debug;
    }

    @Override
    public Integer call() {
        if (write == null && !coverage.isEmpty()) {
            throw new ParameterException(spec.commandLine(), "--coverage without --write: nowhere to write it");
        }
        if (write == null && !plans.isEmpty()) {
            throw new ParameterException(spec.commandLine(), "--plans without --write: nowhere to write it");
        }
        if (write != null && !caseId.isEmpty()) {
            throw new ParameterException(spec.commandLine(), "--write with --case: the pages hold every case");
        }
        RunOptions options = new RunOptions(Runtime.getRuntime().availableProcessors());
        if (write != null && !coverage.isEmpty()) {
            return study(write, options);
        }
        if (write != null && !plans.isEmpty()) {
            return prove(write.resolve("plans.md"), options);
        }
        if (!quiet) {
            console.out().println(BaymistCommand.title() + ": reference cases in " + folder);
        }
        VerificationReport report;
        try (Progress progress = Progress.of(console, quiet)) {
            report = stages.verify(folder, caseId, options, progress);
            if (write != null) {
                ValidationFolder.write(write, report, stages.orders());
            }
        }
        console.out().println(report.table().stripTrailing());
        if (write != null && !quiet) {
            console.out().println("Written to " + write + ": cases.md, errors.svg, order.md, order.svg");
        }
        return report.passed() ? Exit.DONE : Exit.NOT_ACCEPTABLE;
    }

    private int prove(Path page, RunOptions options) {
        PlanOptions asked = full ? PlanOptions.DEFAULT : PlanOptions.DEFAULT.coarse();
        boolean all = true;
        for (Path scene : plans) {
            try (Progress progress = Progress.of(console, quiet)) {
                PlanProof proof = stages.prove(stages.read(scene), asked, options, progress);
                String before = Files.isRegularFile(page) ? Files.readString(page) : "";
                ValidationFolder.write(page, PlansPage.with(before, RunCommand.sceneName(scene), proof));
                console.out().println(scene + ": " + PlansPage.sentence(proof));
                all &= proof.wins();
            } catch (IOException e) {
                throw new SceneException(
                        "VER-006", SourcePlace.of(page.toString()), "the page can't be read: " + e.getMessage());
            }
        }
        return all ? Exit.DONE : Exit.NOT_ACCEPTABLE;
    }

    private int study(Path into, RunOptions options) {
        StringBuilder text = new StringBuilder("# Coverage at three voxel sizes\n\nWritten by `baymist verify --write"
                + " DIR --coverage SCENE`; do not edit. How to read it: [how far to trust the"
                + " voxels](../guide/convergence.md).\n\n"
                + ConvergenceReport.MARKDOWN_HEAD);
        for (Path scene : coverage) {
            try (Progress progress = Progress.of(console, quiet)) {
                CoverageConvergence study = stages.converge(stages.read(scene), VoxelStudy.RATIO, options, progress)
                        .convergence();
                if (study != null) {
                    text.append(ConvergenceReport.markdown(RunCommand.sceneName(scene), study));
                    console.out().println(scene + ": " + study.verdict());
                }
            }
        }
        ValidationFolder.write(into.resolve("coverage.md"), text.toString());
        return Exit.DONE;
    }
}
