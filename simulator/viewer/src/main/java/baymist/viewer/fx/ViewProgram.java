package baymist.viewer.fx;

import baymist.viewer.ViewRequest;
import java.util.concurrent.CountDownLatch;
import javafx.application.Platform;

/** The viewer as a program: opens a window and returns when it is closed. */
public final class ViewProgram {
    private ViewProgram() {}

    /**
     * Shows a scene until the window is closed. Call from any thread but JavaFX's.
     *
     * @throws baymist.viewer.NoDisplayException if there is no display
     */
    public static void show(ViewRequest request) throws InterruptedException {
        Toolkit.start();
        CountDownLatch closed = new CountDownLatch(1);
        Platform.runLater(() -> ViewerWindow.open(request, closed::countDown));
        closed.await();
    }
}
