package baymist.cli;

import baymist.explain.ExplainOptions;
import baymist.explain.Explanation;
import baymist.geom.Vec3;
import baymist.report.AtomicFile;
import baymist.report.ExplainReport;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import baymist.scene.io.SceneWriter;
import baymist.units.Dimension;
import baymist.units.Quantities;
import baymist.units.QuantityException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code baymist explain}: why a place stays bare, and what would change it. */
@Command(
        name = "explain",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Why is a corner missed? The facts, and what would change it, proved by runs.",
        description = {
            "",
            "Runs the scene coarsely, gathers what kept the product from one bare region, then runs it again with one"
                    + " change at a time (pin turned, deeper, another wand or entry, slower, longer hang, a vent, a wider"
                    + " hole ...) and compares the film there. The cause is what the runs prove. How many runs there are and"
                    + " about how long they take is said before they begin.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist explain scenes/tail-cone.yaml                        the largest bare region",
            "  baymist explain scenes/wing-box.yaml --region 3",
            "  baymist explain scenes/wing-box.yaml --at \"400 mm, 1.5 m, 60 mm\"      any place, bare or thin",
            "  baymist explain scenes/wing-box.yaml --all-wands --runs 24",
            "  baymist explain job.yaml --apply 1 --output better.yaml      the scene with the best change",
            "  baymist explain scenes/wing-box.yaml --json | jq .cause"
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done, whether or not a change helps",
            "2:the scene or the call is wrong, or there is no such region",
            "3:the computation failed"
        })
final class ExplainCommand extends SceneCommand {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PlaceOptions place;

    @Option(
            names = "--wand",
            paramLabel = "FILE",
            description = "Also try this wand (YAML); may be given several times.")
    private List<Path> wands = new ArrayList<>();

    @Option(names = "--all-wands", description = "Also try every straight wand of models/wands.")
    private boolean allWands;

    @Option(
            names = "--runs",
            paramLabel = "N",
            description = "Most changes that are run; default ${DEFAULT-VALUE}.",
            defaultValue = "" + ExplainOptions.RUNS)
    private int runs = ExplainOptions.RUNS;

    @Option(
            names = "--all-changes",
            description =
                    "Run every change that comes to mind. Otherwise those that the facts speak for come first, and the"
                            + " rest only if none of them is enough.")
    private boolean all;

    @Option(
            names = "--time",
            paramLabel = "TIME",
            description = "Begin no further run after this time, such as \"2 min\"; default no limit.")
    private @Nullable String time;

    @Option(names = "--save", paramLabel = "FILE", description = "Also write the explanation as JSON into a file.")
    private @Nullable Path save;

    @Option(
            names = "--apply",
            paramLabel = "N",
            description = "Write the scene with the N-th change of the list (1 = best) to --output.")
    private @Nullable Integer apply;

    @Option(names = "--output", paramLabel = "FILE", description = "Scene file for --apply.")
    private @Nullable Path output;

    ExplainCommand(Console console, Stages stages) {
        super(console, stages);
    }

    @Override
    public Integer call() throws IOException {
        place.judge();
        if (runs < 0 || runs > 200) {
            throw wrong("--runs " + runs + ": 0 to 200 expected");
        }
        if ((apply == null) != (output == null)) {
            throw wrong("--apply N and --output FILE belong together: which change, and where to write it");
        }
        if (apply != null && apply < 1) {
            throw wrong("--apply " + apply + ": a row of the list expected, 1 = best");
        }
        double seconds = time == null ? Double.POSITIVE_INFINITY : seconds(time);
        if (!(seconds > 0)) {
            throw wrong("--time \"" + time + "\": a time above 0 expected");
        }
        Vec3 point = place.pointM(options());
        List<Path> files = new ArrayList<>(wands);
        if (allWands) {
            files.addAll(WandFolder.files(spec.commandLine(), options().scene));
        }
        Scene scene = begin();
        List<WandSpec> hand = files.stream().map(stages()::readWand).toList();
        ExplainOptions asked =
                new ExplainOptions(place.region(), point, hand, runs, seconds, all, ExplainOptions.CELLS);
        Explanation e;
        try (Progress progress = progress()) {
            e = stages().explain(scene, asked, runOptions(), progress);
        }
        tell(o -> o.print(ExplainReport.text(e)), o -> ExplainReport.json(e, o));
        if (save != null) {
            AtomicFile.writeText(save, w -> ExplainReport.json(e, w));
            written(save);
        }
        if (apply != null && output != null) {
            apply(e, apply, output);
        }
        return Exit.DONE;
    }

    private void apply(Explanation e, int row, Path file) throws IOException {
        if (row > e.remedies().size()) {
            throw wrong("--apply " + row + ": only " + e.remedies().size() + " changes were run");
        }
        SceneWriter.write(e.remedies().get(row - 1).job(), file);
        written(file + ": " + e.remedies().get(row - 1).change());
    }

    private double seconds(String text) {
        try {
            return Quantities.parse(text, Dimension.TIME);
        } catch (QuantityException e) {
            throw new ParameterException(spec.commandLine(), "--time: " + e.getMessage(), e);
        }
    }

    private ParameterException wrong(String words) {
        return new ParameterException(spec.commandLine(), words);
    }
}
