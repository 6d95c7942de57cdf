package baymist.export;

import baymist.access.Insertion;
import baymist.access.Station;
import baymist.coverage.SeamCoverage;
import baymist.coverage.UnreachedRegion;
import baymist.geom.Vec3;
import baymist.picture.FilmColours;
import baymist.run.RunResult;
import baymist.scene.PassSpec;
import baymist.scene.TargetSpec;
import baymist.surface.Patch;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Base64;
import java.util.List;

/** What the page's 3-D view draws, as JSON with packed arrays (little-endian, base64). Read by report.js and by nothing else. */
final class ViewData {
    /** Bare places with a tag in the view: more would hide each other. */
    private static final int TAGS = 8;

    private ViewData() {}

    static String of(RunResult r, FilmMesh mesh) {
        ObjectNode o = JsonNodeFactory.instance.objectNode();
        float[] xyz = mesh.vertices(mesh.surface().xyz(), 3);
        float[] low = extreme(xyz, -1);
        float[] high = extreme(xyz, 1);
        ArrayNode lowM = o.putArray("lowM");
        ArrayNode sizeM = o.putArray("sizeM");
        for (int k = 0; k < 3; k++) {
            lowM.add(low[k]);
            sizeM.add(high[k] - low[k]);
        }
        o.put("xyz", places(xyz, low, high));
        o.put("normals", normals(mesh.vertices(mesh.surface().normals(), 3)));
        o.put("filmUm", floats(mesh.vertices(mesh.filmUm(), 1)));
        o.put("corners", ints(mesh.corners()));
        o.put("place", placeOfTriangle(r, mesh));
        scale(o, r.scene().targets());
        patches(o.putArray("patches"), r, mesh);
        regions(o.putArray("places"), r.coverage().unreached());
        seams(o, r);
        wands(o.putArray("wands"), r);
        o.put(
                "hint",
                "Point at a surface to read its film. Drag turns, the wheel zooms, the right button or two fingers move.");
        try {
            // the data travels inside a script: no name may end it or begin a comment
            return new ObjectMapper().writeValueAsString(o).replace("<", "\\u003c");
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of numbers and words is always JSON", e);
        }
    }

    private static void scale(ObjectNode o, TargetSpec t) {
        FilmColours colours = new FilmColours(t);
        o.put("lowUm", 1e6 * colours.lowM());
        o.put("highUm", 1e6 * colours.highM());
        o.put("hazeUm", 1e6 * t.hazeM());
        o.put("buildUm", 1e6 * t.buildM());
        o.put("excessUm", 1e6 * t.excessM());
        ByteBuffer ramp = ByteBuffer.allocate(4 * 256);
        for (int i = 0; i < 256; i++) {
            ramp.putInt(FilmColours.rgbAt(i / 255.0) << 8 | 0xFF);
        }
        o.put("ramp", base64(ramp));
    }

    private static void patches(ArrayNode a, RunResult r, FilmMesh mesh) {
        int first = 0;
        for (Patch p : mesh.patches()) {
            ObjectNode o = a.addObject();
            o.put("part", r.cavity().parts().get(p.part()).name());
            o.put("bay", r.grid().bays().get(p.bay()).name());
            o.put("first", first);
            o.put("count", p.triangleCount());
            first += p.triangleCount();
        }
    }

    private static void regions(ArrayNode a, List<UnreachedRegion> regions) {
        for (UnreachedRegion u : regions) {
            ObjectNode o = a.addObject();
            o.put("id", u.id());
            o.put("label", u.label());
            vector(o.putArray("atM"), u.centroidM());
            o.put("ballM", 0.5 * u.extentM().size().length());
            o.put("tag", u.id() <= TAGS && !u.label().equals(UnreachedRegion.SPOTS));
        }
    }

    /** Seam lines in two heaps: with film on some side, and bare. */
    private static void seams(ObjectNode o, RunResult r) {
        ArrayNode wet = o.putArray("seamsWet");
        ArrayNode bare = o.putArray("seamsBare");
        for (SeamCoverage.Line line : r.coverage().seams().lines()) {
            ArrayNode into = line.reached() < 0.5 ? bare : wet;
            for (int i = 1; i < line.pointsM().size(); i++) {
                vector(into, line.pointsM().get(i - 1));
                vector(into, line.pointsM().get(i));
            }
        }
    }

    private static void wands(ArrayNode a, RunResult r) {
        List<PassSpec> passes = r.scene().passes();
        for (int p = 0; p < passes.size(); p++) {
            Insertion way = VtkFiles.way(r, passes.get(p));
            double deepest = VtkFiles.stations(r, p).stream()
                    .mapToDouble(Station::depthM)
                    .max()
                    .orElse(0);
            if (way != null && deepest > 0) {
                var body = way.path().body(Math.min(deepest, way.path().maxDepthM()));
                ObjectNode o = a.addObject().put("radiusM", body.radiusM());
                ArrayNode line = o.putArray("line");
                body.centrelineM().forEach(v -> vector(line, v));
            }
        }
    }

    private static void vector(ArrayNode into, Vec3 v) {
        into.add((float) v.x()).add((float) v.y()).add((float) v.z());
    }

    /** Lowest (sign -1) or highest coordinates. */
    private static float[] extreme(float[] xyz, int sign) {
        float[] e = new float[3];
        for (int i = 0; i < xyz.length; i++) {
            if (i < 3 || sign * (xyz[i] - e[i % 3]) > 0) {
                e[i % 3] = xyz[i];
            }
        }
        return e;
    }

    /** Places as shares of the box, 16 bits each: a quarter of a millimetre on a structure of 16 m. */
    private static String places(float[] xyz, float[] low, float[] high) {
        ByteBuffer b = ByteBuffer.allocate(2 * xyz.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < xyz.length; i++) {
            float size = high[i % 3] - low[i % 3];
            b.putShort((short) Math.round(size > 0 ? 65535.0 * (xyz[i] - low[i % 3]) / size : 0));
        }
        return base64(b);
    }

    private static String normals(float[] normals) {
        ByteBuffer b = ByteBuffer.allocate(normals.length);
        for (float n : normals) {
            b.put((byte) Math.round(127 * n));
        }
        return base64(b);
    }

    private static String placeOfTriangle(RunResult r, FilmMesh mesh) {
        int[] place = Labels.barePlaces(r);
        int[] surfels = mesh.surfels();
        ByteBuffer b = ByteBuffer.allocate(2 * surfels.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int s : surfels) {
            b.putShort((short) (s < 0 ? 0 : Math.min(65535, place[s])));
        }
        return base64(b);
    }

    private static String floats(float[] values) {
        ByteBuffer b = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        b.asFloatBuffer().put(values);
        return base64(b);
    }

    private static String ints(int[] values) {
        ByteBuffer b = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        b.asIntBuffer().put(values);
        return base64(b);
    }

    private static String base64(ByteBuffer b) {
        byte[] all = new byte[b.capacity()];
        b.get(0, all);
        return Base64.getEncoder().encodeToString(all);
    }
}
