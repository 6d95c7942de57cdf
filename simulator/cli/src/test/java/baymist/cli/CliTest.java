package baymist.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.explain.ExplainOptions;
import baymist.explain.Explanation;
import baymist.field.FieldOptions;
import baymist.field.ReachField;
import baymist.field.RegionChoice;
import baymist.geom.Vec3;
import baymist.plan.DoseSettings;
import baymist.plan.PlanOptions;
import baymist.plan.PlanResult;
import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import baymist.problem.SimulationException;
import baymist.problem.SourcePlace;
import baymist.report.SampleRun;
import baymist.run.CheckResult;
import baymist.run.PartRule;
import baymist.run.ReachOptions;
import baymist.run.ReachResult;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.scene.Scene;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import baymist.scene.io.SceneSchema;
import baymist.size.SampleSize;
import baymist.size.SizeRequest;
import baymist.size.SizeResult;
import baymist.study.Planning;
import baymist.verify.Inputs;
import baymist.verify.OrderStudy;
import baymist.verify.Outcome;
import baymist.verify.VerificationCase;
import baymist.verify.VerificationReport;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CliTest {
    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private final Fake stages = new Fake();

    /** An engine that answers at once, or fails as told. */
    private static final class Fake implements Stages {
        RuntimeException failure;
        boolean passed = true;
        final List<Scene> seen = new ArrayList<>();
        int threads;
        PartRule part = PartRule.WHOLE;
        double spread = 0.01;
        final List<Double> ratios = new ArrayList<>();
        ReachOptions asked = ReachOptions.DEFAULT;

        @org.jspecify.annotations.Nullable
        FieldOptions askedField;

        @org.jspecify.annotations.Nullable
        PlanOptions askedPlan;

        boolean meets = true;
        final List<SizeRequest> sized = new ArrayList<>();

        @Override
        public Scene read(Path file) {
            if (failure instanceof SceneException) {
                throw failure;
            }
            return SampleRun.scene("A sample", file.toString());
        }

        @Override
        public RunResult run(Scene scene, RunOptions options, RunObserver observer) {
            seen.add(scene);
            threads = options.threads();
            part = options.part();
            observer.stage("voxels");
            for (int i = 0; i <= 100; i++) {
                observer.progress(i / 100.0, 3.0 * i);
            }
            if (failure != null) {
                throw failure;
            }
            return SampleRun.tank();
        }

        @Override
        public RunResult converge(Scene scene, double ratio, RunOptions options, RunObserver observer) {
            seen.add(scene);
            ratios.add(ratio);
            return SampleRun.studied(spread);
        }

        @Override
        public CheckResult check(Scene scene, RunOptions options, RunObserver observer) {
            seen.add(scene);
            part = options.part();
            return SampleRun.check();
        }

        @Override
        public WandSpec readWand(Path file) {
            return new WandSpec(file.getFileName().toString(), 1, 0.006, 0.003, new TipSpec("t", List.of()));
        }

        @Override
        public ReachResult reach(Scene scene, ReachOptions reach, RunOptions options, RunObserver observer) {
            seen.add(scene);
            asked = reach;
            observer.stage("reach of 2 insertions");
            observer.progress(0.5, Double.NaN);
            observer.progress(1, Double.NaN);
            if (failure != null) {
                throw failure;
            }
            return SampleRun.reach();
        }

        @Override
        public Explanation explain(Scene scene, ExplainOptions asked, RunOptions options, RunObserver observer) {
            throw new UnsupportedOperationException("explain");
        }

        @Override
        public SizeResult size(
                Scene scene,
                SizeRequest request,
                boolean verify,
                @Nullable Path keep,
                RunOptions options,
                RunObserver observer) {
            sized.add(request);
            return SampleSize.result(request, meets);
        }

        @Override
        public ReachField field(Scene scene, FieldOptions field, RunOptions options, RunObserver observer) {
            askedField = field;
            throw new SceneException("FLD-001", SourcePlace.of("a.yaml"), "there is no such place");
        }

        @Override
        public PlanResult plan(Scene scene, PlanOptions plan, RunOptions options, RunObserver observer) {
            askedPlan = plan;
            throw new SceneException("PLN-001", SourcePlace.of("a.yaml"), "no wand goes in");
        }

        @Override
        public String schema() {
            return "{\"$schema\": \"x\"}\n";
        }

        @Override
        public VerificationReport verify(Path cases, String caseId, RunOptions options, RunObserver observer) {
            VerificationCase one = new VerificationCase(
                    caseId, "stage", "quantity", Inputs.parse("", cases), 1, 0.1, false, "exact", "source", "derived");
            return new VerificationReport(List.of(new Outcome(one, passed ? 1 : 2, "")));
        }

        @Override
        public List<OrderStudy.Row> orders() {
            return List.of(new OrderStudy.Row("eddies", 2, new int[] {10, 20}, new double[] {4e-3, 1e-3}));
        }
    }

    private int baymist(String... args) {
        Console console = new Console(new PrintWriter(out, true), new PrintWriter(err, true), false);
        return Cli.execute(args, console, stages);
    }

    private String dir() {
        return folder.resolve("result").toString();
    }

    private void assertOneLine(String text) {
        assertEquals(1, text.lines().count(), text);
        assertFalse(text.contains("\tat "), text);
    }

    @Test
    void runWritesEveryFileAndPrintsTheSummary() throws IOException {
        assertEquals(0, baymist("run", "job.yaml", "--out", dir()));
        for (String file : List.of("result.json", "summary.txt", "coverage.png", "time.png")) {
            assertTrue(Files.size(Path.of(dir(), file)) > 100, file);
        }
        assertTrue(ImageIO.read(Path.of(dir(), "coverage.png").toFile()).getWidth() >= 1600);
        assertTrue(out.toString().startsWith("Baymist "), out.toString());
        assertTrue(out.toString().contains("Coverage by area"));
        assertTrue(out.toString().contains("Written to " + dir()));
        assertTrue(Files.readString(Path.of(dir(), "summary.txt")).startsWith("Tank\n"));
    }

    @Test
    void jsonIsAloneOnStandardOutput() throws IOException {
        assertEquals(0, baymist("run", "job.yaml", "--out", dir(), "--json"));
        assertEquals(
                1, new ObjectMapper().readTree(out.toString()).get("baymist").asInt());
        assertEquals(Files.readString(Path.of(dir(), "result.json")), out.toString());
        assertTrue(err.toString().startsWith("Baymist "));
    }

    @Test
    void quietSaysNothingOnStandardError() {
        assertEquals(0, baymist("run", "job.yaml", "--out", dir(), "--quiet"));
        assertEquals("", err.toString());
        assertFalse(out.toString().contains("Written to"));
    }

    @Test
    void progressIsSparseWhereNobodyWatches() {
        assertEquals(0, baymist("run", "job.yaml", "--out", dir()));
        assertEquals(11, err.toString().lines().count(), err.toString()); // one stage and ten tenths
        assertTrue(err.toString().contains("s left"));
    }

    @Test
    void minReachedDecidesTheExitCodeAfterEverythingIsWritten() {
        assertEquals(4, baymist("run", "job.yaml", "--out", dir(), "--min-reached", "99"));
        assertTrue(err.toString().contains("less than the 99"), err.toString());
        assertTrue(Files.exists(Path.of(dir(), "coverage.png")));
        assertEquals(0, baymist("run", "job.yaml", "--out", dir(), "--min-reached", "10"));
    }

    @Test
    void insistingOnConvergenceDecidesTheExitCode() throws IOException {
        assertEquals(0, baymist("run", "job.yaml", "--out", dir(), "--converge", "--insist", "--ratio", "1.5"));
        assertEquals(List.of(1.5), stages.ratios);
        assertTrue(out.toString().contains("Converged: at voxels of"), out.toString());
        stages.spread = 0.05;
        assertEquals(0, baymist("run", "job.yaml", "--out", dir(), "--converge"));
        assertEquals(4, baymist("run", "job.yaml", "--out", dir(), "--converge", "--insist", "--quiet"));
        assertTrue(err.toString().contains("The coverage is not converged: "), err.toString());
        assertTrue(out.toString().contains("[CNV-001]"), out.toString());
        assertFalse(new ObjectMapper()
                .readTree(Files.readString(Path.of(dir(), "result.json")))
                .get("convergence")
                .get("converged")
                .asBoolean());
    }

    @Test
    void everyFindingOfABadSceneHasItsLineAndTheCodeIsTwo() throws IOException {
        stages.failure = new SceneException(List.of(
                new Finding(
                        "SCN-001", Severity.ERROR, new SourcePlace("job.yaml", 3, "hang"), "Found 5, a time expected."),
                new Finding("SCN-002", Severity.ERROR, new SourcePlace("job.yaml", 9, "wand"), "No wand \"x\".")));
        assertEquals(2, baymist("run", "job.yaml", "--out", dir(), "--quiet"));
        assertEquals(
                "job.yaml:3 hang: Found 5, a time expected. [SCN-001]\njob.yaml:9 wand: No wand \"x\". [SCN-002]\n",
                err.toString());
        assertEquals("", out.toString());
        assertFalse(Files.exists(Path.of(dir())));
    }

    @Test
    void failedNumbersAreOneSentenceAndThree() {
        stages.failure = new SimulationException("air: not a number in cell 12 at 3.2 s");
        assertEquals(3, baymist("run", "job.yaml", "--out", dir(), "--quiet"));
        assertEquals(
                "The computation failed: air: not a number in cell 12 at 3.2 s.",
                err.toString().strip());
    }

    @Test
    void surpriseIsOneSentenceWithoutAStackTraceUnlessAskedFor() {
        stages.failure = new IllegalStateException("boom");
        assertEquals(3, baymist("run", "job.yaml", "--out", dir(), "--quiet"));
        assertOneLine(err.toString());
        assertTrue(err.toString().contains("boom") && err.toString().contains("report"));
        err.getBuffer().setLength(0);
        assertEquals(3, baymist("run", "job.yaml", "--out", dir(), "--quiet", "--debug"));
        assertTrue(err.toString().contains("\tat baymist.cli."), err.toString());
    }

    @Test
    void folderThatCannotBeMadeIsOneSentence() throws IOException {
        Path file = Files.writeString(folder.resolve("taken"), "x");
        assertEquals(3, baymist("run", "job.yaml", "--out", file.toString(), "--quiet"));
        assertOneLine(err.toString());
        assertTrue(err.toString().contains("taken"), err.toString());
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(1, left.count());
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "fly",
                "run",
                "run a.yaml b.yaml",
                "run a.yaml --threads 0",
                "run a.yaml --part 0",
                "run a.yaml --part some",
                "run a.yaml --part 2 --converge",
                "run a.yaml --threads x",
                "run a.yaml --min-reached 101",
                "run a.yaml --voxel 5",
                "run a.yaml --voxel 5mm,6mm",
                "run a.yaml --voxel 0mm",
                "run a.yaml --vxel 5mm",
                "run a.yaml --insist",
                "run a.yaml --converge --ratio 1.05",
                "run a.yaml --converge --ratio 3",
                "reach",
                "reach a.yaml --within 5",
                "reach a.yaml --within 0mm",
                "reach a.yaml --wand-folder models/wands",
                "reach a.yaml --threads 0",
                "explain",
                "explain a.yaml --region 1 --at 1mm,2mm,3mm",
                "explain a.yaml --region 0",
                "explain a.yaml --at 1mm,2mm",
                "explain a.yaml --at 1,2,3",
                "explain a.yaml --runs -1",
                "explain a.yaml --time 5",
                "explain a.yaml --apply 1",
                "explain a.yaml --apply 0 --output b.yaml",
                "field",
                "field a.yaml --region 0",
                "field a.yaml --region 1 --part floor",
                "field a.yaml --region 1 --at 1mm,2mm,3mm",
                "field a.yaml --within 5mm",
                "field a.yaml --at 1mm,2mm",
                "field a.yaml --at 1,2,3",
                "plan",
                "plan a.yaml --trigger 0",
                "plan a.yaml --passes 0",
                "plan a.yaml --resolved --coarse",
                "check"
            })
    void wrongCallsEndWithTwoAndAHint(String call) {
        assertEquals(2, baymist(call.isEmpty() ? new String[0] : call.split(" ")));
        assertTrue(err.toString().startsWith("baymist: "), err.toString());
        assertTrue(err.toString().contains("--help'"), err.toString());
        assertTrue(stages.seen.isEmpty());
    }

    @Test
    void theRegionOfAFieldReachesTheEngine() {
        assertEquals(2, baymist("field", "a.yaml", "--region", "3"));
        assertEquals(new FieldOptions(new RegionChoice.Bare(3), true), stages.askedField);
        baymist("field", "a.yaml", "--at", "-40 mm, 1 m,0.06 m", "--within", "4 in", "--no-run", "--full");
        Vec3 point = new Vec3(-0.04, 1, 0.06);
        assertEquals(new FieldOptions(new RegionChoice.At(point, 0.1016), false, Planning.FULL), stages.askedField);
        baymist("field", "a.yaml", "--part", "rib 3");
        assertEquals(new FieldOptions(new RegionChoice.OfPart("rib 3"), true), stages.askedField);
    }

    @Test
    void theLimitsOfAPlanReachTheEngine() {
        assertEquals(
                2,
                baymist(
                        "plan",
                        "a.yaml",
                        "--trigger",
                        "40",
                        "--passes",
                        "3",
                        "--runs",
                        "1",
                        "--product",
                        "25",
                        "--coarse"));
        PlanOptions asked = stages.askedPlan;
        assertEquals(40, asked.triggerS());
        assertEquals(3, asked.passes());
        assertEquals(1, asked.runs());
        assertEquals(25e-6, asked.productM3(), 1e-18);
        assertFalse(asked.full());
        assertEquals(DoseSettings.DEFAULT, asked.dose());
    }

    @Test
    void whichBaysAreComputedReachesTheEngine() {
        assertEquals(0, baymist("run", "a.yaml", "--out", dir()));
        assertEquals(PartRule.BY_MEMORY, stages.part);
        assertEquals(0, baymist("check", "a.yaml", "--part", "2"));
        assertEquals(PartRule.rings(2), stages.part);
        assertEquals(0, baymist("check", "a.yaml", "--part", "whole"));
        assertEquals(PartRule.WHOLE, stages.part);
    }

    @Test
    void voxelAndThreadsReachTheEngine() {
        assertEquals(0, baymist("run", "a.yaml", "--out", dir(), "--voxel", "4 mm x 10 mm x 2 mm", "--threads", "3"));
        assertEquals(0.004, stages.seen.get(0).voxel().xM(), 1e-15);
        assertEquals(0.010, stages.seen.get(0).voxel().yM(), 1e-15);
        assertEquals(0.002, stages.seen.get(0).voxel().zM(), 1e-15);
        assertEquals(3, stages.threads);
        assertEquals(0, baymist("check", "a.yaml", "--voxel", "0.25 in"));
        assertEquals(0.00635, stages.seen.get(1).voxel().zM(), 1e-15); // 1 in = 25.4 mm exactly
    }

    @Test
    void checkPrintsTextOrJson() throws IOException {
        assertEquals(0, baymist("check", "a.yaml"));
        assertTrue(out.toString().contains("Openings"));
        out.getBuffer().setLength(0);
        assertEquals(0, baymist("check", "a.yaml", "--json", "--quiet"));
        assertEquals(4, new ObjectMapper().readTree(out.toString()).get("bays").size());
    }

    @Test
    void checkDrawsThePictureWhereToldAndSaysSo() throws IOException {
        Path png = folder.resolve("deep/er/structure.png");
        assertEquals(0, baymist("check", "a.yaml", "--picture", png.toString()));
        assertTrue(ImageIO.read(png.toFile()).getWidth() >= 1600);
        assertTrue(out.toString().contains("Written to " + png), out.toString());
        Path file = Files.writeString(folder.resolve("taken"), "x");
        assertEquals(
                3,
                baymist(
                        "check",
                        "a.yaml",
                        "--quiet",
                        "--picture",
                        file.resolve("a.png").toString()));
        assertOneLine(err.toString().lines().reduce((a, b) -> b).orElse(""));
    }

    @Test
    void reachPrintsTextOrJsonAndDraws() throws IOException {
        Path png = folder.resolve("deep/reach.png");
        assertEquals(0, baymist("reach", "a.yaml", "--picture", png.toString()));
        assertTrue(ImageIO.read(png.toFile()).getWidth() >= 1600);
        assertTrue(out.toString().contains("thin wand") && out.toString().contains("In words"), out.toString());
        assertTrue(err.toString().contains("reach of 2 insertions"), err.toString());
        assertFalse(err.toString().contains("job time"), err.toString());
        out.getBuffer().setLength(0);
        assertEquals(0, baymist("reach", "a.yaml", "--json", "--quiet"));
        assertEquals(
                2, new ObjectMapper().readTree(out.toString()).get("insertions").size());
        assertEquals(ReachOptions.DEFAULT, stages.asked);
    }

    @Test
    void reachTakesWandsFoldersAndDistances() throws IOException {
        Path wands = Files.createDirectories(folder.resolve("wands"));
        Files.writeString(wands.resolve("b.yaml"), "x");
        Files.writeString(wands.resolve("a.yaml"), "x");
        Files.writeString(wands.resolve("notes.txt"), "x");
        assertEquals(
                0,
                baymist(
                        "reach",
                        "s.yaml",
                        "--wand",
                        "one.yaml",
                        "--wand",
                        "two.yaml",
                        "--all-wands",
                        "--wand-folder",
                        wands.toString(),
                        "--all-openings",
                        "--within",
                        "4 in"));
        assertEquals(
                List.of("one.yaml", "two.yaml", "a.yaml", "b.yaml"),
                stages.asked.wands().stream().map(WandSpec::name).toList());
        assertTrue(stages.asked.allOpenings());
        assertEquals(0.1016, stages.asked.withinM(), 1e-15); // 1 in = 25.4 mm exactly
    }

    @Test
    void reachRefusesFoldersWithoutWands() throws IOException {
        Path empty = Files.createDirectories(folder.resolve("empty"));
        assertEquals(2, baymist("reach", "s.yaml", "--all-wands", "--wand-folder", empty.toString()));
        assertTrue(err.toString().contains("holds no wand file"), err.toString());
        err.getBuffer().setLength(0);
        String nowhere = folder.resolve("nowhere").toString();
        assertEquals(2, baymist("reach", "s.yaml", "--all-wands", "--wand-folder", nowhere));
        assertTrue(err.toString().contains("there is no wand folder"), err.toString());
        assertTrue(stages.seen.isEmpty());
    }

    @Test
    void schemaAndVerifyPrintWhatTheEngineGives() {
        assertEquals(0, baymist("schema"));
        assertEquals("{\"$schema\": \"x\"}\n", out.toString());
        out.getBuffer().setLength(0);
        assertEquals(0, baymist("schema", "--findings"));
        assertEquals(SceneSchema.json("findings"), out.toString());
        assertTrue(out.toString().contains("\"title\" : \"Baymist findings\""), out.toString());
        out.getBuffer().setLength(0);
        assertEquals(0, baymist("verify", "--case", "box", "--quiet"));
        assertTrue(out.toString().contains("box") && out.toString().contains("1 of 1 values"), out.toString());
        stages.passed = false;
        assertEquals(4, baymist("verify"));
    }

    @Test
    void verifyWritesItsPagesAndTheCoverageOfScenes() throws IOException {
        assertEquals(0, baymist("verify", "--write", dir()));
        for (String file : List.of("cases.md", "errors.svg", "order.md", "order.svg")) {
            assertTrue(Files.size(Path.of(dir(), file)) > 100, file);
        }
        assertEquals(0, baymist("verify", "--write", dir(), "--coverage", "a.yaml", "--coverage", "b/tail.yaml"));
        String page = Files.readString(Path.of(dir(), "coverage.md"));
        assertTrue(page.contains("| a | **converged** |") && page.contains("| tail | spread |"), page);
        assertEquals(2, baymist("verify", "--coverage", "a.yaml"));
        assertEquals(2, baymist("verify", "--write", dir(), "--case", "x"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--help",
                "run --help",
                "check --help",
                "reach --help",
                "schema --help",
                "verify --help",
                "help run"
            })
    void helpTeachesWithExamplesAndExitCodesInAHundredColumns(String call) {
        assertEquals(0, baymist(call.split(" ")));
        String help = out.toString();
        assertTrue(help.contains("Example") && help.contains("Exit codes"), help);
        for (String line : help.split("\n", -1)) {
            assertTrue(line.length() <= 100, line);
        }
        assertEquals("", err.toString());
    }

    @Test
    void versionIsOneLine() {
        assertEquals(0, baymist("--version"));
        assertOneLine(out.toString());
        assertTrue(out.toString().startsWith("baymist "));
    }

    @Test
    void folderIsNamedAfterTheScene() {
        assertEquals("wing-box", RunCommand.sceneName(Path.of("scenes/wing-box.yaml")));
        assertEquals("job", RunCommand.sceneName(Path.of("job")));
        assertEquals(".hidden", RunCommand.sceneName(Path.of(".hidden")));
        assertEquals("scene", RunCommand.sceneName(Path.of("/")));
    }

    @Test
    void barGoesToStandardErrorWithStageAndJobTime() {
        PrintStream old = System.err;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        System.setErr(new PrintStream(bytes, true, StandardCharsets.UTF_8));
        try (Progress bar = Progress.of(new Console(new PrintWriter(out), new PrintWriter(err), true), false)) {
            bar.stage("fog");
            bar.progress(0.25, 12.5);
            bar.stage("film");
            bar.progress(1.0, 300);
            assertFalse(bar.cancelled());
        } finally {
            System.setErr(old);
        }
        String shown = bytes.toString(StandardCharsets.UTF_8);
        assertTrue(shown.contains("100%"), shown);
        assertEquals("", out.toString() + err);
    }

    @Test
    void fileProblemsNameTheFileInOneSentence() {
        for (Exception e : List.of(
                new AccessDeniedException("/x/result.json"),
                new NoSuchFileException("/x/result.json"),
                new FileSystemException("/x/result.json", null, "No space left on device"),
                new UncheckedIOException(new FileAlreadyExistsException("/x/result.json")))) {
            err.getBuffer().setLength(0);
            assertEquals(3, Cli.report(e, new PrintWriter(err, true), false));
            assertOneLine(err.toString());
            assertTrue(err.toString().contains("/x/result.json"), err.toString());
        }
        err.getBuffer().setLength(0);
        assertEquals(3, Cli.report(new IOException((String) null), new PrintWriter(err, true), false));
        assertTrue(err.toString().contains("no reason was given."), err.toString());
    }

    @Test
    void dumbTerminalsGetLinesNotABar() {
        assertFalse(Terminals.canRedraw("dumb"));
        assertTrue(Terminals.canRedraw("xterm-256color"));
        assertTrue(Terminals.canRedraw(null));
        Terminals.watched(); // whatever it says here, it must not throw
    }

    @Test
    void sizeWritesAWandAndADrawingAndSaysSo() throws IOException {
        Path wand = folder.resolve("wand.yaml");
        Path drawing = folder.resolve("wand.pdf");
        assertEquals(0, baymist("size", "job.yaml", "--wand", wand.toString(), "--drawing", drawing.toString()));
        assertTrue(out.toString().contains("Make: "), out.toString());
        assertTrue(out.toString().contains("Written to " + drawing), out.toString());
        assertTrue(Files.readString(wand).contains("ring of"));
        assertTrue(Files.readString(drawing, StandardCharsets.ISO_8859_1).startsWith("%PDF"));
    }

    @Test
    void sizeWithoutAnAnswerEndsWithFourAndWritesNothing() {
        stages.meets = false;
        Path wand = folder.resolve("wand.yaml");
        assertEquals(4, baymist("size", "job.yaml", "--wand", wand.toString()));
        assertTrue(
                err.toString().contains("No wand of those tried meets the goal; no file was written."), err.toString());
        assertFalse(Files.exists(wand));
    }

    @Test
    void sizeReadsWhatToChooseAmong() {
        assertEquals(
                0,
                baymist(
                        "size",
                        "job.yaml",
                        "--outer",
                        "1/4 in / 3 mm",
                        "--outer",
                        "5 mm",
                        "--orifice",
                        "0.5 mm",
                        "--bend",
                        "90 deg / 25 mm / 40 mm",
                        "--mark",
                        "100 mm",
                        "--target",
                        "60",
                        "--material",
                        "brass"));
        SizeRequest asked = stages.sized.get(0);
        assertEquals(2, asked.tubes().size());
        assertEquals(0.00635, asked.tubes().get(0).outerM(), 1e-12);
        assertEquals(0.003, asked.tubes().get(0).boreM(), 1e-12);
        assertEquals(Math.PI / 2, asked.hooks().get(0).angleRad(), 1e-12);
        assertTrue(asked.hooksFirst());
        assertEquals(0.6, asked.reached(), 1e-12);
        assertEquals("brass", asked.material().name());
        assertTrue(asked.patterns().stream().anyMatch(p -> p.widestM() == 0.0005));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--target=0",
                "--target=101",
                "--seams=-1",
                "--outer=3 mm / 4 mm",
                "--outer=1 / 2 / 3",
                "--bend=90 deg",
                "--bend=200 deg / 25 mm / 40 mm",
                "--mark=1 mm",
                "--longest=20 m",
                "--material=wood",
                "--orifice=30 mm",
                "--drawing=wand.dxf"
            })
    void sizeRefusesWhatItCanNotTry(String option) {
        assertEquals(2, baymist("size", "job.yaml", option));
        assertTrue(err.toString().lines().anyMatch(l -> l.startsWith("baymist: --")), err.toString());
        assertTrue(stages.sized.isEmpty());
    }
}
