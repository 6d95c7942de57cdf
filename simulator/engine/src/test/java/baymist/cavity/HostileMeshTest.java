package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SceneException;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that mean harm end in one sentence, soon, and in little memory. */
class HostileMeshTest {
    @TempDir
    Path dir;

    private static final String[] KINDS = {"stl", "obj", "bdf"};

    @Test
    void aHeaderOfAHundredMillionTrianglesTakesNoMemory() throws IOException {
        // sparse: the file has the length that its header promises, 5 GB, but no content
        Path promise = dir.resolve("promise.stl");
        try (RandomAccessFile f = new RandomAccessFile(promise.toFile(), "rw")) {
            f.seek(80);
            f.write(ByteBuffer.allocate(4)
                    .order(ByteOrder.LITTLE_ENDIAN)
                    .putInt(100_000_000)
                    .array());
            refused("MSH-006", promise);
            f.setLength(84 + 50L * 100_000_000);
        }
        refused("MSH-009", promise);
        Path tooMany = dir.resolve("too many.stl");
        try (RandomAccessFile f = new RandomAccessFile(tooMany.toFile(), "rw")) {
            f.seek(80);
            f.write(ByteBuffer.allocate(4)
                    .order(ByteOrder.LITTLE_ENDIAN)
                    .putInt(4_000_000)
                    .array());
            f.setLength(84 + 50L * 4_000_000);
        }
        refused("MSH-009", tooMany);
    }

    @Test
    void anyKindMayBeOneByteAFolderOrNoise() throws IOException {
        Random random = new Random(3);
        for (String kind : KINDS) {
            SceneException one = refusal(Files.write(dir.resolve("one." + kind), new byte[] {'v'}));
            assertTrue(one.findings().get(0).id().startsWith("MSH-"), one.getMessage());
            refused("MSH-001", Files.createDirectory(dir.resolve("folder." + kind)));
            for (int draw = 0; draw < 20; draw++) {
                byte[] noise = new byte[1 + random.nextInt(5000)];
                random.nextBytes(noise);
                SceneException e = refusal(Files.write(dir.resolve("noise." + kind), noise));
                assertTrue(e.findings().get(0).id().startsWith("MSH-"), e.getMessage());
                assertEquals(1, e.findings().size());
            }
        }
    }

    @Test
    void endlessLinesEnd() throws IOException {
        for (String kind : KINDS) {
            Path file = dir.resolve("endless." + kind);
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
                out.write("solid x ".getBytes(StandardCharsets.US_ASCII));
                for (int i = 0; i < 2_000_000; i++) {
                    out.write(' ');
                }
            }
            refused("MSH-004", file);
        }
    }

    @Test
    void binaryThatBeginsAsTextAndTextThatLooksBinaryAreTold() throws IOException {
        byte[] good = MeshFiles.binary(MeshFiles.blockMesh(), "solid but binary");
        byte[] cut = Arrays.copyOf(good, good.length - 20);
        SceneException e = refusal(Files.write(dir.resolve("cut.stl"), cut));
        assertEquals("MSH-006", e.findings().get(0).id());
        assertTrue(e.getMessage().contains("promises 12 triangles (684 bytes) where the file has 664"), e.getMessage());
        String text = MeshFiles.ascii(MeshFiles.blockMesh(), "x");
        refused("MSH-006", MeshFiles.text(dir, "headless.stl", text.substring(8)));
    }

    @Test
    void truncatedFilesOfAnyLengthEndInAMessageOrInSheets() throws IOException {
        byte[] binary = MeshFiles.binary(MeshFiles.blockMesh(), "x");
        byte[] text = MeshFiles.ascii(MeshFiles.blockMesh(), "x").getBytes(StandardCharsets.UTF_8);
        for (int length = 0; length < 684; length += 13) {
            assertTrue(refusal(Files.write(dir.resolve("b.stl"), Arrays.copyOf(binary, length)))
                    .getMessage()
                    .contains("[MSH-"));
            assertTrue(refusal(Files.write(dir.resolve("t.stl"), Arrays.copyOf(text, length)))
                    .getMessage()
                    .contains("[MSH-"));
        }
    }

    @Test
    void coordinatesBeyondAllBoundsAndMeshesWithoutAreaAreRefused() throws IOException {
        refused("MSH-015", MeshFiles.text(dir, "far.obj", "v 1e300 0 0\nv 1e300 1 0\nv 0 0 1e300\nf 1 2 3\n"));
        refused("MSH-015", MeshFiles.text(dir, "off.obj", "v 1e9 0 0\nv 1000000001 1 0\nv 1e9 1 1\nf 1 2 3\n"));
        StringBuilder flat = new StringBuilder();
        for (int i = 0; i < 300; i++) {
            flat.append("v ").append(i * 0.01).append(" 0 0\n");
        }
        for (int i = 1; i < 299; i++) {
            flat.append("f ")
                    .append(i)
                    .append(' ')
                    .append(i + 1)
                    .append(' ')
                    .append(i + 2)
                    .append('\n');
        }
        refused("MSH-003", MeshFiles.text(dir, "flat.obj", flat.toString()));
    }

    @Test
    void includesAreNotFollowedAndCardsWithoutEndStayBounded() throws IOException {
        refused("MSH-012", MeshFiles.text(dir, "deep.bdf", "INCLUDE 'deep.bdf'\n"));
        Path chain = dir.resolve("chain.bdf");
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(chain))) {
            out.write("SPC1,1,123456,1\n".getBytes(StandardCharsets.US_ASCII));
            for (int i = 0; i < 200_000; i++) {
                out.write(",2,3,4,5,6,7,8,9\n".getBytes(StandardCharsets.US_ASCII));
            }
        }
        refused("MSH-003", chain);
        refused("MSH-010", MeshFiles.text(dir, "id.bdf", "GRID,2147483648,,0.,0.,0.\n"));
        refused("MSH-010", MeshFiles.text(dir, "nan.bdf", "GRID,1,,NaN,0.,0.\n"));
        refused("MSH-010", MeshFiles.text(dir, "inf.bdf", "GRID,1,,1.+999,0.,0.\n"));
        refused("MSH-014", MeshFiles.text(dir, "missing.bdf", "CTRIA3,1,1,1,2,3\n"));
    }

    private SceneException refusal(Path file) {
        return assertThrows(
                SceneException.class,
                () -> CavityFixtures.build(MeshFiles.spec(file)),
                file.getFileName().toString());
    }

    private void refused(String id, Path file) {
        SceneException e = refusal(file);
        assertEquals(1, e.findings().size());
        assertEquals(id, e.findings().get(0).id(), e.getMessage());
        assertTrue(e.getMessage().length() < 400, e.getMessage());
    }
}
