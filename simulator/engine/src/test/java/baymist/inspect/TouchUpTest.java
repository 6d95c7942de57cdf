package baymist.inspect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.card.CardMaker;
import baymist.card.CardOptions;
import baymist.card.CardSource;
import baymist.card.WorkCard;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.Inspection;
import baymist.scene.Inspection.Seen;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.study.Planning;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TouchUpTest {
    private static final RunOptions TWO = new RunOptions(2);
    private static final InspectionStudy.Options TOUCH_UP_ONLY =
            new InspectionStudy.Options(false, true, new Planning(1, 6, 64, 1));

    @TempDir
    static Path folder;

    private static CardSource source;

    @BeforeAll
    static void run() throws Exception {
        Scene scene = InspectionScene.in(folder);
        source = CardSource.of(Simulation.run(scene, TWO, RunObserver.NONE));
    }

    private static Inspection.Place seen(double x, double y, double z, Seen seen) {
        return new Inspection.Place(
                new Vec3(x, y, z),
                null,
                null,
                seen,
                Double.NaN,
                0.02,
                new SourcePlace("findings.yaml", 3, "findings[1]"));
    }

    /** The job sprays the first bay alone; the last bay's side walls from 400 mm on were found dry, the first bay's wet. */
    @Test
    void passesGoWhereItWasFoundDryAndNowhereElse() {
        Inspection dry = new Inspection(
                "last bay",
                List.of(
                        seen(0.50, 0.035, 0, Seen.DRY),
                        seen(0.46, -0.035, 0, Seen.DRY),
                        seen(0.10, 0.035, 0, Seen.WET)));
        InspectionResult r = InspectionStudy.of(source, dry, TOUCH_UP_ONLY, TWO, RunObserver.NONE);
        TouchUp.Result t = r.touchUp();
        assertNotNull(t);
        Scene job = t.scene();
        assertNotNull(job);
        assertEquals(List.of(0, 1), t.served());
        for (PassSpec p : job.passes()) {
            assertTrue(p.toDepthM() > 0.35 && p.fromDepthM() < 0.6, p.toString());
        }
        // what was dry gets the target build by a run of the touch-up, not by its own reckoning
        for (WorkCard.Point p : r.touchUpPlaces()) {
            assertTrue(p.filmM() > 0.5 * source.scene().targets().buildM(), p.toString());
        }
        CardSource touched = r.touchUpSource();
        assertNotNull(touched);
        WorkCard card = CardMaker.touchUp(touched, CardOptions.NONE, r.touchUpPlaces());
        assertTrue(card.touchUp());
        assertEquals(2, card.points().size());
        assertEquals(
                card.product().sprayedM3(),
                card.steps().stream().mapToDouble(WorkCard.Step::productM3).sum(),
                1e-12);
        assertTrue(card.points().stream().allMatch(p -> p.doubt() == WorkCard.Doubt.FOUND_DRY));
    }

    @Test
    void nothingFoundWrongNeedsNoTouchUp() {
        Inspection wet = new Inspection("", List.of(seen(0.1, 0.035, 0, Seen.WET)));
        InspectionResult r = InspectionStudy.of(source, wet, TOUCH_UP_ONLY, TWO, RunObserver.NONE);
        assertEquals(null, r.touchUp());
        assertTrue(r.touchUpPlaces().isEmpty());
    }

    @Test
    void findingsThatNameNothingAreAllToldAtOnce() {
        List<Inspection.Place> places = new ArrayList<>();
        places.add(seen(5, 0, 0, Seen.DRY));
        SourcePlace at = new SourcePlace("findings.yaml", 4, "findings[2]");
        places.add(new Inspection.Place(null, "9.9z", null, Seen.DRY, Double.NaN, 0.02, at));
        places.add(new Inspection.Place(Vec3.ZERO, null, "no such part", Seen.DRY, Double.NaN, 0.02, at));
        SceneException e = assertThrows(
                SceneException.class,
                () -> InspectionStudy.of(source, new Inspection("", places), TOUCH_UP_ONLY, TWO, RunObserver.NONE));
        assertEquals(
                List.of("FND-001", "FND-002", "FND-003"),
                e.findings().stream().map(f -> f.id()).toList());
        assertFalse(e.getMessage().isBlank());
    }
}
