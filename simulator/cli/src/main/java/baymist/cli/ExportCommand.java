package baymist.cli;

import baymist.export.Exports;
import baymist.export.RunWatch;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.scene.Scene;
import baymist.units.Dimension;
import baymist.units.Quantities;
import baymist.units.QuantityException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code baymist export}: the result as files for other programs. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Run a scene and write the result as files for other programs: VTK, glTF, CSV, JSON.",
        description = {
            "",
            "Runs the scene and writes fog, air, film, seams and wand into a folder; without a choice of formats, all of them."
                    + " All files appear together or none does. Formats and units: docs/formats.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist export scenes/wing-box.yaml --out out/files",
            "  baymist export scenes/wing-box.yaml --vtk --at \"5 s\" --at \"1 min\"     fog and air at two times",
            "  baymist export scenes/wing-box.yaml --csv --voxel \"8 mm\""
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "2:the scene or the call is wrong",
            "3:the computation failed, or a file could not be written"
        })
final class ExportCommand implements Callable<Integer>, DebugOption.Holder {
    private final Console console;
    private final Stages stages;

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private SceneOptions sceneOptions;

    @Option(names = "--out", paramLabel = "DIR", description = "Folder for the files; default out/<scene name>-files.")
    private @Nullable Path out;

    @Option(names = "--vtk", description = "VTK: fog and air on voxels, film, surfels, seams, wand.")
    private boolean vtk;

    @Option(names = "--gltf", description = "glTF: the cavity with film as vertex colours.")
    private boolean gltf;

    @Option(names = "--csv", description = "CSV: surfels, bare places, seams, coverage, ledger, curves over time.")
    private boolean csv;

    @Option(names = "--json", description = "JSON: result.json and the film table that it names.")
    private boolean json;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            description = "Job time of fog and air in VTK, such as \"20 s\"; may be repeated. Default: the end of each"
                    + " pass and of the job.")
    private List<String> at = new ArrayList<>();

    @Option(names = "--quiet", description = "No title and no progress: problems alone.")
    private boolean quiet;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private DebugOption debug;

    ExportCommand(Console console, Stages stages) {
        this.console = console;
        this.stages = stages;
    }

    @Override
    public boolean debug() {
        return debug.debug;
    }

    @Override
    public Integer call() throws IOException {
        List<Double> timesS = timesS();
        RunOptions options = new RunOptions(sceneOptions.threadCount());
        say(BaymistCommand.title() + ": " + sceneOptions.scene);
        Scene scene = sceneOptions.read(stages);
        RunWatch watch;
        RunResult result;
        try (Progress progress = Progress.of(console, quiet)) {
            watch = new RunWatch(scene, timesS, progress);
            result = stages.run(scene, options, watch);
        }
        requireWithin(timesS, watch.endS());
        Path folder = out != null ? out : Path.of("out", RunCommand.sceneName(sceneOptions.scene) + "-files");
        List<String> names = Exports.write(result, watch, kinds(), folder);
        say("");
        say("Written to " + folder + ": " + String.join(", ", names));
        return Exit.DONE;
    }

    private void requireWithin(List<Double> timesS, double endS) {
        for (int i = 0; i < timesS.size(); i++) {
            if (timesS.get(i) > endS + 1e-9) {
                throw new ParameterException(
                        spec.commandLine(),
                        String.format(
                                Locale.ROOT,
                                "--at \"%s\": the job is over after %.1f s; nothing was written",
                                at.get(i),
                                endS));
            }
        }
    }

    private Set<Exports.Kind> kinds() {
        Set<Exports.Kind> kinds = EnumSet.noneOf(Exports.Kind.class);
        if (vtk) {
            kinds.add(Exports.Kind.VTK);
        }
        if (gltf) {
            kinds.add(Exports.Kind.GLTF);
        }
        if (csv) {
            kinds.add(Exports.Kind.CSV);
        }
        if (json) {
            kinds.add(Exports.Kind.JSON);
        }
        return kinds.isEmpty() ? EnumSet.allOf(Exports.Kind.class) : kinds;
    }

    private List<Double> timesS() {
        List<Double> times = new ArrayList<>();
        for (String text : at) {
            double timeS;
            try {
                timeS = Quantities.parse(text.strip(), Dimension.TIME);
            } catch (QuantityException e) {
                throw new ParameterException(spec.commandLine(), "--at: " + e.getMessage(), e);
            }
            if (!(timeS > 0)) {
                throw new ParameterException(spec.commandLine(), "--at \"" + text + "\": a time above 0 expected");
            }
            times.add(timeS);
        }
        return times;
    }

    private void say(String line) {
        if (!quiet) {
            console.out().println(line);
            console.out().flush();
        }
    }
}
