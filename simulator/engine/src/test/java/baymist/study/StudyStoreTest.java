package baymist.study;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StudyStoreTest {
    @TempDir
    Path folder;

    @Test
    void whatIsKeptComesBackWhole() throws IOException {
        StudyStore.in(folder, "a").put(result());
        StudyStore again = StudyStore.in(folder, "a");
        StudyResult r = again.get("key");
        assertNotNull(r);
        assertEquals(result().bare(), r.bare());
        assertEquals(0.5, r.reached());
        assertArrayEquals(result().filmM(), r.filmM());
        assertEquals(1, again.taken());
        assertEquals(0, again.passedOver());
    }

    @Test
    void whatAnotherBuildKeptIsPassedOverAndCountedOnce() throws IOException {
        StudyStore.in(folder, "a").put(result());
        StudyStore other = StudyStore.in(folder, "b");
        assertNull(other.get("key"));
        assertNull(other.get("key"));
        assertNull(other.get("unheard of"));
        assertEquals(1, other.passedOver());
        other.put(result());
        assertNotNull(other.get("key"));
        assertNotNull(StudyStore.in(folder, "a").get("key"));
    }

    private static StudyResult result() {
        return new StudyResult(
                "key",
                null,
                0.5,
                0.4,
                0.1,
                0,
                0.3,
                0.2,
                1,
                1e-5,
                10,
                20,
                1e-4,
                List.of(new StudyResult.Bare("rear spar", 0.01)),
                1,
                List.of("servo"),
                new double[] {1e-6, 2e-6});
    }
}
