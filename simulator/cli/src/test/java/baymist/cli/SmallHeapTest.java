package baymist.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program with a small heap, as a process of its own: a sentence instead of an error of the platform. */
class SmallHeapTest {
    @Test
    void aRunThatHasNoRoomEndsWithASentenceAndWritesNothing(@TempDir Path folder) throws Exception {
        Path out = folder.resolve("out");
        String said = ends(2, "run", "scenes/wing-box.yaml", "--voxel", "8 mm", "--quiet", "--out", out.toString());
        assertTrue(said.contains("RUN-008") && said.contains("would fit (--voxel), or start Java with -Xmx"), said);
        assertFalse(said.contains("OutOfMemory") || said.contains("out of memory"), said);
        assertFalse(out.toFile().exists(), "half a result");
    }

    private static String ends(int code, String... args) throws IOException, InterruptedException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        List<String> call = new ArrayList<>(List.of(
                java, "-Xmx96m", "-Djava.awt.headless=true", "-cp", KilledStudyTest.classPath(), Main.class.getName()));
        call.addAll(List.of(args));
        Process process = new ProcessBuilder(call)
                .directory(Path.of("..", "..").toFile())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        assertEquals(code, process.exitValue(), said);
        return said;
    }
}
