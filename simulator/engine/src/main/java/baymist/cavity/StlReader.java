package baymist.cavity;

import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * STL. A file is binary if its size agrees with the count in its header (84 + 50 n bytes), whatever its first word; else it
 * is text if it begins with "solid"; else it is a broken binary file. Each "solid" of a text file is a part. Facet normals
 * are not used: the order of the corners counts.
 */
final class StlReader {
    private static final int HEADER = 84;
    private static final int FACET = 50;

    private StlReader() {}

    static RawMesh read(Path file, long size) throws IOException {
        byte[] head = new byte[HEADER];
        int got;
        try (InputStream in = Files.newInputStream(file)) {
            got = in.readNBytes(head, 0, HEADER);
        }
        long count = got < HEADER
                ? -1
                : Integer.toUnsignedLong(
                        ByteBuffer.wrap(head).order(ByteOrder.LITTLE_ENDIAN).getInt(80));
        if (count >= 0 && size == HEADER + FACET * count) {
            return binary(file, count);
        }
        String start = new String(head, 0, got, StandardCharsets.ISO_8859_1).stripLeading();
        String name = String.valueOf(file.getFileName());
        if (start.toLowerCase(Locale.ROOT).startsWith("solid")) {
            if (start.indexOf('\0') >= 0) {
                throw new SceneException(
                        "MSH-006",
                        SourcePlace.of(name),
                        "the file begins with 'solid' as text does but goes on in binary, and its header promises "
                                + count
                                + " triangles (" + (HEADER + FACET * count) + " bytes) where the file has " + size
                                + " bytes; it is cut short or no STL");
            }
            return text(file);
        }
        throw new SceneException(
                "MSH-006",
                SourcePlace.of(name),
                count < 0
                        ? "the file has " + size + " bytes, too few for an STL file, and does not begin with 'solid'"
                        : "the header promises " + count + " triangles (" + (HEADER + FACET * count)
                                + " bytes), but the file has " + size + " bytes; the file is cut short or no STL");
    }

    private static RawMesh binary(Path file, long count) throws IOException {
        RawMesh mesh = new RawMesh();
        SourcePlace place = SourcePlace.of(String.valueOf(file.getFileName()));
        if (count > RawMesh.MOST_TRIANGLES) {
            throw new SceneException(
                    "MSH-009",
                    place,
                    count + " triangles; at most " + RawMesh.MOST_TRIANGLES + " can be read: thin the mesh out");
        }
        mesh.addPart("shell", Double.NaN, place);
        byte[] facet = new byte[FACET];
        ByteBuffer view = ByteBuffer.wrap(facet).order(ByteOrder.LITTLE_ENDIAN);
        double[] nine = new double[9];
        try (DataInputStream in = new DataInputStream(new BufferedInputStream(Files.newInputStream(file), 1 << 16))) {
            in.skipNBytes(HEADER);
            for (long i = 0; i < count; i++) {
                in.readFully(facet);
                for (int k = 0; k < 9; k++) {
                    nine[k] = view.getFloat(12 + 4 * k);
                    if (!Double.isFinite(nine[k])) {
                        throw notFinite(place, "triangle " + (i + 1), String.valueOf(nine[k]));
                    }
                }
                mesh.add(0, nine, place);
            }
        } catch (EOFException e) {
            throw new SceneException("MSH-006", place, "the file ended while it was read");
        }
        return mesh;
    }

    static SceneException notFinite(SourcePlace place, String what, String found) {
        return new SceneException(
                "MSH-007", place, what + " has the coordinate '" + found + "'; a finite number expected");
    }

    private static RawMesh text(Path file) throws IOException {
        try (LineSource lines = new LineSource(file)) {
            return new TextStl(lines).read();
        }
    }

    /** One text file. */
    private static final class TextStl {
        private final LineSource lines;
        private final RawMesh mesh = new RawMesh();
        private final double[] nine = new double[9];
        private int vertices = -1;

        TextStl(LineSource lines) {
            this.lines = lines;
        }

        RawMesh read() throws IOException {
            String line;
            boolean open = false;
            while ((line = lines.next()) != null) {
                String[] words = line.strip().split("\\s+");
                String word = words[0].toLowerCase(Locale.ROOT);
                if (word.equals("solid")) {
                    String name = line.strip().substring(5).strip();
                    mesh.addPart(name.isEmpty() ? "shell" : name, Double.NaN, lines.place());
                    open = true;
                } else if (word.equals("endsolid")) {
                    open = false;
                } else {
                    statement(word, words);
                }
            }
            if (open) {
                throw problem("MSH-006", "the file ends without 'endsolid'; it is cut short");
            }
            return mesh;
        }

        private void statement(String word, String[] words) {
            switch (word) {
                case "", "endloop" -> {}
                case "facet", "outer" -> vertices = 0;
                case "vertex" -> vertex(words);
                case "endfacet" -> {
                    if (vertices != 3) {
                        throw problem("MSH-008", "a facet has " + Math.max(0, vertices) + " corners; three expected");
                    }
                    mesh.add(mesh.parts.size() - 1, nine, lines.place());
                    vertices = -1;
                }
                default ->
                    throw problem(
                            "MSH-008",
                            "'" + Names.printable(word)
                                    + "' is no word of an ASCII STL file; facet, outer loop, vertex, endloop or endfacet expected");
            }
        }

        private void vertex(String[] words) {
            if (vertices < 0 || vertices > 2) {
                throw problem("MSH-008", "a vertex stands where none belongs; three in each facet expected");
            }
            if (words.length != 4) {
                throw problem("MSH-008", "a vertex has " + (words.length - 1) + " numbers; three expected");
            }
            for (int k = 0; k < 3; k++) {
                double value = Double.NaN;
                try {
                    value = Double.parseDouble(words[k + 1]);
                } catch (NumberFormatException e) {
                    throw problem(
                            "MSH-008", "'" + Names.printable(words[k + 1]) + "' is no number; a coordinate expected");
                }
                if (!Double.isFinite(value)) {
                    throw notFinite(lines.place(), "a vertex", words[k + 1]);
                }
                nine[3 * vertices + k] = value;
            }
            vertices++;
        }

        private SceneException problem(String id, String text) {
            return new SceneException(id, lines.place(), text);
        }
    }
}
