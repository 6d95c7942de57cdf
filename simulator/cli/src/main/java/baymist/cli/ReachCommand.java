package baymist.cli;

import baymist.picture.ReachDrawing;
import baymist.report.ReachReport;
import baymist.run.ReachOptions;
import baymist.run.ReachResult;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code baymist reach}: where each wand gets to through each entry. */
@Command(
        name = "reach",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Where does a wand get to? Depth, obstacles, sag and reached share, entry by entry.",
        description = {
            "",
            "Puts every wand of the scene into every entry of the scene: how deep each goes, what stops it, how a"
                    + " straight one sags, how much of the cavity lies near its tip. Nothing is sprayed.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist reach scenes/wing-box.yaml",
            "  baymist reach scenes/wing-box.yaml --picture reach.png      tips, paths, obstacles, to scale",
            "  baymist reach scenes/wing-box.yaml --wand models/wands/ring-10mm-2400.yaml",
            "  baymist reach scenes/wing-box.yaml --all-wands --all-openings      which way in is best?",
            "  baymist reach scenes/wing-box.yaml --json | jq \".insertions[].depthM.max\""
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done, whether or not a wand goes in",
            "2:the scene, a wand file or the call is wrong",
            "3:the computation failed, or the picture could not be written"
        })
final class ReachCommand extends SceneCommand {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(
            names = "--wand",
            paramLabel = "FILE",
            description = "Also try this wand (YAML); may be given several times.")
    private List<Path> wands = new ArrayList<>();

    @Option(names = "--all-wands", description = "Also try every wand of the wand folder.")
    private boolean allWands;

    @Option(
            names = "--wand-folder",
            paramLabel = "DIR",
            description = "Folder of --all-wands; default models/wands here or beside the scene's folder.")
    private @Nullable Path wandFolder;

    @Option(
            names = "--all-openings",
            description = "Also go in by every other opening that leads outside, square to its sheet, shut or not.")
    private boolean allOpenings;

    @Option(
            names = "--within",
            paramLabel = "LENGTH",
            description = "Distance from the tip that counts as reached; default \"150 mm\".")
    private @Nullable String within;

    @Option(
            names = "--picture",
            paramLabel = "FILE",
            description = "Also draw tips, paths, sag and obstacles in plan, side and sections as a PNG file.")
    private @Nullable Path picture;

    ReachCommand(Console console, Stages stages) {
        super(console, stages);
    }

    @Override
    public Integer call() throws IOException {
        double withinM = within == null ? ReachOptions.WITHIN_M : options().lengthM("--within", within);
        List<Path> files = new ArrayList<>(wands);
        if (allWands) {
            files.addAll(wandsOf(folder()));
        } else if (wandFolder != null) {
            throw new ParameterException(spec.commandLine(), "--wand-folder belongs to --all-wands");
        }
        Scene scene = begin();
        List<WandSpec> more = files.stream().map(stages()::readWand).toList();
        ReachResult result;
        try (Progress progress = progress()) {
            result = stages().reach(scene, new ReachOptions(more, allOpenings, withinM), runOptions(), progress);
        }
        if (picture != null) {
            ReachDrawing.write(result, picture);
        }
        tell(out -> out.print(ReachReport.text(result)), out -> ReachReport.json(result, out));
        if (picture != null) {
            written(picture);
        }
        return Exit.DONE;
    }

    private Path folder() {
        if (wandFolder != null) {
            return wandFolder;
        }
        Path here = Path.of("models", "wands");
        Path scenes = options().scene.toAbsolutePath().getParent();
        Path beside = scenes == null ? here : scenes.resolveSibling(here);
        return Files.isDirectory(here) || !Files.isDirectory(beside) ? here : beside;
    }

    /** Wand files of a folder in the order of their names. */
    private List<Path> wandsOf(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            throw new ParameterException(
                    spec.commandLine(), "there is no wand folder " + folder + "; name one with --wand-folder DIR");
        }
        List<Path> files;
        try (Stream<Path> all = Files.list(folder)) {
            files = all.filter(f -> f.toString().endsWith(".yaml") && Files.isRegularFile(f))
                    .sorted()
                    .toList();
        }
        if (files.isEmpty()) {
            throw new ParameterException(spec.commandLine(), folder + " holds no wand file (*.yaml)");
        }
        return files;
    }
}
