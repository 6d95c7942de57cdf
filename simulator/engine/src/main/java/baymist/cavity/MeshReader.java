package baymist.cavity;

import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec.Mesh;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Reads a mesh file by its kind: STL (ASCII or binary), OBJ or shell bulk data. */
final class MeshReader {
    private static final long LARGEST_FILE = 1L << 30;

    private MeshReader() {}

    static RawMesh read(Mesh spec) {
        Path file = spec.file();
        String name = file.getFileName() == null
                ? file.toString()
                : file.getFileName().toString();
        SourcePlace place = SourcePlace.of(name);
        try {
            if (Files.isDirectory(file)) {
                throw new SceneException(
                        "MSH-001", spec.place(), "'" + file + "' is a folder; the name of a mesh file expected");
            }
            if (!Files.isRegularFile(file)) {
                throw new SceneException("MSH-001", spec.place(), "there is no mesh file '" + file + "'");
            }
            long size = Files.size(file);
            if (size == 0) {
                throw new SceneException("MSH-002", place, "the mesh file is empty");
            }
            if (size > LARGEST_FILE) {
                throw new SceneException(
                        "MSH-009", place, "the mesh file has " + size + " bytes; at most 1 GiB can be read");
            }
            RawMesh mesh = readKind(file, name.toLowerCase(Locale.ROOT), size, spec);
            if (mesh.triangles() == 0) {
                throw new SceneException("MSH-003", place, "the mesh file holds no triangle");
            }
            return mesh;
        } catch (IOException e) {
            throw new SceneException(
                    "MSH-001", spec.place(), "the mesh file '" + file + "' can't be read: " + e.getMessage());
        }
    }

    private static RawMesh readKind(Path file, String name, long size, Mesh spec) throws IOException {
        if (name.endsWith(".stl")) {
            return StlReader.read(file, size);
        }
        if (name.endsWith(".bdf") || name.endsWith(".dat") || name.endsWith(".nas") || name.endsWith(".blk")) {
            return BulkDataReader.read(file);
        }
        if (name.endsWith(".obj")) {
            return ObjReader.read(file);
        }
        throw new SceneException(
                "MSH-005",
                spec.place(),
                "mesh file '" + file.getFileName()
                        + "' is of no known kind; .stl, .obj, .bdf, .dat, .nas or .blk expected");
    }
}
