package baymist.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.report.ExplainReport;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Cavities that are bare for one reason by construction: the reason is the reference, known from how they are made (dimensions by seed) and
 * not from the engine.
 */
class KnownCauseTest {
    private static final List<String> ALL = List.of(
            "shade",
            "short rod",
            "pattern",
            "ceiling",
            "dead end",
            "starved",
            "closed early",
            "small hole",
            "sump",
            "mask");

    /** Each cavity with a seed of its own; -Dbaymist.seed=N moves them all. */
    private static final long SEED = Long.getLong("baymist.seed", 1);

    @TempDir
    private Path folder;

    private static Explanation explain(KnownCavities.Known known) {
        return Explain.of(
                known.scene(), ExplainOptions.DEFAULT.about(known.atM()), new RunOptions(2), RunObserver.NONE);
    }

    @TestFactory
    List<DynamicTest> theCauseIsTheOneThatTheCavityWasMadeFor() {
        return ALL.stream()
                .map(name -> DynamicTest.dynamicTest(name + ", seed " + SEED, () -> {
                    KnownCavities.Known known = KnownCavities.of(name, SEED, folder);
                    Explanation e = explain(known);
                    assertEquals(known.cause(), e.cause(), () -> ExplainReport.text(e));
                    assertTrue(e.proved(), e.because());
                    wellFormed(e);
                }))
                .toList();
    }

    private static void wellFormed(Explanation e) {
        assertNotNull(e.recommended());
        assertTrue(e.recommended().holds());
        double last = Double.POSITIVE_INFINITY;
        for (Remedy r : e.remedies()) {
            assertEquals(e.film(), r.before());
            boolean doubled =
                    r.after().meanM() > 0 && r.after().meanM() >= 2 * r.before().meanM();
            boolean points = r.after().reached() - r.before().reached() >= 0.2;
            assertEquals(doubled || points, r.holds());
            assertEquals(r.kind().drills(), r.caution().equals(Remedy.DRILLING));
            double rank = r.holds() ? 1 + r.gain() : r.gain() - 1;
            assertTrue(rank <= last, "ranked by gain, those that hold first");
            last = rank;
        }
        for (Fact f : e.facts()) {
            for (Fact each : f.all()) {
                assertFalse(each.says().contains("NaN") || each.says().contains("Infinity"), each.says());
                assertTrue(each.numbers().values().stream().allMatch(Double::isFinite));
            }
        }
    }

    /** The whole explanation again with other threads, and its recommendation run again from the explanation's own scene. */
    @Test
    void anExplanationIsTheSameOnAnyThreadCountAndItsRecommendationHoldsWhenRunAgain() throws IOException {
        KnownCavities.Known known = KnownCavities.of("pattern", SEED, folder);
        ExplainOptions asked = ExplainOptions.DEFAULT.about(known.atM()).runs(3);
        Explanation one = Explain.of(known.scene(), asked, new RunOptions(1), RunObserver.NONE);
        Explanation three = Explain.of(known.scene(), asked, new RunOptions(3), RunObserver.NONE);
        assertEquals(json(one), json(three));
        Remedy best = one.recommended();
        assertNotNull(best);
        RunResult again = Simulation.run(best.scene(), new RunOptions(2), RunObserver.NONE);
        PatchFilm film = new Patch(one.region(), one.base())
                .film(again, one.base().scene().targets());
        assertEquals(best.after(), film);
        assertTrue(film.meanM() >= 2 * one.film().meanM()
                || film.reached() >= one.film().reached() + 0.2);
    }

    private static String json(Explanation e) throws IOException {
        StringWriter out = new StringWriter();
        ExplainReport.json(e, out);
        return out.toString();
    }
}
