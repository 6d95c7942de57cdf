package baymist.cavity;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.scene.CavitySpec;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Writes small mesh files for tests. */
final class MeshFiles {
    private MeshFiles() {}

    static CavitySpec.Mesh spec(Path file) {
        return spec(file, 1);
    }

    static CavitySpec.Mesh spec(Path file, double unit) {
        return new CavitySpec.Mesh("mesh", file, unit, null, 0.001, List.of(), CavityFixtures.PLACE);
    }

    static Path text(Path dir, String name, String content) throws IOException {
        return Files.writeString(dir.resolve(name), content, StandardCharsets.UTF_8);
    }

    static String ascii(TriangleMesh mesh, String name) {
        StringBuilder s = new StringBuilder("solid " + name + "\n");
        for (int t = 0; t < mesh.triangleCount(); t++) {
            s.append("  facet normal 0 0 0\n    outer loop\n");
            for (int k = 0; k < 3; k++) {
                Vec3 p = mesh.point(t, k);
                s.append(String.format(Locale.ROOT, "      vertex %s %s %s%n", p.x(), p.y(), p.z()));
            }
            s.append("    endloop\n  endfacet\n");
        }
        return s + "endsolid " + name + "\n";
    }

    static byte[] binary(TriangleMesh mesh, String header) {
        ByteBuffer b = ByteBuffer.allocate(84 + 50 * mesh.triangleCount()).order(ByteOrder.LITTLE_ENDIAN);
        b.put(header.getBytes(StandardCharsets.US_ASCII)).position(80).putInt(mesh.triangleCount());
        for (int t = 0; t < mesh.triangleCount(); t++) {
            b.putFloat(0).putFloat(0).putFloat(0);
            for (int k = 0; k < 3; k++) {
                Vec3 p = mesh.point(t, k);
                b.putFloat((float) p.x()).putFloat((float) p.y()).putFloat((float) p.z());
            }
            b.putShort((short) 0);
        }
        return b.array();
    }

    static TriangleMesh blockMesh() {
        return CavityFixtures.build(CavityFixtures.block(new Vec3(0.5, 0.25, 0.125)))
                .sheets();
    }
}
