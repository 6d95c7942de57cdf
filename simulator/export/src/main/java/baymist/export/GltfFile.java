package baymist.export;

import baymist.access.Insertion;
import baymist.access.Station;
import baymist.cavity.Part;
import baymist.geom.Vec3;
import baymist.picture.FilmColours;
import baymist.run.RunResult;
import baymist.scene.PassSpec;
import baymist.surface.Patch;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * The cavity with its film as one binary glTF file: a node for each part with the sides that face the air, film as vertex colours and in
 * µm, and the wand of each pass as a line.
 *
 * <p>Format: glTF 2.0 specification (Khronos Group 2017; ISO/IEC 12113:2022), binary container section 4.4; colours that need no light by
 * the extension KHR_materials_unlit. Lengths in metres; the file's y is up, so a node above all others turns our axes (x aft, y right, z
 * up).
 */
final class GltfFile {
    private static final int FLOAT = 5126;
    private static final int UNSIGNED_INT = 5125;
    private static final int UNSIGNED_SHORT = 5123;
    private static final int ARRAY_BUFFER = 34962;
    private static final int ELEMENT_ARRAY_BUFFER = 34963;
    private static final int LINE_STRIP = 3;
    private static final int WAND_RGB = 0x8E2A86;

    private final RunResult result;
    private final FilmMesh mesh;
    private final ObjectNode root = JsonNodeFactory.instance.objectNode();
    private final ArrayNode nodes = JsonNodeFactory.instance.arrayNode();
    private final ArrayNode meshes = JsonNodeFactory.instance.arrayNode();
    private final ArrayNode accessors = JsonNodeFactory.instance.arrayNode();
    private final ArrayNode views = JsonNodeFactory.instance.arrayNode();
    private final ByteBuffer bytes;

    private GltfFile(RunResult result, FilmMesh mesh) {
        this.result = result;
        this.mesh = mesh;
        long size = 36L * mesh.vertexCount() + 12L * mesh.triangleCount() + 4096;
        for (PassSpec pass : result.scene().passes()) {
            size += 12L * body(pass).size();
        }
        if (size > Integer.MAX_VALUE - 64) {
            throw new IllegalArgumentException("a glTF buffer of " + size + " bytes is too large");
        }
        bytes = ByteBuffer.allocate((int) size).order(ByteOrder.LITTLE_ENDIAN);
    }

    /** Writes the file; the stream is flushed and left open. */
    static void write(RunResult result, FilmMesh mesh, OutputStream out) throws IOException {
        GltfFile file = new GltfFile(result, mesh);
        file.fill();
        file.container(out);
    }

    private void fill() {
        ObjectNode asset = root.putObject("asset");
        asset.put("version", "2.0");
        asset.put("generator", "Baymist " + result.record().engineVersion());
        extras(asset.putObject("extras"));
        root.putArray("extensionsUsed").add("KHR_materials_unlit");
        root.put("scene", 0);
        root.putArray("scenes")
                .addObject()
                .put("name", result.scene().title())
                .putArray("nodes")
                .add(0);
        ObjectNode top = nodes.addObject();
        top.put("name", result.cavity().name());
        double half = Math.sqrt(0.5);
        top.putArray("rotation").add(-half).add(0).add(0).add(half);
        ArrayNode children = top.putArray("children");
        parts(children);
        wands(children);
        root.set("nodes", nodes);
        root.set("meshes", meshes);
        ArrayNode materials = root.putArray("materials");
        material(materials, "film", 0xFFFFFF);
        material(materials, "wand", WAND_RGB);
        root.set("accessors", accessors);
        root.set("bufferViews", views);
        root.putArray("buffers").addObject().put("byteLength", bytes.position());
    }

    private void extras(ObjectNode o) {
        FilmColours colours = new FilmColours(result.scene().targets());
        o.put("title", result.scene().title());
        o.put("sceneHash", result.scene().hash());
        o.put("positionUnit", "m");
        o.put("filmAttribute", "_FILM_UM");
        o.put("filmUnit", "um");
        ObjectNode scale = o.putObject("colourScale");
        scale.put("law", "logarithm of film");
        scale.put("lowUm", 1e6 * colours.lowM());
        scale.put("highUm", 1e6 * colours.highM());
        scale.put("low", hex(FilmColours.rgbAt(0)));
        scale.put("middle", hex(FilmColours.rgbAt(0.5)));
        scale.put("high", hex(FilmColours.rgbAt(1)));
        scale.put("bareBelowUm", 1e6 * result.scene().targets().hazeM());
        scale.put("bare", hex(FilmColours.BARE_RGB));
        o.put("detail", mesh.surface().detail().sentence());
    }

