package baymist.cli;

import baymist.report.AtomicFile;
import baymist.report.SizeReport;
import baymist.run.RunObserver;
import baymist.scene.Scene;
import baymist.scene.io.SceneWriter;
import baymist.size.Candidate;
import baymist.size.SizeRequest;
import baymist.size.SizeResult;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code baymist size}: the shortest and thinnest wand that does a scene's job. */
@Command(
        name = "size",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Which wand to make? Length, diameter, bend and tip that meet a goal, with a drawing.",
        description = {
            "",
            "Runs the scene's own passes with wands of many lengths, diameters and tips at planning resolution: what each"
                    + " reaches, which hole it passes, how it sags, what its bore loses, what it weighs. The shortest and"
                    + " thinnest that meets the goal is run in full. Bends are tried where no straight wand meets it.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist size scenes/size-spar-line.yaml",
            "  baymist size scenes/size-spar-line.yaml --target 90 --wand out/wand.yaml --drawing out/wand.pdf",
            "  baymist size scenes/size-spar-line.yaml --outer \"1/4 in\" --outer \"8 mm / 4 mm\" --mark \"25 mm\"",
            "  baymist size scenes/size-spar-line.yaml --bend \"90 deg / 25 mm / 40 mm\"      angle / radius / leg",
            "  baymist size scenes/size-spar-line.yaml --json --quiet | jq .shortest"
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "2:the scene or the call is wrong",
            "3:the computation failed, or a file could not be written",
            "4:done, but no wand of those tried meets the goal, or the chosen one misses it in full"
        })
final class SizeCommand extends SceneCommand {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(
            names = "--target",
            paramLabel = "PCT",
            description = "Percentage of the surface that must be reached; default ${DEFAULT-VALUE}.",
            defaultValue = "95")
    private double target = 100 * SizeRequest.REACHED;

    @Option(
            names = "--seams",
            paramLabel = "PCT",
            description = "Percentage of the length of seams that must be reached too; default none.",
            defaultValue = "0")
    private double seams;

    @Option(names = "--mark", paramLabel = "LENGTH", description = "Step of lengths and stops; default \"50 mm\".")
    private @Nullable String mark;

    @Option(names = "--longest", paramLabel = "LENGTH", description = "Longest wand; default \"3 m\".")
    private @Nullable String longest;

    @Option(
            names = "--outer",
            paramLabel = "SIZE",
            description = "Tube to try: outside, or outside / bore (\"6 mm / 3 mm\"); may be given several times.")
    private List<String> outers = new ArrayList<>();

    @Option(
            names = "--tip",
            paramLabel = "FILE",
            description = "Wand file whose tip is tried; may be given several times; default the scene's and two usual ones.")
    private List<Path> tips = new ArrayList<>();

    @Option(
            names = "--orifice",
            paramLabel = "SIZE",
            description = "Try every tip with orifices of this diameter too; may be given several times.")
    private List<String> orifices = new ArrayList<>();

    @Option(
            names = "--bend",
            paramLabel = "BEND",
            description = "Hook to try at once: \"angle / radius / leg\", or \"none\"; may be given several times.")
    private List<String> bends = new ArrayList<>();

    @Option(names = "--material", paramLabel = "NAME", description = "Material of the tubes; default the scene's, else stainless.")
    private @Nullable String material;

    @Option(names = "--no-verify", description = "Do not run the chosen wand in full.")
    private boolean noVerify;

    @Option(
            names = "--keep",
            paramLabel = "DIR",
            description = "Keep runs here and take those up that are there: a stopped study goes on.")
    private @Nullable Path keep;

    @Option(names = "--wand", paramLabel = "FILE", description = "Write the chosen wand as a wand file (YAML).")
    private @Nullable Path wandFile;

    @Option(
            names = "--drawing",
            paramLabel = "FILE",
            description = "Draw the chosen wand with dimensions and marks as an SVG or PDF file.")
    private @Nullable Path drawing;

    SizeCommand(Console console, Stages stages) {
        super(console, stages);
    }

    @Override
    public Integer call() throws IOException {
        SizeChoices choices = new SizeChoices(spec.commandLine(), options());
        percentage("--target", target, true);
        percentage("--seams", seams, false);
        choices.drawing(drawing);
        Scene scene = begin();
        SizeRequest request = choices.request(
                scene, stages(), target / 100, seams / 100, mark, longest, outers, tips, orifices, bends, material);
        SizeResult result;
        try (Progress progress = progress()) {
            RunObserver observer = progress;
            result = stages().size(scene, request, !noVerify, keep, runOptions(), observer);
        }
        List<Path> files = write(result);
        tell(out -> out.print(SizeReport.text(result)), out -> SizeReport.json(result, out));
        for (Path f : files) {
            written(f);
        }
        return verdict(result);
    }

    private void percentage(String option, double value, boolean above0) {
        if (!(value >= 0 && value <= 100) || (above0 && value == 0)) {
            throw new ParameterException(
                    spec.commandLine(), option + " " + value + ": " + (above0 ? "above 0" : "0") + " to 100 expected");
        }
    }

    private List<Path> write(SizeResult result) throws IOException {
        List<Path> files = new ArrayList<>();
        Candidate c = result.shortest();
        if (c == null) {
            return files;
        }
        if (wandFile != null) {
            String yaml = SceneWriter.text(c.design().wand(c.lengthM()));
            AtomicFile.writeText(wandFile, w -> w.write(yaml));
            files.add(wandFile);
        }
        if (drawing != null) {
            baymist.picture.WandDrawing.write(result, drawing);
            files.add(drawing);
        }
        return files;
    }

    private int verdict(SizeResult result) {
        if (result.shortest() == null) {
            boolean asked = wandFile != null || drawing != null;
            console().err().println("No wand of those tried meets the goal" + (asked ? "; no file was written." : "."));
            return Exit.NOT_ACCEPTABLE;
        }
        if (!noVerify && !result.confirmed()) {
            console().err().println("Run in full, the chosen wand misses the goal.");
            return Exit.NOT_ACCEPTABLE;
        }
        return Exit.DONE;
    }
}
