package baymist.scene.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import org.junit.jupiter.api.Test;

class SuggestionTest {
    @Test
    void distanceAgreesWithWorkedExamples() {
        // worked pairs of textbooks: Levenshtein kitten/sitting 3; Damerau's four edits, each 1 (Damerau 1964)
        assertEquals(3, Suggestion.distance("kitten", "sitting"));
        assertEquals(1, Suggestion.distance("wnad", "wand"));
        assertEquals(1, Suggestion.distance("wan", "wand"));
        assertEquals(1, Suggestion.distance("wwand", "wand"));
        assertEquals(1, Suggestion.distance("wond", "wand"));
        assertEquals(3, Suggestion.distance("ca", "abc")); // restricted form; the unrestricted one gives 2
        assertEquals(4, Suggestion.distance("", "wand"));
    }

    @Test
    void onlyNearWordsAreSuggested() {
        assertEquals("wand", Suggestion.nearest("wnad", List.of("entry", "wand")));
        assertNull(Suggestion.nearest("zzz", List.of("entry", "wand")));
        assertNull(Suggestion.nearest("x".repeat(1000), List.of("wand")));
        assertEquals("; none is known here", Suggestion.of("a", List.of()));
    }
}
