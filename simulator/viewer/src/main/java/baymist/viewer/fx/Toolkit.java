package baymist.viewer.fx;

import baymist.viewer.NoDisplayException;
import java.io.IOException;
import java.net.UnixDomainSocketAddress;
import java.nio.channels.SocketChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.application.Platform;

/** Starts JavaFX, once in the life of the program. */
public final class Toolkit {
    /** Held, since a logger that nobody holds forgets its level. */
    private static final Logger CHATTER = Logger.getLogger("javafx");

    /** Displays of this machine, which answer at a socket of that number. */
    private static final Pattern LOCAL_DISPLAY = Pattern.compile(":(\\d+)(\\.\\d+)?");

    private Toolkit() {}

    /**
     * Starts the toolkit if it is not running yet.
     *
     * @throws NoDisplayException if there is no display to open a window on
     */
    public static void start() {
        findDisplay();
        drawWithoutGraphicsCard();
        CHATTER.setLevel(Level.SEVERE);
        CountDownLatch up = new CountDownLatch(1);
        try {
            Platform.startup(up::countDown);
        } catch (IllegalStateException running) {
            return;
        } catch (RuntimeException e) {
            // what the toolkit throws where it finds no way to draw has no type of its own
            NoDisplayException none = cannotOpen(String.valueOf(System.getenv("DISPLAY")));
            none.initCause(e);
            throw none;
        }
        await(up);
        Platform.setImplicitExit(false);
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void findDisplay() {
        if (!isLinux()) {
            return;
        }
        String display = System.getenv("DISPLAY");
        if (display == null || display.isBlank()) {
            throw new NoDisplayException(
                    "there is no display to open a window on: DISPLAY is not set; start this on a desktop or under"
                            + " xvfb-run -a -s \"-screen 0 1400x900x24 +extension GLX\".");
        }
        Matcher local = LOCAL_DISPLAY.matcher(display.strip());
        if (local.matches() && !answers(Path.of("/tmp/.X11-unix/X" + local.group(1)))) {
            throw cannotOpen(display);
        }
    }

    private static boolean answers(Path socket) {
        try (SocketChannel channel = SocketChannel.open(UnixDomainSocketAddress.of(socket))) {
            return channel.isConnected();
        } catch (IOException e) {
            return false;
        }
    }

    private static NoDisplayException cannotOpen(String display) {
        return new NoDisplayException(
                "the display \"" + display + "\" can't be opened: no screen answers there, or it can't draw in 3D;"
                        + " start this on a desktop or under xvfb-run -a -s \"-screen 0 1400x900x24 +extension GLX\".");
    }

    /** Without a graphics card the processor draws, through the same interface; JavaFX must be told that this will do. */
    private static void drawWithoutGraphicsCard() {
        if (isLinux() && !Files.exists(Path.of("/dev/dri"))) {
            setUnlessSet("prism.forceGPU", "true");
            setUnlessSet("prism.order", "es2");
        }
    }

    private static void setUnlessSet(String key, String value) {
        if (System.getProperty(key) == null) {
            System.setProperty(key, value);
        }
    }

    private static boolean isLinux() {
        return System.getProperty("os.name", "").toLowerCase(Locale.ROOT).contains("linux");
    }
}