    private static String hex(int rgb) {
        return String.format(Locale.ROOT, "#%06X", rgb);
    }

    private void parts(ArrayNode children) {
        int position = view(floats(mesh.vertices(mesh.surface().xyz(), 3)), 12, ARRAY_BUFFER);
        int normal = view(floats(mesh.vertices(mesh.surface().normals(), 3)), 12, ARRAY_BUFFER);
        float[] film = mesh.vertices(mesh.filmUm(), 1);
        int colour = view(colours(film), 8, ARRAY_BUFFER);
        int filmView = view(floats(film), 4, ARRAY_BUFFER);
        int corner = view(indices(), 0, ELEMENT_ARRAY_BUFFER);
        float[] xyz = mesh.vertices(mesh.surface().xyz(), 3);
        List<Part> parts = result.cavity().parts();
        ObjectNode[] nodeOfPart = new ObjectNode[parts.size()];
        ArrayNode[] primitivesOfPart = new ArrayNode[parts.size()];
        int vertex = 0;
        int triangle = 0;
        for (Patch p : mesh.patches()) {
            if (nodeOfPart[p.part()] == null) {
                Part part = parts.get(p.part());
                ObjectNode m = meshes.addObject();
                m.put("name", part.name());
                primitivesOfPart[p.part()] = m.putArray("primitives");
                nodeOfPart[p.part()] = node(children, part.name(), meshes.size() - 1);
                nodeOfPart[p.part()]
                        .putObject("extras")
                        .put("kind", part.kind().name().toLowerCase(Locale.ROOT));
            }
            ObjectNode primitive = primitivesOfPart[p.part()].addObject();
            ObjectNode attributes = primitive.putObject("attributes");
            int n = p.vertexCount();
            ObjectNode place = accessor(position, 12 * vertex, FLOAT, n, "VEC3");
            bounds(place, xyz, 3, vertex, n);
            attributes.put("POSITION", accessors.size() - 1);
            accessor(normal, 12 * vertex, FLOAT, n, "VEC3");
            attributes.put("NORMAL", accessors.size() - 1);
            accessor(colour, 8 * vertex, UNSIGNED_SHORT, n, "VEC4").put("normalized", true);
            attributes.put("COLOR_0", accessors.size() - 1);
            bounds(accessor(filmView, 4 * vertex, FLOAT, n, "SCALAR"), film, 1, vertex, n);
            attributes.put("_FILM_UM", accessors.size() - 1);
            accessor(corner, 12 * triangle, UNSIGNED_INT, 3 * p.triangleCount(), "SCALAR");
            primitive.put("indices", accessors.size() - 1);
            primitive.put("material", 0);
            primitive
                    .putObject("extras")
                    .put("bay", result.grid().bays().get(p.bay()).name());
            vertex += n;
            triangle += p.triangleCount();
        }
    }

    private void wands(ArrayNode children) {
        for (PassSpec pass : result.scene().passes()) {
            List<Vec3> line = body(pass);
            if (line.size() < 2) {
                continue;
            }
            float[] xyz = new float[3 * line.size()];
            for (int i = 0; i < line.size(); i++) {
                for (int k = 0; k < 3; k++) {
                    xyz[3 * i + k] = (float) line.get(i).get(k);
                }
            }
            int view = view(floats(xyz), 12, ARRAY_BUFFER);
            bounds(accessor(view, 0, FLOAT, line.size(), "VEC3"), xyz, 3, 0, line.size());
            ObjectNode m = meshes.addObject();
            m.put("name", "wand, " + pass.name());
            ObjectNode primitive = m.putArray("primitives").addObject();
            primitive.putObject("attributes").put("POSITION", accessors.size() - 1);
            primitive.put("mode", LINE_STRIP);
            primitive.put("material", 1);
            node(children, "wand, " + pass.name(), meshes.size() - 1);
        }
    }

    /** The wand of a pass at its deepest, from the opening to the tip. */
    private List<Vec3> body(PassSpec pass) {
        Insertion way = VtkFiles.way(result, pass);
        int p = result.scene().passes().indexOf(pass);
        double deepest = VtkFiles.stations(result, p).stream()
                .mapToDouble(Station::depthM)
                .max()
                .orElse(0);
        return way == null || !(deepest > 0)
                ? List.of()
                : way.path().body(Math.min(deepest, way.path().maxDepthM())).centrelineM();
    }

