package baymist.cli;

import baymist.picture.CompareMap;
import baymist.picture.HoleMap;
import baymist.report.AtomicFile;
import baymist.report.CompareReport;
import baymist.report.HoleReport;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.scene.io.SceneWriter;
import baymist.study.CompareRow;
import baymist.study.Compared;
import baymist.study.Comparison;
import baymist.study.HoleStudy;
import baymist.study.Planning;
import baymist.study.PlanningRun;
import baymist.study.StudyStore;
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

/** {@code baymist compare}: which way in, with which wand, turned how. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Which way in is best? Entries x wands x clock angles, each sprayed once and ranked.",
        description = {
            "",
            "Runs one pass of each wand through each entry at each clock angle, at planning resolution and side by side,"
                    + " leaves out what can't go in or can't win, and runs the best in full. Stopped at any moment, the same"
                    + " call goes on from what it had.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  baymist compare scenes/wing-box.yaml",
            "  baymist compare scenes/wing-box.yaml --difference 1,2       where do the first two differ?",
            "  baymist compare scenes/blind-bay-drill.yaml --drill        would an access hole help, and where?",
            "  baymist compare scenes/wing-box.yaml --json --quiet | jq \".candidates[0]\"",
            "  baymist run out/wing-box-compare/best.yaml                 the best one with all its pictures"
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "2:the scene, a wand file or the call is wrong",
            "3:a computation failed, or a file could not be written",
            "4:done, but no candidate can be done"
        })
final class CompareCommand extends SceneCommand {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Folder for the results; default out/<scene name>-compare.")
    private @Nullable Path out;

    @Option(
            names = "--resume-dir",
            paramLabel = "DIR",
            description = "Where finished runs are kept and found again; default <out>/runs.")
    private @Nullable Path resume;

    @Option(
            names = "--planning",
            paramLabel = "FACTOR",
            description = "Length of planning voxels over the scene's own, 1 to 4; default ${DEFAULT-VALUE}.",
            defaultValue = "2")
    private double factor = Planning.DEFAULT.voxelFactor();

    @Option(
            names = "--full",
            paramLabel = "N",
            description =
                    "Run the best N at the scene's own resolution if they lie close together, rank them by that, and run the"
                            + " first with the scene's own air; default ${DEFAULT-VALUE}, 0 for none.",
            defaultValue = "5")
    private int full = 5;

    @Option(
            names = "--drill",
            description = "Look for access holes that would help the scene's own job instead, in the parts that its"
                    + " `drilling` block allows.")
    private boolean drill;

    @Option(
            names = "--difference",
            paramLabel = "A,B",
            split = ",",
            description = "Also draw where ranks A and B differ; such as 1,2.")
    private List<Integer> difference = new ArrayList<>();

    CompareCommand(Console console, Stages stages) {
        super(console, stages);
    }

    @Override
    public Integer call() throws IOException {
        if (!(factor >= 1 && factor <= 4)) {
            throw new ParameterException(spec.commandLine(), "--planning " + factor + ": 1 to 4 expected");
        }
        if (!difference.isEmpty() && difference.size() != 2) {
            throw new ParameterException(spec.commandLine(), "--difference wants two ranks, such as 1,2");
        }
        if (full < 0) {
            throw new ParameterException(spec.commandLine(), "--full " + full + ": 0 or more expected");
        }
        Scene scene = begin();
        Path folder = out != null ? out : Path.of("out", RunCommand.sceneName(options().scene) + "-compare");
        StudyStore store = StudyStore.in(resume != null ? resume : folder.resolve("runs"));
        Planning planning = new Planning(factor, Planning.DEFAULT.sizeBins(), Planning.DEFAULT.raysPerJet(), factor);
        if (drill) {
            return drill(scene, new PlanningRun(planning, store), folder);
        }
        Compared compared;
        try (Progress progress = progress()) {
            compared = compare(scene, new PlanningRun(planning, store), progress);
            tellKept(store, progress);
        }
        String text = CompareReport.text(compared);
        AtomicFile.writeText(folder.resolve("compare.json"), w -> CompareReport.json(compared, w));
        AtomicFile.writeText(folder.resolve("compare.txt"), w -> w.write(text));
        CompareRow best = compared.best();
        if (best != null) {
            SceneWriter.write(
                    best.candidate().scene(),
                    best.candidate().holes().isEmpty() ? "" : CompareReport.DRILLING,
                    folder.resolve("best.yaml"));
            CompareMap.write(compared, 3, folder.resolve("compare.png"));
        }
        String drawn = drawDifference(compared, folder);
        tell(o -> o.print(text), o -> CompareReport.json(compared, o));
        written(folder + ": compare.json, compare.txt" + (best == null ? "" : ", compare.png, best.yaml") + drawn);
        return best == null ? Exit.NOT_ACCEPTABLE : Exit.DONE;
    }

    private String drawDifference(Compared compared, Path folder) throws IOException {
        if (difference.isEmpty()) {
            return "";
        }
        long ran = compared.rows().stream().filter(CompareRow::ran).count();
        for (int rank : difference) {
            if (rank < 1 || rank > ran) {
                throw new ParameterException(
                        spec.commandLine(), "--difference " + rank + ": a rank from 1 to " + ran + " expected");
            }
        }
        String name = "difference-" + difference.get(0) + "-" + difference.get(1) + ".png";
        CompareMap.difference(compared, difference.get(0), difference.get(1), folder.resolve(name));
        return ", " + name;
    }

    private int drill(Scene scene, PlanningRun runs, Path folder) throws IOException {
        HoleStudy.Holes holes;
        try (Progress progress = progress()) {
            progress.stage("access holes");
            holes = new HoleStudy(runs, runOptions().threads()).run(scene, new Comparison.Watch() {
                @Override
                public void progress(double done, String latest) {
                    progress.note(latest);
                    progress.progress(done, Double.NaN);
                }
            });
            tellKept(runs.store(), progress);
        }
        String text = HoleReport.text(holes);
        AtomicFile.writeText(folder.resolve("holes.json"), w -> HoleReport.json(holes, w));
        AtomicFile.writeText(folder.resolve("holes.txt"), w -> w.write(text));
        boolean drills = !holes.chosen().isEmpty();
        if (drills) {
            SceneWriter.write(holes.job(), CompareReport.DRILLING, folder.resolve("drilled.yaml"));
            HoleMap.write(holes, folder.resolve("holes.png"));
        }
        tell(o -> o.print(text), o -> HoleReport.json(holes, o));
        written(folder + ": holes.json, holes.txt" + (drills ? ", drilled.yaml, holes.png" : ""));
        return Exit.DONE;
    }

    /** What was taken up from an earlier call, and what could not be. */
    private static void tellKept(StudyStore store, Progress progress) {
        if (!store.words().isEmpty()) {
            progress.note(store.words());
        }
    }

    private Compared compare(Scene scene, PlanningRun runs, Progress progress) {
        int threads = runOptions().threads();
        progress.stage("candidates");
        Comparison comparison = new Comparison(runs, threads);
        Compared compared = comparison.run(scene, part(progress, 0, full > 0 ? 0.7 : 1));
        if (full == 0 || compared.best() == null) {
            return compared;
        }
        progress.stage("finalists in full");
        Compared ranked = comparison.runOff(compared, full, part(progress, 0.7, 0.2));
        if (scene.air().mode() == AirSpec.Mode.PROJECTED) {
            return ranked;
        }
        progress.stage("the best with the scene's own air");
        Compared whole = ranked.withOwn(comparison.best(ranked));
        progress.progress(1, Double.NaN);
        return whole;
    }

    private static Comparison.Watch part(Progress progress, double from, double share) {
        return new Comparison.Watch() {
            @Override
            public void progress(double done, String latest) {
                progress.note(latest);
                progress.progress(from + share * done, Double.NaN);
            }
        };
    }
}
