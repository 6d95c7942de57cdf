package baymist.explain;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.io.SceneReader;
import baymist.scene.io.SceneWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * What is recommended for the largest bare region of every demo scene is written to a file, read again and run anew: it doubles the region's
 * film with a haze more, or raises its reached share by 20 points. Coarser than the program's own planning, so that all scenes fit into a few
 * minutes.
 */
class RecommendationTest {
    private static final int CELLS = 2_500;
    private static final ExplainOptions ASKED =
            ExplainOptions.DEFAULT.cells(CELLS).runs(12);
    /** Part of the scenes' file names: -Dbaymist.scenes=wing runs those alone; all of them where nothing is stated. */
    private static final String ONLY = System.getProperty("baymist.scenes", "");

    private static final RunOptions TWO = new RunOptions(2);

    @TempDir
    private Path folder;

    private static Path root() {
        Path at = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(at.resolve("scenes"))) {
            at = at.getParent();
        }
        return at;
    }

    @TestFactory
    List<DynamicTest> theRecommendationHoldsOnEveryDemoScene() throws IOException {
        try (Stream<Path> scenes = Files.list(root().resolve("scenes"))) {
            return scenes.filter(
                            p -> p.toString().endsWith(".yaml") && p.toString().contains(ONLY))
                    .sorted()
                    .map(p -> DynamicTest.dynamicTest(p.getFileName().toString(), () -> holds(p)))
                    .toList();
        }
    }

    private void holds(Path file) {
        boolean open = file.getFileName().toString().contains("mesh");
        assumeTrue(!open || Files.isDirectory(root().resolve("../shared/data")), "the open meshes are not here");
        Explanation e = Explain.of(SceneReader.read(file), ASKED, TWO, RunObserver.NONE);
        String said = String.join(" ", e.sentences());
        Remedy best = e.recommended();
        assertTrue(best != null && best.holds(), said);
        assertFalse(said.contains("NaN") || said.contains("Infinity"), said);
        PatchFilm after = again(e, best, file);
        boolean doubled = after.meanM() >= 2 * e.film().meanM()
                && after.meanM() - e.film().meanM() >= 1e-6;
        assertTrue(doubled || after.reached() >= e.film().reached() + 0.2, after + " after " + said);
    }

    /** The recommended job as a user gets it: written beside the scene's own folder, read, brought to the same resolution, run whole. */
    private PatchFilm again(Explanation e, Remedy best, Path file) {
        try {
            Path written = folder.resolve("better-" + file.getFileName());
            SceneWriter.write(best.job(), written);
            Scene base = e.base().scene();
            Scene same = SceneEdit.of(SceneReader.read(written))
                    .voxel(base.voxel())
                    .air(base.air())
                    .numerics(base.sizeBins(), base.raysPerJet(), base.stationSpacingM())
                    .done();
            RunResult run = Simulation.run(same, TWO, RunObserver.NONE);
            return new Patch(e.region(), e.base()).film(run, e.base().scene().targets());
        } catch (IOException x) {
            throw new UncheckedIOException(x);
        }
    }
}