    private ObjectNode node(ArrayNode children, String name, int meshIndex) {
        children.add(nodes.size());
        return nodes.addObject().put("name", name).put("mesh", meshIndex);
    }

    private static void material(ArrayNode materials, String name, int rgb) {
        ObjectNode m = materials.addObject().put("name", name);
        ObjectNode surface = m.putObject("pbrMetallicRoughness");
        ArrayNode factor = surface.putArray("baseColorFactor");
        for (int shift = 16; shift >= 0; shift -= 8) {
            factor.add(linear(rgb >> shift & 0xFF));
        }
        factor.add(1);
        surface.put("metallicFactor", 0).put("roughnessFactor", 1);
        m.putObject("extensions").putObject("KHR_materials_unlit");
    }

    /** Share of light of an sRGB channel 0..255 (IEC 61966-2-1). */
    static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private ObjectNode accessor(int view, int offset, int component, int count, String type) {
        return accessors
                .addObject()
                .put("bufferView", view)
                .put("byteOffset", offset)
                .put("componentType", component)
                .put("count", count)
                .put("type", type);
    }

    private static void bounds(ObjectNode accessor, float[] values, int components, int first, int count) {
        ArrayNode min = accessor.putArray("min");
        ArrayNode max = accessor.putArray("max");
        for (int k = 0; k < components; k++) {
            float low = Float.POSITIVE_INFINITY;
            float high = Float.NEGATIVE_INFINITY;
            for (int v = first; v < first + count; v++) {
                low = Math.min(low, values[components * v + k]);
                high = Math.max(high, values[components * v + k]);
            }
            min.add(low);
            max.add(high);
        }
    }

    /** Puts a block of bytes into the buffer; returns its number. */
    private int view(byte[] block, int stride, int target) {
        ObjectNode v = views.addObject().put("buffer", 0).put("byteOffset", bytes.position());
        v.put("byteLength", block.length);
        if (stride > 0) {
            v.put("byteStride", stride);
        }
        v.put("target", target);
        bytes.put(block);
        return views.size() - 1;
    }

    private static byte[] floats(float[] values) {
        ByteBuffer b = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        b.asFloatBuffer().put(values);
        return b.array();
    }

    /** Colours as shares of light in 16 bits, with an alpha of 1. */
    private byte[] colours(float[] filmUm) {
        FilmColours colours = new FilmColours(result.scene().targets());
        double hazeUm = 1e6 * result.scene().targets().hazeM();
        ByteBuffer b = ByteBuffer.allocate(8 * filmUm.length).order(ByteOrder.LITTLE_ENDIAN);
        for (float um : filmUm) {
            int rgb = um < hazeUm ? FilmColours.BARE_RGB : colours.rgb(1e-6 * um);
            for (int shift = 16; shift >= 0; shift -= 8) {
                b.putShort((short) Math.round(65535 * linear(rgb >> shift & 0xFF)));
            }
            b.putShort((short) 65535);
        }
        return b.array();
    }

    /** Corners of each patch's triangles, numbered from its own first vertex. */
    private byte[] indices() {
        ByteBuffer b = ByteBuffer.allocate(12 * mesh.triangleCount()).order(ByteOrder.LITTLE_ENDIAN);
        for (Patch p : mesh.patches()) {
            for (int c = 0; c < 3 * p.triangleCount(); c++) {
                b.putInt(mesh.surface().corners()[3 * p.firstTriangle() + c] - p.firstVertex());
            }
        }
        return b.array();
    }

    private void container(OutputStream out) throws IOException {
        byte[] json = padded(new ObjectMapper().writeValueAsBytes(root), (byte) ' ');
        byte[] binary = padded(Arrays.copyOf(bytes.array(), bytes.position()), (byte) 0);
        ByteBuffer head = ByteBuffer.allocate(20).order(ByteOrder.LITTLE_ENDIAN);
        head.putInt(0x46546C67).putInt(2).putInt(12 + 8 + json.length + 8 + binary.length);
        head.putInt(json.length).putInt(0x4E4F534A);
        out.write(head.array());
        out.write(json);
        ByteBuffer second = ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN);
        second.putInt(binary.length).putInt(0x004E4942);
        out.write(second.array());
        out.write(binary);
        out.flush();
    }

    private static byte[] padded(byte[] block, byte with) {
        byte[] out = Arrays.copyOf(block, (block.length + 3) / 4 * 4);
        Arrays.fill(out, block.length, out.length, with);
        return out;
    }
}
