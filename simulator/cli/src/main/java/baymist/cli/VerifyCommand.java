package baymist.cli;

import baymist.run.RunOptions;
import baymist.verify.VerificationReport;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code baymist verify}: the reference cases against their published or exact answers. */
@Command(
        name = "verify",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Run the reference cases and compare them with published and exact answers.",
        description = {"", "Prints one row a case: quantity, expected, found, error, tolerance, source.", ""},
        footerHeading = "%nExamples:%n",
        footer = {"  baymist verify", "  baymist verify --case settling-cube"},
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
        if (!quiet) {
            console.out().println(BaymistCommand.title() + ": reference cases in " + folder);
        }
        RunOptions options = new RunOptions(Runtime.getRuntime().availableProcessors());
        VerificationReport report;
        try (Progress progress = Progress.of(console, quiet)) {
            report = stages.verify(folder, caseId, options, progress);
        }
        console.out().println(report.table().stripTrailing());
        return report.passed() ? Exit.DONE : Exit.NOT_ACCEPTABLE;
    }
}
