package baymist.cavity;

import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Lines of a text file with their numbers; a line of hostile length ends in a sentence, not in a full memory. */
final class LineSource implements AutoCloseable {
    private static final int LONGEST = 16_384;

    private final InputStream in;
    private final String file;
    private final byte[] buffer = new byte[LONGEST];
    private int line;
    private boolean atEnd;

    LineSource(Path path) throws IOException {
        this.in = new BufferedInputStream(Files.newInputStream(path), 1 << 16);
        this.file = path.getFileName() == null
                ? path.toString()
                : path.getFileName().toString();
    }

    /** Next line without its end, or null at the end of the file. Bytes that are no UTF-8 become replacement signs. */
    @Nullable
    String next() throws IOException {
        if (atEnd) {
            return null;
        }
        int length = 0;
        int b;
        while ((b = in.read()) >= 0 && b != '\n') {
            if (length == LONGEST) {
                throw new SceneException(
                        "MSH-004",
                        new SourcePlace(file, line + 1, ""),
                        "line is longer than 16384 characters; this is not" + " a text mesh");
            }
            buffer[length++] = (byte) b;
        }
        if (b < 0) {
            atEnd = true;
            if (length == 0) {
                return null;
            }
        }
        line++;
        if (length > 0 && buffer[length - 1] == '\r') {
            length--;
        }
        return new String(buffer, 0, length, StandardCharsets.UTF_8);
    }

    SourcePlace place() {
        return new SourcePlace(file, line, "");
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
