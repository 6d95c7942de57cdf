package baymist.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Where the wand files lie. */
final class WandFolder {
    private WandFolder() {}

    /** {@code models/wands} here, or beside the folder of the scene. */
    static Path usual(Path scene) {
        Path here = Path.of("models", "wands");
        @Nullable Path scenes = scene.toAbsolutePath().getParent();
        Path beside = scenes == null ? here : scenes.resolveSibling(here);
        return Files.isDirectory(here) || !Files.isDirectory(beside) ? here : beside;
    }

    /** Wand files of the usual folder in the order of their names. */
    static List<Path> files(CommandLine command, Path scene) throws IOException {
        Path folder = usual(scene);
        if (!Files.isDirectory(folder)) {
            throw new ParameterException(
                    command, "there is no wand folder " + folder + "; name files with --wand FILE");
        }
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(f -> f.toString().endsWith(".yaml") && Files.isRegularFile(f))
                    .sorted()
                    .toList();
        }
    }
}
