package baymist.cli;

import baymist.picture.CoverageMap;
import baymist.picture.DifferenceMap;
import baymist.picture.TimeChart;
import baymist.report.AtomicFile;
import baymist.report.DifferenceReport;
import baymist.report.FilmTable;
import baymist.report.PastRun;
import baymist.report.ResultJson;
import baymist.report.RunDifference;
import baymist.report.TextReport;
import baymist.run.CoverageConvergence;
import baymist.run.PartRule;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.VoxelStudy;
import baymist.scene.Scene;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code baymist run}: compute, write, tell. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Run a scene: film on every surface, coverage, what stays bare, and a picture.",
        description = {
            "",
            "Writes result.json, film.csv.gz, coverage.png, time.png and summary.txt into a folder and prints the summary."
                    + " A file is written whole or not at all.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist run scenes/wing-box.yaml",
            "  baymist run scenes/wing-box.yaml --voxel \"8 mm\" --out out/coarse      a quick look",
            "  baymist run scenes/wing-box.yaml --json --quiet > result.json",
            "  baymist run scenes/wing-box.yaml --converge --insist                   can the voxels be trusted?",
            "  baymist run scenes/wing-box.yaml --against out/wing-box --out out/new   what did the change do?",
            "  baymist run scenes/wing-box.yaml --min-reached 95 || echo \"not good enough\""
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "2:the scene or the call is wrong",
            "3:the computation failed, or a file could not be written",
            "4:done, but less than --min-reached is reached, or not converged with --insist"
        })
final class RunCommand extends SceneCommand {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PartOption part;

    @Option(names = "--out", paramLabel = "DIR", description = "Folder for the results; default out/<scene name>.")
    private @Nullable Path out;

    @Option(
            names = "--min-reached",
            paramLabel = "PCT",
            description = "Exit with 4 when less than this percentage of the surface is reached (0 to 100).")
    private @Nullable Double minReached;

    @Option(
            names = "--converge",
            description =
                    "Run at finer and coarser voxels too and say whether the coverage depends on them; takes about"
                            + " four times as long.")
    private boolean converge;

    @Option(
            names = "--ratio",
            paramLabel = "R",
            description = "Ratio of neighbouring voxel sizes of --converge, 1.1 to 2; default ${DEFAULT-VALUE}.",
            defaultValue = "1.3")
    private double ratio = VoxelStudy.RATIO;

    @Option(names = "--insist", description = "With --converge: exit with 4 when the coverage is not converged.")
    private boolean insist;

    @Option(
            names = "--against",
            paramLabel = "RESULT",
            description =
                    "Compare with an earlier run: its result.json or its folder. Tells what gained and lost film and"
                            + " draws difference.png.")
    private @Nullable Path against;

    RunCommand(Console console, Stages stages) {
        super(console, stages);
    }

    @Override
    RunOptions runOptions() {
        return super.runOptions().withPart(converge ? PartRule.WHOLE : part.rule());
    }

    @Override
    public Integer call() throws IOException {
        if (minReached != null && !(minReached >= 0 && minReached <= 100)) {
            throw new ParameterException(spec.commandLine(), "--min-reached " + minReached + ": 0 to 100 expected");
        }
        if (insist && !converge) {
            throw new ParameterException(spec.commandLine(), "--insist without --converge: nothing to insist on");
        }
        if (converge && part.rule().rings() > 0) {
            throw new ParameterException(
                    spec.commandLine(), "--converge with --part: voxel sizes are compared on the whole structure");
        }
        if (!(ratio >= 1.1 && ratio <= 2)) {
            throw new ParameterException(spec.commandLine(), "--ratio " + ratio + ": 1.1 to 2 expected");
        }
        Scene scene = begin();
        PastRun past = against == null ? null : PastRun.read(against);
        RunResult result;
        try (Progress progress = progress()) {
            result = converge
                    ? stages().converge(scene, ratio, runOptions(), progress)
                    : stages().run(scene, runOptions(), progress);
        }
        Path folder = out != null ? out : Path.of("out", sceneName(options().scene));
        RunDifference difference = past == null ? null : RunDifference.of(result, past);
        String summary = TextReport.of(result) + (difference == null ? "" : "\n" + DifferenceReport.of(difference));
        ResultJson.write(result, folder.resolve("result.json"));
        AtomicFile.writeText(folder.resolve("summary.txt"), w -> w.write(summary));
        CoverageMap.write(result, folder.resolve("coverage.png"));
        TimeChart.write(result, folder.resolve("time.png"));
        FilmTable.write(result, folder.resolve(FilmTable.FILE));
        if (difference != null) {
            DifferenceMap.write(result, difference, folder.resolve("difference.png"));
        }
        tell(o -> o.print(summary), o -> ResultJson.write(result, o));
        written(folder + ": result.json, film.csv.gz, coverage.png, time.png, summary.txt"
                + (difference == null ? "" : ", difference.png"));
        return verdict(result);
    }

    private int verdict(RunResult result) {
        CoverageConvergence study = result.convergence();
        if (insist && study != null && !study.converged()) {
            console().err().println("The coverage is " + study.verdict() + ".");
            return Exit.NOT_ACCEPTABLE;
        }
        double reached = 100 * result.coverage().total().reached();
        if (minReached == null || reached >= minReached) {
            return Exit.DONE;
        }
        console()
                .err()
                .println(String.format(
                        Locale.ROOT,
                        "Reached %.2f %% of the surface, less than the %s %% asked for.",
                        reached,
                        minReached));
        return Exit.NOT_ACCEPTABLE;
    }

    /** File name without folder and extension. */
    static String sceneName(Path scene) {
        Path name = scene.getFileName();
        String text = name == null ? "scene" : name.toString();
        int dot = text.lastIndexOf('.');
        return dot > 0 ? text.substring(0, dot) : text;
    }
}
