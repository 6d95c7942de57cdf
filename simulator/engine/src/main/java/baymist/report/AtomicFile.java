package baymist.report;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/** Writes a file whole or not at all: to a temporary file beside it, then moved over it in one step. */
public final class AtomicFile {
    private AtomicFile() {}

    /** Fills a stream with the file's bytes. */
    @FunctionalInterface
    public interface Bytes {
        void writeTo(OutputStream out) throws IOException;
    }

    /** Fills a writer with the file's text. */
    @FunctionalInterface
    public interface Text {
        void writeTo(Writer out) throws IOException;
    }

    /**
     * Writes bytes; folders are made as needed.
     *
     * @throws IOException when the file could not be written; the old file, if any, is then untouched
     */
    public static void writeBytes(Path file, Bytes content) throws IOException {
        Path target = file.toAbsolutePath();
        Path folder = target.getParent();
        if (folder == null) {
            throw new IOException(file + " is no file name");
        }
        Files.createDirectories(folder);
        // beside the target, so that the move stays on one file system; with the permissions of an ordinary new file
        Path part = folder.resolve("." + target.getFileName() + "." + UUID.randomUUID() + ".part");
        try {
            try (OutputStream out =
                    new BufferedOutputStream(Files.newOutputStream(part, StandardOpenOption.CREATE_NEW))) {
                content.writeTo(out);
            }
            move(part, target);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /** Writes text in UTF-8; otherwise as {@link #writeBytes}. */
    public static void writeText(Path file, Text content) throws IOException {
        writeBytes(file, bytes -> {
            Writer out = new OutputStreamWriter(bytes, StandardCharsets.UTF_8);
            content.writeTo(out);
            out.flush();
        });
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
