package baymist.viewer.model;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Looks whether a scene file, or a file that it names, has changed on disk; by asking now and then, which works on every file system. A
 * change is told once, when the files have stayed alike from one look to the next, so that a file that is being written is not read half.
 */
public final class SceneWatch implements AutoCloseable {
    /** Hears of changes, on the watch's own thread. */
    public interface Listener {
        /** A file was written, or is back. */
        void changed(Path file);

        /** A file is gone. */
        void gone(Path file);
    }

    private static final Pattern NAMED = Pattern.compile("[\\w./\\\\ -]+\\.(?:yaml|yml|json|stl|obj|bdf|nas|csv)");

    private final Path scene;
    private final Listener listener;
    private final Thread watching;
    private Map<Path, Stamp> told = Map.of();
    private Map<Path, Stamp> last;

    /** Time and length of a file; both 0 when it is not there. */
    private record Stamp(long time, long length) {}

    /** @param everyMs time between looks, ms, above 0 */
    public SceneWatch(Path scene, long everyMs, Listener listener) {
        this.scene = scene;
        this.listener = listener;
        last = look();
        told = last;
        watching = new Thread(() -> watch(everyMs), "baymist scene watch");
        watching.setDaemon(true);
        watching.start();
    }

    private void watch(long everyMs) {
        try {
            while (true) {
                Thread.sleep(everyMs);
                compare();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt(); // closed
        }
    }

    private void compare() {
        Map<Path, Stamp> now = look();
        if (!now.equals(last)) {
            last = now; // wait until it stays
            return;
        }
        for (Map.Entry<Path, Stamp> e : now.entrySet()) {
            Stamp before = told.get(e.getKey());
            if (before != null && !before.equals(e.getValue())) {
                told = now;
                if (e.getValue().time() == 0) {
                    listener.gone(e.getKey());
                } else {
                    listener.changed(e.getKey());
                }
                return;
            }
        }
        told = now;
    }

    private Map<Path, Stamp> look() {
        Map<Path, Stamp> stamps = new LinkedHashMap<>();
        for (Path file : files()) {
            stamps.put(file, stamp(file));
        }
        return stamps;
    }

    /** The scene and the files that it names, as far as they are there. */
    private List<Path> files() {
        List<Path> files = new ArrayList<>(List.of(scene));
        try {
            Path folder = scene.toAbsolutePath().getParent();
            Matcher names = NAMED.matcher(Files.readString(scene));
            while (folder != null && names.find()) {
                Path file = folder.resolve(names.group().strip()).normalize();
                if (Files.isRegularFile(file) || told.containsKey(file)) {
                    files.add(file);
                }
            }
        } catch (IOException | IllegalArgumentException e) {
            // a scene that can't be read now names no files; that it changed shows in its own stamp
            return files;
        }
        return files;
    }

    private static Stamp stamp(Path file) {
        try {
            BasicFileAttributes a = Files.readAttributes(file, BasicFileAttributes.class);
            return new Stamp(a.lastModifiedTime().to(TimeUnit.NANOSECONDS), a.size());
        } catch (IOException e) {
            return new Stamp(0, 0);
        }
    }

    @Override
    public void close() {
        watching.interrupt();
    }
}
