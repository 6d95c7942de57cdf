package baymist.cli;

import baymist.coverage.Fractions;
import baymist.export.HtmlReport;
import baymist.report.ResultJson;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.scene.Scene;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code baymist report}: the result as one page for a browser. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Run a scene and write a page for a browser: film in 3-D, bare places, tables, curves, cautions.",
        description = {
            "",
            "The page is one file that holds everything and needs no network: send it, keep it, open it anywhere.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist report scenes/wing-box.yaml --out wing-box.html",
            "  baymist report scenes/wing-box.yaml --voxel \"8 mm\"      a quick look, into out/wing-box.html"
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "2:the scene or the call is wrong",
            "3:the computation failed, or the page could not be written"
        })
final class ReportCommand extends SceneCommand {
    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PartOption part;

    @Option(names = "--out", paramLabel = "FILE", description = "The page; default out/<scene name>.html.")
    private @Nullable Path out;

    ReportCommand(Console console, Stages stages) {
        super(console, stages);
    }

    @Override
    RunOptions runOptions() {
        return super.runOptions().withPart(part.rule());
    }

    @Override
    public Integer call() throws IOException {
        Scene scene = begin();
        RunResult result;
        try (Progress progress = progress()) {
            result = stages().run(scene, runOptions(), progress);
        }
        Path page = out != null ? out : Path.of("out", RunCommand.sceneName(options().scene) + ".html");
        HtmlReport.write(result, page);
        Fractions f = result.coverage().total();
        tell(
                o -> o.printf(
                        Locale.ROOT,
                        "Reached %.1f %%, protected %.1f %%; bare places: %d.%n",
                        100 * f.reached(),
                        100 * f.protectedShare(),
                        result.coverage().unreached().size()),
                o -> ResultJson.write(result, o));
        written(page);
        return Exit.DONE;
    }
}
