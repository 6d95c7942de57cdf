package baymist.scene.io;

import baymist.problem.SourcePlace;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Opens the scene and the files that it names, and keeps one hash over all of them. */
final class SourceFiles {
    /** Largest scene or model file, bytes. */
    static final int MOST_BYTES = 1 << 20;

    /** Largest mesh file, bytes. */
    static final long MOST_MESH_BYTES = 1L << 31;

    private final Problems problems;
    /** SHA-256 of each file, in the order in which they were first named. */
    private final Map<Path, byte[]> digests = new LinkedHashMap<>();

    SourceFiles(Problems problems) {
        this.problems = problems;
    }

    /** Bytes of a scene or model file, or null after adding a problem at the place that names it. */
    byte @Nullable [] read(Path file, SourcePlace namedAt) {
        if (!isFile(file, namedAt, MOST_BYTES)) {
            return null;
        }
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(MOST_BYTES + 1); // the file may have grown since it was measured
            if (bytes.length > MOST_BYTES) {
                tooBig(file, namedAt, MOST_BYTES);
                return null;
            }
            digests.put(file.normalize(), sha256().digest(bytes));
            return bytes;
        } catch (IOException e) {
            unreadable(file, namedAt, e);
            return null;
        }
    }

    /** Counts a file that others read (a mesh) into the hash. */
    void include(Path file, SourcePlace namedAt) {
        if (!isFile(file, namedAt, MOST_MESH_BYTES)) {
            return;
        }
        MessageDigest digest = sha256();
        byte[] buffer = new byte[1 << 16];
        try (InputStream in = Files.newInputStream(file)) {
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                digest.update(buffer, 0, n);
            }
            digests.put(file.normalize(), digest.digest());
        } catch (IOException e) {
            unreadable(file, namedAt, e);
        }
    }

    /** Path of a file named in another one, relative to that one's folder; null after adding a problem. */
    @Nullable
    Path resolve(Path namedIn, String name, SourcePlace namedAt) {
        try {
            return namedIn.resolveSibling(name).normalize();
        } catch (InvalidPathException e) {
            problems.add(
                    SceneProblem.FILE_MISSING,
                    namedAt,
                    "`" + printable(name) + "` can't be the name of a file; give a path");
            return null;
        }
    }

    /** SHA-256, hex, over the SHA-256 of every file read so far in the order in which they were named. */
    String hash() {
        MessageDigest all = sha256();
        all.update(ByteBuffer.allocate(Integer.BYTES).putInt(digests.size()).array());
        digests.values().forEach(all::update);
        return HexFormat.of().formatHex(all.digest());
    }

    private boolean isFile(Path file, SourcePlace namedAt, long most) {
        if (!Files.exists(file)) {
            problems.add(
                    SceneProblem.FILE_MISSING,
                    namedAt,
                    "there is no file `" + file + "`" + neighbour(file)
                            + (namedAt.field().isEmpty()
                                    ? ""
                                    : " (paths count from the folder of the file that names them)"));
            return false;
        }
        if (!Files.isRegularFile(file)) {
            String kind = Files.isDirectory(file) ? "a folder" : "no regular file";
            problems.add(SceneProblem.NOT_A_FILE, namedAt, "`" + file + "` is " + kind + "; name a file in it");
            return false;
        }
        try {
            if (Files.size(file) > most) {
                tooBig(file, namedAt, most);
                return false;
            }
        } catch (IOException e) {
            unreadable(file, namedAt, e);
            return false;
        }
        return true;
    }

    private static String neighbour(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        Path name = file.getFileName();
        if (folder == null || name == null || !Files.isDirectory(folder)) {
            return "";
        }
        List<String> names = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            files.limit(1000).forEach(f -> names.add(String.valueOf(f.getFileName())));
        } catch (IOException e) {
            return "";
        }
        names.sort(String::compareTo);
        // near without the ending, too: nearly all files share that
        names.removeIf(n -> Suggestion.nearest(stem(name.toString()), List.of(stem(n))) == null);
        String near = Suggestion.nearest(name.toString(), names);
        return near == null ? "" : ", did you mean `" + near + "`?";
    }

    private static String stem(String name) {
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    private void tooBig(Path file, SourcePlace namedAt, long most) {
        problems.add(
                SceneProblem.TOO_BIG,
                namedAt,
                "`" + file + "` is larger than " + (most >> 20)
                        + " MiB; that is no scene or model that this reader takes");
    }

    private void unreadable(Path file, SourcePlace namedAt, IOException e) {
        problems.add(
                SceneProblem.UNREADABLE,
                namedAt,
                "`" + file + "` can't be read (" + e.getClass().getSimpleName() + "); check its permissions");
    }

    static String printable(String text) {
        String plain = text.replaceAll("\\p{Cntrl}", "?");
        return plain.length() > 80 ? plain.substring(0, 80) + "..." : plain;
    }

    static String oneLine(@Nullable String text) {
        String plain =
                text == null ? "" : text.replaceAll("[\\s\\p{Cntrl}]+", " ").trim();
        return plain.length() > 400 ? plain.substring(0, 400) + "..." : plain;
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
