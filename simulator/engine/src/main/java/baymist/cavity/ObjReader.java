package baymist.cavity;

import baymist.geom.Vec3;
import baymist.problem.SceneException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Wavefront OBJ: {@code v} and {@code f} with polygons of any shape; {@code o} and {@code g} name the parts. Numbers of
 * textures and normals after slashes, materials and smoothing are passed over; negative numbers count back from the last
 * vertex. Lines, points and curved patches carry no sheet: they are counted in a remark.
 */
final class ObjReader {
    private static final int MOST_VERTICES = 3 * RawMesh.MOST_TRIANGLES;
    private static final int MOST_CORNERS = 500;
    private static final int MOST_JOINED = 64;

    private final LineSource lines;
    private final RawMesh mesh = new RawMesh();
    private final Map<String, Integer> parts = new HashMap<>();
    private final Map<String, Integer> passedOver = new TreeMap<>();
    /** [3 * vertices] */
    private double[] xyz = new double[3 * 256];

    private int vertices;
    private String object = "";
    private String group = "";
    private int part = -1;
    private int crossed;

    private ObjReader(LineSource lines) {
        this.lines = lines;
    }

    static RawMesh read(Path file) throws IOException {
        try (LineSource lines = new LineSource(file)) {
            ObjReader reader = new ObjReader(lines);
            reader.read();
            return reader.mesh;
        }
    }

    private void read() throws IOException {
        String line;
        while ((line = next()) != null) {
            String[] words = line.strip().split("\\s+");
            switch (words[0]) {
                case "v" -> vertex(words);
                case "f", "fo" -> face(words);
                case "o" -> {
                    object = line.strip().substring(1).strip();
                    group = "";
                    part = -1;
                }
                case "g" -> {
                    group = line.strip().substring(1).strip();
                    part = -1;
                }
                case "",
                        "vt",
                        "vn",
                        "vp",
                        "s",
                        "mtllib",
                        "usemtl",
                        "usemap",
                        "maplib",
                        "lod",
                        "bevel",
                        "c_interp",
                        "d_interp",
                        "shadow_obj",
                        "trace_obj",
                        "mg" -> {}
                case "l", "p", "curv", "curv2", "surf" -> passedOver.merge(words[0], 1, Integer::sum);
                case "cstype",
                        "deg",
                        "bmat",
                        "step",
                        "parm",
                        "trim",
                        "hole",
                        "scrv",
                        "sp",
                        "end",
                        "con",
                        "ctech",
                        "stech",
                        "call",
                        "csh" -> {}
                default -> {
                    if (!words[0].startsWith("#")) {
                        throw problem(
                                "MSH-008",
                                "'" + Names.printable(words[0])
                                        + "' begins no statement of an OBJ file; v, f, g, o and their"
                                        + " like expected");
                    }
                }
            }
        }
        passedOver.forEach((word, number) -> mesh.remarks.add(number + " '" + word
                + "' statement(s) (lines, points or curved patches) carry no sheet and were left out"));
        if (crossed > 0) {
            mesh.remarks.add(crossed + " polygon(s) cross themselves; how they were split into triangles is a guess");
        }
    }

    /** A line with those that it goes on to after a backslash. */
    private @Nullable String next() throws IOException {
        String line = lines.next();
        if (line == null || !line.endsWith("\\")) {
            return line;
        }
        StringBuilder joined = new StringBuilder();
        for (int k = 0; line != null; k++) {
            if (k == MOST_JOINED) {
                throw problem("MSH-004", "a statement goes on over more than " + MOST_JOINED + " lines");
            }
            boolean goesOn = line.endsWith("\\");
            joined.append(goesOn ? line.substring(0, line.length() - 1) : line).append(' ');
            line = goesOn ? lines.next() : null;
        }
        return joined.toString();
    }

    private void vertex(String[] words) {
        if (words.length < 4) {
            throw problem("MSH-008", "a vertex has " + (words.length - 1) + " numbers; three expected");
        }
        if (vertices == MOST_VERTICES) {
            throw problem("MSH-009", "more than " + MOST_VERTICES + " vertices; thin the mesh out before importing it");
        }
        if (3 * vertices + 3 > xyz.length) {
            xyz = Arrays.copyOf(xyz, 2 * xyz.length);
        }
        for (int k = 0; k < 3; k++) {
            double value;
            try {
                value = Double.parseDouble(words[k + 1]);
            } catch (NumberFormatException e) {
                throw problem("MSH-008", "'" + Names.printable(words[k + 1]) + "' is no number; a coordinate expected");
            }
            if (!Double.isFinite(value)) {
                throw StlReader.notFinite(lines.place(), "a vertex", Names.printable(words[k + 1]));
            }
            xyz[3 * vertices + k] = value;
        }
        vertices++;
    }

    private void face(String[] words) {
        if (words.length < 4) {
            throw problem("MSH-008", "a face has " + (words.length - 1) + " corners; at least three expected");
        }
        if (words.length > MOST_CORNERS + 1) {
            throw problem(
                    "MSH-008", "a face has " + (words.length - 1) + " corners; at most " + MOST_CORNERS + " expected");
        }
        List<Vec3> corners = new ArrayList<>();
        int before = -1;
        int first = vertexNumber(words[1]);
        for (int k = 1; k < words.length; k++) {
            int v = vertexNumber(words[k]);
            boolean repeated = v == before || (k == words.length - 1 && v == first);
            if (!repeated) {
                corners.add(new Vec3(xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2]));
            }
            before = v;
        }
        int into = part();
        if (corners.size() < 3) {
            Vec3 at = new Vec3(xyz[3 * first], xyz[3 * first + 1], xyz[3 * first + 2]);
            add(into, at, at, at);
            return;
        }
        PolygonSplitter.Split split = PolygonSplitter.split(corners);
        crossed += split.sound() ? 0 : 1;
        for (int[] t : split.triangles()) {
            add(into, corners.get(t[0]), corners.get(t[1]), corners.get(t[2]));
        }
        if (split.triangles().isEmpty()) {
            add(into, corners.get(0), corners.get(1), corners.get(0));
        }
    }

    private void add(int into, Vec3 a, Vec3 b, Vec3 c) {
        mesh.add(into, new double[] {a.x(), a.y(), a.z(), b.x(), b.y(), b.z(), c.x(), c.y(), c.z()}, lines.place());
    }

    private int vertexNumber(String word) {
        int slash = word.indexOf('/');
        String digits = slash < 0 ? word : word.substring(0, slash);
        int number;
        try {
            number = Integer.parseInt(digits);
        } catch (NumberFormatException e) {
            throw problem("MSH-008", "'" + Names.printable(word) + "' names no vertex; a whole number expected");
        }
        int vertex = number < 0 ? vertices + number : number - 1;
        if (number == 0 || vertex < 0 || vertex >= vertices) {
            throw problem(
                    "MSH-014",
                    "a face names vertex " + number
                            + (number == 0 ? "; they count from 1" : ", but " + vertices + " stand above it"));
        }
        return vertex;
    }

    /** Number of the part that the current object and group make, new or known. */
    private int part() {
        if (part < 0) {
            Integer known = parts.get(object + "\n" + group);
            part = known != null ? known : mesh.addPart(group.isEmpty() ? object : group, Double.NaN, lines.place());
            parts.put(object + "\n" + group, part);
        }
        return part;
    }

    private SceneException problem(String id, String text) {
        return new SceneException(id, lines.place(), text);
    }
}
