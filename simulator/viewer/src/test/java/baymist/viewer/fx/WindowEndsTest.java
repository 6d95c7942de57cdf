package baymist.viewer.fx;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.viewer.ViewRequest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Windows that end early or begin badly. */
class WindowEndsTest {
    @TempDir
    Path folder;

    @BeforeAll
    static void start() {
        Fx.start();
    }

    private static long workers() {
        return Thread.getAllStackTraces().keySet().stream()
                .filter(t -> t.getName().equals("baymist work"))
                .count();
    }

    @Test
    void closingTheWindowWhileARunGoesOnStopsIt() throws Exception {
        long before = workers();
        // the demo at its own resolution: a run of half a minute and more
        Path file = SmallJob.root().resolve("scenes/control-surface-pin-forward.yaml");
        CountDownLatch closed = new CountDownLatch(1);
        ViewerWindow window = Fx.on(
                () -> ViewerWindow.open(new ViewRequest(file, null, 1, ViewRequest.Look.PLAIN), closed::countDown));
        Fx.until("a run", 120, () -> window.desk().status().words().startsWith("Running"));
        Fx.run(() -> window.stage().close());
        assertTrue(closed.await(60, TimeUnit.SECONDS), "the run ends when its window does");
        assertNull(Fx.on(() -> window.desk().recording()));
        assertEquals(before, workers());
    }

    @Test
    void stoppingARunLeavesTheWindowInOrder() throws Exception {
        Path file = SmallJob.root().resolve("scenes/control-surface-pin-forward.yaml");
        CountDownLatch closed = new CountDownLatch(1);
        ViewerWindow window = Fx.on(
                () -> ViewerWindow.open(new ViewRequest(file, null, 1, ViewRequest.Look.PLAIN), closed::countDown));
        Fx.until("a run", 120, () -> window.desk().status().words().startsWith("Running"));
        Fx.run(() -> window.desk().stop());
        Fx.until("its end", 60, () -> window.desk().status().words().contains("was stopped"));
        assertTrue(Fx.on(() -> window.desk().view().picture()) != null, "the structure is still shown");
        Fx.run(() -> window.stage().close());
        assertTrue(closed.await(30, TimeUnit.SECONDS));
    }

    @Test
    void aBrokenSceneIsToldAndReadAgainWhenMended() throws Exception {
        Path file = SmallJob.file(folder);
        String sound = Files.readString(file);
        Files.writeString(file, sound.replace("supply:", "suply:"));
        CountDownLatch closed = new CountDownLatch(1);
        ViewerWindow window = Fx.on(
                () -> ViewerWindow.open(new ViewRequest(file, null, 2, ViewRequest.Look.PLAIN), closed::countDown));
        Fx.until("the message", 30, () -> window.desk().notice().words().contains("suply"));
        assertNull(Fx.on(() -> window.desk().view().picture()));
        Files.writeString(file, sound);
        Fx.run(() -> window.desk().notice().act());
        Fx.until("the run", 120, () -> window.desk().recording() != null);
        Fx.run(() -> window.stage().close());
        assertTrue(closed.await(30, TimeUnit.SECONDS));
    }
}
