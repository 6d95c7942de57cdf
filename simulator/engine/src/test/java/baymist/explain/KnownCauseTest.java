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
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
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

    /** Seeds that are run: -Dbaymist.seeds=1-5 asks for all that docs/theory/explain.md, section 7, tells of; one number for one seed. */
    private static final List<Long> SEEDS = seeds(System.getProperty("baymist.seeds", "1-2"));

    /** Changes that are run at most: enough for all that could prove a cause, which come first. */
    private static final int RUNS = 7;

    private static final long FIRST = SEEDS.get(0);

    @TempDir
    private Path folder;

    private static List<Long> seeds(String text) {
        String[] ends = text.split("-", -1);
        return LongStream.rangeClosed(Long.parseLong(ends[0]), Long.parseLong(ends[ends.length - 1]))
                .boxed()
                .toList();
    }

    private static Explanation explain(KnownCavities.Known known) {
        return Explain.of(
                known.scene(),
                ExplainOptions.DEFAULT.about(known.atM()).runs(RUNS),
                new RunOptions(2),
                RunObserver.NONE);
    }

    @TestFactory
    List<DynamicTest> theCauseIsTheOneThatTheCavityWasMadeFor() {
        return SEEDS.stream()
                .flatMap(seed -> ALL.stream().map(name -> test(name, seed)))
                .toList();
    }

    private DynamicTest test(String name, long seed) {
        return DynamicTest.dynamicTest(name + ", seed " + seed, () -> {
            KnownCavities.Known known = KnownCavities.of(name, seed, folder);
            Explanation e = explain(known);
            assertEquals(known.cause(), e.cause(), () -> ExplainReport.text(e));
            assertTrue(e.proved(), e.because());
            wellFormed(e);
        });
    }

    private static void wellFormed(Explanation e) {
        double haze = e.base().scene().targets().hazeM();
        double last = Double.POSITIVE_INFINITY;
        for (Remedy r : e.remedies()) {
            assertEquals(e.film(), r.before());
            double more = r.after().meanM() - r.before().meanM();
            boolean doubled = r.after().meanM() >= 2 * r.before().meanM() && more >= haze;
            boolean points = r.after().reached() - r.before().reached() >= 0.2;
            assertEquals(doubled || points, r.holds());
            assertTrue(!r.kind().drills() || r.caution().startsWith(Remedy.DRILLING), r.caution());
            double rank = r.holds() ? 1 + r.gain() : r.gain() - 1;
            assertTrue(rank <= last, "ranked by gain, those that hold first");
            last = rank;
        }
        boolean any = e.remedies().stream().anyMatch(Remedy::holds);
        assertEquals(any, e.recommended() != null && e.recommended().holds());
        assertEquals(any, e.needs().isEmpty());
        readsAloud(e);
        for (Fact f : e.facts()) {
            for (Fact each : f.all()) {
                assertFalse(each.says().contains("NaN") || each.says().contains("Infinity"), each.says());
                assertTrue(each.numbers().values().stream().allMatch(Double::isFinite));
            }
        }
    }

    /** Every sentence is one: it begins with a capital letter or a quoted name, ends with a full stop, and is plain ASCII on one line. */
    private static void readsAloud(Explanation e) {
        List<String> said = new ArrayList<>(e.sentences());
        e.facts().forEach(f -> f.all().forEach(each -> said.add(each.says())));
        assertTrue(e.sentences().size() >= 4 && e.sentences().size() <= 12, said.toString());
        for (String sentence : said) {
            assertTrue(sentence.matches("['A-Z0-9][\\x20-\\x7e]*\\."), sentence);
            assertFalse(sentence.contains("  ") || sentence.contains("..") || sentence.contains(" ."), sentence);
        }
        assertTrue(e.sentences().stream()
                .anyMatch(q -> q.contains("The cause is " + e.cause().word())));
    }

    /** The whole explanation again with other threads, and its recommendation run again from the explanation's own scene. */
    @Test
    void anExplanationIsTheSameOnAnyThreadCountAndItsRecommendationHoldsWhenRunAgain() throws IOException {
        KnownCavities.Known known = KnownCavities.of("pattern", FIRST, folder);
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
