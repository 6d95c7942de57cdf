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
import java.util.ArrayList;
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
 * places in files ({@link SourcePlace}) and what no run looks at: file, hash, title, story and studies of the scene. Lists count
 * in order, maps by their keys in order of the alphabet. A file that is named (a mesh) counts by its bytes.
 */
public final class SceneContent {
    private static final Set<String> TOLD_ONLY = Set.of("file", "hash", "title", "story", "studies");

    /** Stands before the name of a component among the tokens. */
    private static final String COMPONENT = ".";

    private final List<Object> tokens = new ArrayList<>();

    private SceneContent() {}

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
        MessageDigest digest = sha256();
        for (Object token : tokens(value)) {
            byte[] bytes = token instanceof Double d
                    ? ByteBuffer.allocate(8).putDouble(d).array()
                    : token.toString().getBytes(StandardCharsets.UTF_8);
            digest.update(ByteBuffer.allocate(4).putInt(bytes.length).array());
            digest.update(bytes);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /** Whether two values have the same content to the last bit. */
    public static boolean same(@Nullable Object a, @Nullable Object b) {
        return tokens(a).equals(tokens(b));
    }

    /**
     * Where two values part, in words with the component's name, or null if they are the same but for the rounding of numbers: a part in 10^12, or
     * 10^-14 in SI units.
     */
    public static @Nullable String difference(@Nullable Object a, @Nullable Object b) {
        List<Object> left = tokens(a);
        List<Object> right = tokens(b);
        String at = "";
        for (int i = 0; i < Math.min(left.size(), right.size()); i++) {
            Object l = left.get(i);
            Object r = right.get(i);
            if (!((l instanceof Double x && r instanceof Double y) ? near(x, y) : l.equals(r))) {
                return at + ": " + l + " and " + r;
            }
            at = l instanceof String text && text.startsWith(COMPONENT) ? text.substring(1) : at;
        }
        return left.size() == right.size() ? null : at + ": " + left.size() + " and " + right.size() + " values";
    }

    private static boolean near(double x, double y) {
        return x == y || Math.abs(x - y) <= 1e-12 * Math.max(Math.abs(x), Math.abs(y)) + 1e-14;
    }

    private static List<Object> tokens(@Nullable Object value) {
        SceneContent content = new SceneContent();
        content.add(value);
        return content.tokens;
    }

    private void add(@Nullable Object value) {
        if (value == null) {
            tokens.add("none");
        } else if (value instanceof Double d) {
            tokens.add(d + 0.0); // minus zero is zero
        } else if (value instanceof Number || value instanceof Boolean || value instanceof Enum<?>) {
            tokens.add(value.toString());
        } else if (value instanceof String text) {
            tokens.add("'" + text);
        } else if (value instanceof double[] array) {
            tokens.add("array " + array.length);
            Arrays.stream(array).forEach(this::add);
        } else if (value instanceof List<?> list) {
            tokens.add("list " + list.size());
            list.forEach(this::add);
        } else if (value instanceof Map<?, ?> map) {
            Map<String, Object> sorted = new TreeMap<>();
            map.forEach((k, v) -> sorted.put(String.valueOf(k), v));
            tokens.add("map " + sorted.size());
            sorted.forEach((k, v) -> {
                add(k);
                add(v);
            });
        } else if (value instanceof Path file) {
            tokens.add(bytesOf(file));
        } else if (value instanceof Record record) {
            record(record);
        } else {
            throw new IllegalArgumentException(
                    "a scene holds a " + value.getClass().getName() + ", which has no content hash");
        }
    }

    private void record(Record record) {
        tokens.add("record " + record.getClass().getSimpleName());
        for (RecordComponent c : record.getClass().getRecordComponents()) {
            boolean told = record instanceof Scene && TOLD_ONLY.contains(c.getName());
            if (told || c.getType() == SourcePlace.class) {
                continue;
            }
            tokens.add(COMPONENT + c.getName());
            try {
                add(c.getAccessor().invoke(record));
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException("component " + c.getName() + " of " + record.getClass(), e);
            }
        }
    }

    private static String bytesOf(Path file) {
        MessageDigest digest = sha256();
        byte[] buffer = new byte[1 << 16];
        try (InputStream in = Files.newInputStream(file)) {
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                digest.update(buffer, 0, n);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(file + " can't be read", e);
        }
        return "file " + HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
