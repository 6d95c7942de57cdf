package baymist.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.picture.FilmColours;
import baymist.run.RunResult;
import baymist.surface.Patch;
import baymist.surface.SurfaceOptions;
import de.javagl.jgltf.model.AccessorFloatData;
import de.javagl.jgltf.model.AccessorIntData;
import de.javagl.jgltf.model.AccessorModel;
import de.javagl.jgltf.model.AccessorShortData;
import de.javagl.jgltf.model.GltfModel;
import de.javagl.jgltf.model.MeshPrimitiveModel;
import de.javagl.jgltf.model.NodeModel;
import de.javagl.jgltf.model.io.GltfModelReader;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A glTF library that is not ours (de.javagl jgltf, MIT licence) reads the file back. */
class GltfFileTest {
    private static final int TRIANGLES = 4;

    private static RunResult result;
    private static FilmMesh mesh;
    private static byte[] bytes;
    private static GltfModel model;

    @BeforeAll
    static void write() throws IOException {
        result = QuickRun.get().result();
        mesh = FilmMesh.of(result, SurfaceOptions.DEFAULT);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        GltfFile.write(result, mesh, out);
        bytes = out.toByteArray();
        model = new GltfModelReader().readWithoutReferences(new ByteArrayInputStream(bytes));
    }

    /** glTF 2.0 specification, section 4.4 (binary container): magic, version, length; chunks of JSON and BIN, each a multiple of four. */
    @Test
    void containerIsAsTheSpecificationSays() {
        ByteBuffer b = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        assertEquals(0x46546C67, b.getInt(0));
        assertEquals(2, b.getInt(4));
        assertEquals(bytes.length, b.getInt(8));
        int json = b.getInt(12);
        assertEquals(0, json % 4);
        assertEquals(0x4E4F534A, b.getInt(16));
        int binary = b.getInt(20 + json);
        assertEquals(0, binary % 4);
        assertEquals(0x004E4942, b.getInt(24 + json));
        assertEquals(bytes.length, 28 + json + binary);
    }

    @Test
    void everyTriangleAndVertexIsThereOnce() {
        int triangles = 0;
        int vertices = 0;
        for (var m : model.getMeshModels()) {
            for (MeshPrimitiveModel p : m.getMeshPrimitiveModels()) {
                if (p.getMode() == TRIANGLES) {
                    triangles += p.getIndices().getCount() / 3;
                    vertices += attribute(p, "POSITION").getCount();
                    AccessorIntData corners = (AccessorIntData) p.getIndices().getAccessorData();
                    for (int i = 0; i < corners.getNumElements(); i++) {
                        assertTrue(corners.get(i, 0) < attribute(p, "POSITION").getCount());
                    }
                }
            }
        }
        assertEquals(mesh.triangleCount(), triangles);
        assertEquals(mesh.vertexCount(), vertices);
        int facing = mesh.surface().patches().stream()
                .filter(p -> p.side() == Patch.Side.CAVITY)
                .mapToInt(Patch::triangleCount)
                .sum();
        assertEquals(facing, triangles);
    }

    @Test
    void colourTellsTheFilmOfItsVertex() {
        FilmColours colours = new FilmColours(result.scene().targets());
        double hazeUm = 1e6 * result.scene().targets().hazeM();
        int bare = 0;
        int wet = 0;
        for (var m : model.getMeshModels()) {
            for (MeshPrimitiveModel p : m.getMeshPrimitiveModels()) {
                if (p.getMode() != TRIANGLES) {
                    continue;
                }
                AccessorFloatData film =
                        (AccessorFloatData) attribute(p, "_FILM_UM").getAccessorData();
                AccessorShortData colour =
                        (AccessorShortData) attribute(p, "COLOR_0").getAccessorData();
                for (int v = 0; v < film.getNumElements(); v++) {
                    boolean dry = film.get(v, 0) < hazeUm;
                    int rgb = dry ? FilmColours.BARE_RGB : colours.rgb(1e-6 * film.get(v, 0));
                    for (int k = 0; k < 3; k++) {
                        double share = Short.toUnsignedInt(colour.get(v, k)) / 65535.0;
                        assertEquals(srgb(share), (rgb >> 16 - 8 * k & 0xFF) / 255.0, 1e-3);
                    }
                    assertEquals(65535, Short.toUnsignedInt(colour.get(v, 3)));
                    bare += dry ? 1 : 0;
                    wet += dry ? 0 : 1;
                }
            }
        }
        assertTrue(bare > 100 && wet > 100, bare + " bare, " + wet + " wet");
    }

    /** Light to sRGB, IEC 61966-2-1:1999: the way back of what is written. */
    private static double srgb(double light) {
        return light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
    }

    /** IEC 61966-2-1:1999; a middle grey of 128 is 21.586 % of the light (0.2158605). */
    @Test
    void middleGreyIsTwentyTwoPercentOfTheLight() {
        assertEquals(0.2158605, GltfFile.linear(128), 1e-7);
        assertEquals(0, GltfFile.linear(0));
        assertEquals(1, GltfFile.linear(255), 1e-12);
        assertEquals(10 / 255.0 / 12.92, GltfFile.linear(10), 1e-12);
    }

    @Test
    void partsAreNodesUnderOneThatTurnsTheAxes() {
        NodeModel top = model.getSceneModels().get(0).getNodeModels().get(0);
        float[] turn = new float[16];
        top.computeGlobalTransform(turn);
        // z up becomes y up, y right becomes towards the onlooker's back; matrices are stored column after column
        float[][] columns = {{1, 0, 0}, {0, 0, -1}, {0, 1, 0}};
        for (int c = 0; c < 3; c++) {
            for (int k = 0; k < 3; k++) {
                assertEquals(columns[c][k], turn[4 * c + k], 1e-6f);
            }
        }
        Set<String> names = new HashSet<>();
        top.getChildren().forEach(n -> names.add(n.getName()));
        assertTrue(names.contains("upper skin") && names.contains("spar") && names.contains("rib 3"), names.toString());
        assertTrue(names.contains("wand, near half"), names.toString());
    }

    @Test
    void unitsTravelWithTheFile() {
        String json = new String(
                bytes,
                20,
                ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getInt(12),
                java.nio.charset.StandardCharsets.UTF_8);
        assertTrue(json.contains("\"positionUnit\":\"m\""));
        assertTrue(json.contains("\"filmUnit\":\"um\""));
        assertTrue(json.contains("\"sceneHash\":\"" + result.scene().hash() + "\""));
    }

    private static AccessorModel attribute(MeshPrimitiveModel p, String name) {
        AccessorModel a = p.getAttributes().get(name);
        assertNotNull(a, name);
        return a;
    }
}
