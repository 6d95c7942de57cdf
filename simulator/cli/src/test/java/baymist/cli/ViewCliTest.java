package baymist.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The viewer's command in programs of their own, with screens that are missing or get lost. */
class ViewCliTest {
    private static final String SCENE = "../../scenes/control-surface-pin-forward.yaml";
    private static final String CLASSES =
            System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));

    @TempDir
    Path folder;

    private Process start(String display, List<String> jvm, String... args) throws IOException {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx1g"));
        command.addAll(jvm);
        command.addAll(List.of("-cp", CLASSES, "baymist.cli.Main"));
        command.addAll(List.of(args));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectOutput(folder.resolve("out.txt").toFile())
                .redirectError(folder.resolve("err.txt").toFile());
        builder.environment().remove("DISPLAY");
        if (display != null) {
            builder.environment().put("DISPLAY", display);
        }
        return builder.start();
    }

    private String text(String file) throws IOException {
        return Files.readString(folder.resolve(file), StandardCharsets.UTF_8);
    }

    @Test
    void commandsWithoutAWindowNeverLoadJavaFx() throws Exception {
        Process check = start(null, List.of("-Xlog:class+load"), "check", SCENE, "--voxel", "30 mm", "--quiet");
        assertTrue(check.waitFor(120, TimeUnit.SECONDS));
        assertEquals(0, check.exitValue(), text("err.txt"));
        String loaded = text("out.txt");
        assertTrue(loaded.contains("baymist.cli.CheckCommand"), "the log names classes");
        assertFalse(loaded.contains("javafx."), "JavaFX was loaded");
        assertFalse(loaded.contains("baymist.viewer.fx."), "the window was loaded");
    }

    @Test
    void withoutADisplayOneSentenceSaysSo() throws Exception {
        assumeTrue(System.getProperty("os.name").contains("Linux"));
        for (String display : new String[] {null, ":4711"}) {
            Process view = start(
                    display,
                    List.of(),
                    "view",
                    SCENE,
                    "--picture",
                    folder.resolve("p.png").toString());
            assertTrue(view.waitFor(120, TimeUnit.SECONDS));
            assertEquals(2, view.exitValue());
            String says = text("err.txt").strip();
            assertEquals(1, says.lines().count(), says);
            assertTrue(says.contains("display"), says);
            assertFalse(Files.exists(folder.resolve("p.png")));
        }
    }

    @Test
    void aLostDisplayLeavesNoHalfWrittenFile() throws Exception {
        Path xvfb = Path.of("/usr/bin/Xvfb");
        assumeTrue(Files.isExecutable(xvfb), "no Xvfb");
        String display = ":" + (2000 + ProcessHandle.current().pid() % 3000);
        Process screen = new ProcessBuilder(
                        xvfb.toString(),
                        display,
                        "-screen",
                        "0",
                        "1000x700x24",
                        "+extension",
                        "GLX",
                        "-nolisten",
                        "tcp")
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        try {
            Path socket = Path.of("/tmp/.X11-unix/X" + display.substring(1));
            for (int i = 0; i < 200 && !Files.exists(socket); i++) {
                Thread.sleep(50);
            }
            Path pictures = Files.createDirectory(folder.resolve("pictures"));
            Process view = start(
                    display,
                    List.of(),
                    "view",
                    SCENE,
                    "--voxel",
                    "14 mm",
                    "--picture",
                    pictures.resolve("p.png").toString());
            // the toolkit is up before the run begins
            for (int i = 0; i < 1200 && !text("err.txt").contains("spray"); i++) {
                Thread.sleep(50);
                assertTrue(view.isAlive(), () -> "ended early");
            }
            screen.destroyForcibly().waitFor();
            assertTrue(view.waitFor(180, TimeUnit.SECONDS), "it ends");
            assertNotEquals(0, view.exitValue());
            try (Stream<Path> left = Files.list(pictures)) {
                assertEquals(List.of(), left.toList());
            }
        } finally {
            screen.destroyForcibly();
        }
    }
}
