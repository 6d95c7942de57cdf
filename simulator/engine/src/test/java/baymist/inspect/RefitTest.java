package baymist.inspect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.card.CardSource;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.Inspection;
import baymist.scene.Inspection.Seen;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.study.Planning;
import baymist.voxel.SurfelSet;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Findings made by a hidden setting give that setting back. */
class RefitTest {
    private static final RunOptions TWO = new RunOptions(2);

    @TempDir
    static Path folder;

    private static Scene scene;
    private static CardSource stated;

    @BeforeAll
    static void runAsStated() throws Exception {
        scene = InspectionScene.in(folder);
        stated = CardSource.of(Simulation.run(scene, TWO, RunObserver.NONE));
    }

    /**
     * What somebody would note who looks at the job done at a hidden setting: 160 places, 40 of them dry, a film of 15 % scatter where
     * there is one to wipe off and weigh, the eye's verdict everywhere. The rays of the hidden job are others.
     */
    private static Inspection findings(Setting hidden, long seed) {
        Scene truth = SceneEdit.of(hidden.of(scene)).raySeed(1 + seed).done();
        CardSource job = CardSource.of(Simulation.run(truth, TWO, RunObserver.NONE));
        Random random = new Random(seed);
        SurfelSet q = job.grid().surfels();
        List<Inspection.Place> places = new ArrayList<>();
        int dry = 0;
        while (places.size() < 160) {
            int s = random.nextInt(q.count());
            if (!q.isStructure(s)) {
                continue;
            }
            Vec3 at = PlaceSamples.centre(q, s);
            String part = job.cavity().parts().get(q.part()[s]).name();
            Inspection.Place point =
                    new Inspection.Place(at, null, part, Seen.DRY, Double.NaN, 0.02, SourcePlace.of("test"));
            double film =
                    PlaceSamples.of(job, new Inspection("", List.of(point))).films()[0];
            Seen seen = FilmSpread.expected(film, scene.targets());
            dry += seen == Seen.DRY ? 1 : 0;
            if (seen == Seen.DRY && dry > 40) {
                continue;
            }
            double read = film > 1e-6 ? film * Math.exp(0.15 * random.nextGaussian()) : Double.NaN;
            places.add(new Inspection.Place(at, null, part, seen, read, 0.02, SourcePlace.of("test")));
        }
        return new Inspection("hidden", places);
    }

    @Test
    void hiddenSettingsComeBackWithin15Percent() {
        double[][] hidden = {{1.4, 0.75}, {0.7, 1.3}, {1.2, 1.2}};
        for (int seed = 0; seed < hidden.length; seed++) {
            Setting truth = new Setting(hidden[seed][0], hidden[seed][1]);
            InspectionResult r = InspectionStudy.of(
                    stated,
                    findings(truth, 10 + seed),
                    new InspectionStudy.Options(true, false, Planning.FULL),
                    TWO,
                    RunObserver.NONE);
            Refit.Result fit = r.refit();
            assertTrue(fit != null);
            String told = String.format(
                    Locale.ROOT,
                    "hidden %.2f %.2f, found %.3f (%.2f to %.2f) %.3f (%.2f to %.2f), misfit %.1f to %.1f",
                    truth.liquid(),
                    truth.size(),
                    fit.best().liquid(),
                    fit.liquidLow(),
                    fit.liquidHigh(),
                    fit.best().size(),
                    fit.sizeLow(),
                    fit.sizeHigh(),
                    fit.misfitBefore(),
                    fit.misfitAfter());
            assertEquals(1, fit.best().liquid() / truth.liquid(), 0.15, told);
            assertEquals(1, fit.best().size() / truth.size(), 0.15, told);
            assertTrue(fit.speaks(), told);
        }
    }
}
