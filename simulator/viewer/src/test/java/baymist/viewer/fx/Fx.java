package baymist.viewer.fx;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import baymist.viewer.NoDisplayException;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.IntPredicate;
import javafx.application.Platform;
import javafx.scene.Scene;

/** Drives JavaFX from a test. */
final class Fx {
    private Fx() {}

    /** Starts the toolkit; without a display the test is skipped (the project's own checks fail then). */
    static void start() {
        boolean display = true;
        try {
            Toolkit.start();
        } catch (NoDisplayException e) {
            display = false;
        }
        assumeTrue(display, "no display");
    }

    static <T> T on(Callable<T> call) throws Exception {
        FutureTask<T> task = new FutureTask<>(call);
        Platform.runLater(task);
        try {
            return task.get();
        } catch (ExecutionException e) {
            throw e.getCause() instanceof Exception cause ? cause : e;
        }
    }

    static void run(Runnable action) throws Exception {
        on(() -> {
            action.run();
            return true;
        });
    }

    /** Waits until something holds on the JavaFX thread. */
    static void until(String what, double secondsAtMost, Callable<Boolean> holds) throws Exception {
        long end = System.nanoTime() + (long) (secondsAtMost * 1e9);
        while (!on(holds)) {
            assertTrue(System.nanoTime() < end, "waited in vain: " + what);
            Thread.sleep(30);
        }
    }

    static Pixels picture(Scene scene) throws Exception {
        return on(() -> Pixels.of(scene.snapshot(null)));
    }

    /** Share of a picture's pixels with a colour. */
    static double share(Pixels p, IntPredicate colour) {
        int n = 0;
        for (int rgb : p.rgb()) {
            n += colour.test(rgb) ? 1 : 0;
        }
        return n / (double) p.rgb().length;
    }

    /** Whether a colour is one of the film scale, to a few steps of 255; not the pale end, which greys come near to. */
    static boolean isFilm(int rgb) {
        for (int i = 250; i < 1000; i += 6) {
            int c = FILM[i];
            int off = Math.max(
                    Math.abs((c >> 16 & 255) - (rgb >> 16 & 255)),
                    Math.max(Math.abs((c >> 8 & 255) - (rgb >> 8 & 255)), Math.abs((c & 255) - (rgb & 255))));
            if (off <= 3) {
                return true;
            }
        }
        return false;
    }

    private static final int[] FILM = baymist.viewer.draw.FilmPlaces.line(0);
}
