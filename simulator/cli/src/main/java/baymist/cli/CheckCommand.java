package baymist.cli;

import baymist.picture.StructureDrawing;
import baymist.report.CheckReport;
import baymist.run.CheckResult;
import baymist.run.RunOptions;
import baymist.scene.Scene;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code baymist check}: the geometry without the spray. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Check a scene without spraying: geometry, openings, leaks, how far each wand goes in.",
        description = {
            "",
            "Reads the scene, builds the cavity and its voxels, and puts the wands in. Names every problem with its place.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist check scenes/wing-box.yaml",
            "  baymist check scenes/wing-box.yaml --voxel \"5 mm\"     is more of the trailing edge resolved then?",
            "  baymist check scenes/wing-box.yaml --picture wing-box.png     plan, side and sections, to scale",
            "  baymist check scenes/wing-box.yaml --json"
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:the scene can be run",
            "2:the scene or the call is wrong",
            "3:the computation failed, or the picture could not be written"
        })
final class CheckCommand implements Callable<Integer>, DebugOption.Holder {
    private final Console console;
    private final Stages stages;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private SceneOptions sceneOptions;

    @Option(names = "--json", description = "Print JSON instead of text; nothing else on standard output.")
    private boolean json;

    @Option(
            names = "--picture",
            paramLabel = "FILE",
            description =
                    "Also draw plan, side and section views with openings, bays and wands, to scale, as a PNG file.")
    private @Nullable Path picture;

    @Option(names = "--quiet", description = "No title and no progress: the findings alone.")
    private boolean quiet;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private DebugOption debug;

    CheckCommand(Console console, Stages stages) {
        this.console = console;
        this.stages = stages;
    }

    @Override
    public boolean debug() {
        return debug.debug;
    }

    @Override
    public Integer call() throws IOException {
        RunOptions options = new RunOptions(sceneOptions.threadCount());
        PrintWriter chat = json ? console.err() : console.out();
        if (!quiet) {
            chat.println(BaymistCommand.title() + ": " + sceneOptions.scene);
        }
        Scene scene = sceneOptions.read(stages);
        CheckResult result;
        try (Progress progress = Progress.of(console, quiet)) {
            result = stages.check(scene, options, progress);
        }
        if (picture != null) {
            StructureDrawing.write(result, picture);
        }
        if (json) {
            CheckReport.json(result, console.out());
        } else {
            console.out().println();
            console.out().print(CheckReport.text(result));
            console.out().flush();
        }
        if (picture != null && !quiet) {
            chat.println();
            chat.println("Written to " + picture);
        }
        return Exit.DONE;
    }
}
