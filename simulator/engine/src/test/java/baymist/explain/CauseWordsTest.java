package baymist.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** The published lists of causes and of changes, and how numbers are said. */
class CauseWordsTest {
    /** The list that the project has published: docs/theory/explain.md, section 4. */
    private static final List<String> PUBLISHED = List.of(
            "masked",
            "closed early",
            "access",
            "pattern",
            "shadow",
            "distance",
            "hole too small",
            "dead end",
            "settling",
            "time",
            "quantity");

    private static String doc(String name) throws IOException {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(folder.resolve("docs"))) {
            folder = folder.getParent();
        }
        return Files.readString(folder.resolve("docs").resolve(name));
    }

    @Test
    void theCausesAreThePublishedOnesInOrderInTheoryGuideAndFormat() throws IOException {
        assertEquals(PUBLISHED, Arrays.stream(Cause.values()).map(Cause::word).toList());
        for (String word : PUBLISHED) {
            assertTrue(doc("theory/explain.md").contains("| " + word + " |"), word);
            assertTrue(doc("guide/explain.md").contains("| " + word + " |"), word);
            assertTrue(doc("formats/explain.md").contains("`" + word + "`"), word);
        }
        for (ChangeKind k : ChangeKind.values()) {
            assertTrue(doc("formats/explain.md").contains("`" + k.word() + "`"), k.word());
        }
    }

    @Test
    void whatDrillsSaysThatItNeedsApprovedDataAndALicensedPerson() {
        String said = Remedy.DRILLING.toLowerCase(Locale.ROOT);
        assertTrue(said.contains("approved data") && said.contains("licensed"));
        assertTrue(ChangeKind.WIDER_HOLE.drills() && ChangeKind.DRILL_VENT.drills() && ChangeKind.DRILL_ENTRY.drills());
        assertFalse(ChangeKind.TURN_PIN.drills() || ChangeKind.OTHER_ENTRY.drills());
    }

    /** The published rule with its default, a haze of 1 um; docs/theory/explain.md, section 1. */
    @Test
    void aChangeHoldsFromTwiceTheFilmAndAHazeMoreOrFromTwentyPointsOn() {
        double haze = 1e-6;
        PatchFilm before = new PatchFilm(2e-6, 0.4, 0.1, 0);
        assertTrue(before.holds(new PatchFilm(4e-6, 0.4, 0.2, 0), haze));
        assertFalse(before.holds(new PatchFilm(3.99e-6, 0.599, 0.2, 0), haze));
        assertTrue(before.holds(new PatchFilm(2e-6, 0.601, 0.1, 0), haze));
        PatchFilm bare = new PatchFilm(0.1e-6, 0, 0.01, 0);
        assertFalse(bare.holds(new PatchFilm(0.2e-6, 0, 0.02, 0), haze), "twice next to nothing");
        assertFalse(bare.holds(new PatchFilm(1.09e-6, 0.19, 0.1, 0), haze));
        assertTrue(bare.holds(new PatchFilm(1.11e-6, 0.19, 0.1, 0), haze));
        assertFalse(new PatchFilm(0, 0, 0, 0).holds(new PatchFilm(0, 0, 0, 0), haze));
        assertTrue(before.byJets(new PatchFilm(4e-6, 1, 0.3, 1.01e-6)));
        assertFalse(before.byJets(new PatchFilm(4e-6, 1, 0.3, 0.9e-6)));
    }

    @Test
    void numbersAreSaidAsPeopleSayThem() {
        assertEquals("35 mm", Words.length(0.0351));
        assertEquals("1.25 m", Words.length(1.25));
        assertEquals("nothing", Words.film(0));
        assertEquals("less than 0.1 um", Words.film(1e-8));
        assertEquals("12 um", Words.film(12.3e-6));
        assertEquals("nearly all", Words.share(0.999));
        assertEquals("less than 1 %", Words.share(0.001));
        assertEquals("5 min", Words.time(300));
        assertEquals("270 degrees (9 o'clock)", Words.clock(Math.toRadians(270)));
        assertEquals("12 o'clock", Words.clock(0).substring(11, 21));
        assertEquals("rib 5", Words.the("rib 5"));
        assertEquals("the upper skin", Words.the("upper skin"));
        assertEquals("12345.6 mm", Yaml.length(12.3456));
        assertEquals("20 mm", Yaml.length(0.02));
    }
}
