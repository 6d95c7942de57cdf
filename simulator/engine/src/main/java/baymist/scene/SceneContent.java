package baymist.scene;

import baymist.problem.SourcePlace;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.reflect.RecordComponent;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What a scene is, whatever file it came from: two scenes with the same content give the same result to the last bit.
 *
 * <p>The walk goes through the components of the records themselves, so that a component added to any of them counts at once. Left out are
 * places in files ({@link SourcePlace}) and what only tells of the job: file, hash, title and story of the scene. Lists count
 * in order, maps by their keys in order of the alphabet. A file that is named (a mesh) counts by its bytes.
 */
public final class SceneContent {
    private static final Set<String> TOLD_ONLY = Set.of("file", "hash", "title", "story");

    private final MessageDigest digest;

    private SceneContent() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /**
     * SHA-256 (hex) over the content.
     *
     * @throws UncheckedIOException if a mesh file that the scene names can't be read any more
     */
    public static String hash(Scene scene) {
        return hashOf(scene);
    }

    /** SHA-256 (hex) over any value of a scene: a record, list, map, number, text. */
    public static String hashOf(@Nullable Object value) {
        SceneContent content = new SceneContent();
        content.add(value);
        return HexFormat.of().formatHex(content.digest.digest());
    }

    /** Whether two values have the same content. */
    public static boolean same(@Nullable Object a, @Nullable Object b) {
        return hashOf(a).equals(hashOf(b));
    }

    private void add(@Nullable Object value) {
        if (value == null) {
            mark('0', 0);
        } else if (value instanceof Double d) {
            mark('d', Double.doubleToLongBits(d + 0.0)); // minus zero is zero
        } else if (value instanceof Number n) {
            mark('i', n.longValue());
        } else if (value instanceof Boolean || value instanceof Enum<?> || value instanceof String) {
            text(value.toString());
        } else if (value instanceof double[] array) {
            mark('a', array.length);
            Arrays.stream(array).forEach(this::add);
        } else if (value instanceof List<?> list) {
            mark('l', list.size());
            list.forEach(this::add);
        } else if (value instanceof Map<?, ?> map) {
            Map<String, Object> sorted = new TreeMap<>();
            map.forEach((k, v) -> sorted.put(String.valueOf(k), v));
            mark('m', sorted.size());
            sorted.forEach((k, v) -> {
                text(k);
                add(v);
            });
        } else if (value instanceof Path file) {
            file(file);
        } else if (value instanceof Record record) {
            record(record);
        } else {
            throw new IllegalArgumentException(
                    "a scene holds a " + value.getClass().getName() + ", which has no content hash");
        }
    }

    private void record(Record record) {
        text(record.getClass().getSimpleName());
        for (RecordComponent c : record.getClass().getRecordComponents()) {
            boolean told = record instanceof Scene && TOLD_ONLY.contains(c.getName());
            if (told || c.getType() == SourcePlace.class) {
                continue;
            }
            text(c.getName());
            try {
                add(c.getAccessor().invoke(record));
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException("component " + c.getName() + " of " + record.getClass(), e);
            }
        }
    }

    private void text(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        mark('t', bytes.length);
        digest.update(bytes);
    }

    private void file(Path file) {
        mark('f', 0);
        byte[] buffer = new byte[1 << 16];
        try (InputStream in = Files.newInputStream(file)) {
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                digest.update(buffer, 0, n);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(file + " can't be read", e);
        }
    }

    private void mark(char kind, long value) {
        digest.update(ByteBuffer.allocate(10).putChar(kind).putLong(value).array());
    }
}
