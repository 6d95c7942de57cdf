package baymist.cli;

import baymist.picture.StructureDrawing;
import baymist.problem.Severity;
import baymist.report.CheckReport;
import baymist.run.CheckResult;
import baymist.run.RunOptions;
import baymist.scene.Scene;
import java.io.IOException;
import java.nio.file.Path;
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
final class CheckCommand extends SceneCommand {
    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PartOption part;

    @Option(
            names = "--picture",
            paramLabel = "FILE",
            description =
                    "Also draw plan, side and section views with openings, bays and wands, to scale, as a PNG file.")
    private @Nullable Path picture;

    CheckCommand(Console console, Stages stages) {
        super(console, stages);
    }

    @Override
    RunOptions runOptions() {
        return super.runOptions().withPart(part.rule());
    }

    @Override
    public Integer call() throws IOException {
        Scene scene = begin();
        CheckResult result;
        try (Progress progress = progress()) {
            result = stages().check(scene, runOptions(), progress);
        }
        if (picture != null) {
            StructureDrawing.write(result, picture);
        }
        tell(out -> out.print(CheckReport.text(result)), out -> CheckReport.json(result, out));
        if (picture != null) {
            written(picture);
        }
        boolean wrong = result.findings().stream().anyMatch(f -> f.severity() == Severity.ERROR);
        return wrong ? Exit.BAD_INPUT : Exit.DONE;
    }
}
