package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EngineBuildTest {
    @TempDir
    Path folder;

    @Test
    void aChangedClassOfTheEngineIsAnotherBuildAndAChangedReportIsNot() throws IOException {
        Path fog = write("baymist/fog/Fog.class", 1);
        Path page = write("baymist/report/Page.class", 1);
        String before = EngineBuild.digest(folder);
        Files.write(page, new byte[] {2});
        assertEquals(before, EngineBuild.digest(folder));
        Files.write(fog, new byte[] {2});
        assertNotEquals(before, EngineBuild.digest(folder));
        Files.write(fog, new byte[] {1});
        assertEquals(before, EngineBuild.digest(folder));
        write("baymist/fog/Mist.class", 1);
        assertNotEquals(before, EngineBuild.digest(folder));
    }

    @Test
    void theClassesOfThisProgramAreRead() {
        assertTrue(EngineBuild.id().matches("[0-9a-f]{16}"), EngineBuild.id());
    }

    private Path write(String name, int content) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(java.util.Objects.requireNonNull(file.getParent()));
        return Files.write(file, new byte[] {(byte) content});
    }
}
