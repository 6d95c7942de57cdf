package baymist.run;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Which build of the engine this is: a digest of its classes, so that results which are kept for later are not taken for those of another build under
 * the same version. Left out is what makes no numbers: command line, pictures, reports, screens.
 */
public final class EngineBuild {
    /** Packages that only show numbers. */
    private static final List<String> SHOWING = List.of("cli", "picture", "report", "viewer", "bench");

    private EngineBuild() {}

    /** Computed once; the classes of a running program stay as they are. */
    private static final class Known {
        static final String ID = compute();
    }

    /** Hex digits that differ between builds that may compute differently; the version where the classes can't be read. */
    public static String id() {
        return Known.ID;
    }

    private static String compute() {
        try {
            CodeSource source = EngineBuild.class.getProtectionDomain().getCodeSource();
            if (source == null) {
                return EngineVersion.VERSION;
            }
            Path place = Path.of(source.getLocation().toURI());
            if (Files.isDirectory(place)) {
                return digest(place);
            }
            try (FileSystem jar = FileSystems.newFileSystem(place)) {
                return digest(jar.getPath("/"));
            }
        } catch (IOException | URISyntaxException | IllegalArgumentException | UnsupportedOperationException e) {
            return EngineVersion.VERSION;
        }
    }

    /** Digest of the classes below a folder that holds {@code baymist/...}, 16 hex digits. */
    static String digest(Path root) throws IOException {
        MessageDigest digest = sha256();
        Path base = root.resolve("baymist");
        List<Path> classes;
        try (Stream<Path> all = Files.walk(base)) {
            classes = all.filter(f -> f.toString().endsWith(".class") && !shows(base.relativize(f)))
                    .sorted((a, b) -> name(base, a).compareTo(name(base, b)))
                    .toList();
        }
        for (Path f : classes) {
            digest.update(name(base, f).getBytes(StandardCharsets.UTF_8));
            digest.update(Files.readAllBytes(f));
        }
        return HexFormat.of().formatHex(digest.digest(), 0, 8);
    }

    private static boolean shows(Path inBase) {
        @Nullable Path first = inBase.getNameCount() > 1 ? inBase.getName(0) : null;
        return first != null && SHOWING.contains(first.toString().replace("/", ""));
    }

    private static String name(Path base, Path file) {
        return base.relativize(file).toString().replace('\\', '/');
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
