package baymist.export;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

/** Files that appear in a folder together: written into a folder of their own inside it, then moved out. One batch, one thread. */
final class Batch implements AutoCloseable {
    private final Path folder;
    private final Path work;
    private final boolean made;
    private final List<String> names = new ArrayList<>();

    Batch(Path folder) throws IOException {
        this.folder = folder;
        made = !Files.exists(folder);
        Files.createDirectories(folder);
        work = folder.resolve("." + UUID.randomUUID() + ".part");
        Files.createDirectory(work);
    }

    /** Where to write a file of this name. */
    Path file(String name) {
        names.add(name);
        return work.resolve(name);
    }

    /** Moves all files to their places; returns their names. */
    List<String> done() throws IOException {
        for (String name : names) {
            if (!Files.exists(work.resolve(name))) {
                throw new java.nio.file.NoSuchFileException(folder.resolve(name).toString());
            }
            Path target = folder.resolve(name);
            if (Files.isDirectory(target)) {
                throw new java.nio.file.FileAlreadyExistsException(
                        target.toString(), null, "a folder is in the way of a file");
            }
        }
        for (String name : names) {
            Files.move(work.resolve(name), folder.resolve(name), StandardCopyOption.REPLACE_EXISTING);
        }
        return List.copyOf(names);
    }

    @Override
    public void close() throws IOException {
        for (String name : names) {
            Files.deleteIfExists(work.resolve(name));
        }
        Files.deleteIfExists(work);
        if (made && empty()) {
            Files.deleteIfExists(folder);
        }
    }

    private boolean empty() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.findAny().isEmpty();
        }
    }
}
