package baymist.export;

import baymist.report.AtomicFile;
import baymist.report.FilmTable;
import baymist.report.ResultJson;
import baymist.run.RunResult;
import baymist.surface.SurfaceOptions;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Writes a result as files for other programs. */
public final class Exports {
    /** Kinds of files. */
    public enum Kind {
        VTK,
        GLTF,
        CSV,
        JSON
    }

    private Exports() {}

    /**
     * Writes the files into a folder, all of them or none: they are written beside their places first and moved when the last is done.
     *
     * @param watch looked on while {@code result} was computed
     * @return names of the files in the folder
     * @throws IOException when a file could not be written; files that were there before are then untouched unless the moving itself failed
     */
    public static List<String> write(RunResult result, RunWatch watch, Set<Kind> kinds, Path folder)
            throws IOException {
        Origins origins = Origins.of(result, watch.arrivedKg());
        boolean triangles = kinds.contains(Kind.VTK) || kinds.contains(Kind.GLTF);
        FilmMesh mesh = triangles ? FilmMesh.of(result, SurfaceOptions.DEFAULT) : null;
        try (Batch batch = new Batch(folder)) {
            if (kinds.contains(Kind.VTK) && mesh != null) {
                vtk(result, watch.snapshots(), origins, mesh, batch);
            }
            if (kinds.contains(Kind.GLTF) && mesh != null) {
                AtomicFile.writeBytes(batch.file("film.glb"), out -> GltfFile.write(result, mesh, out));
            }
            if (kinds.contains(Kind.CSV)) {
                csv(result, origins, batch);
            }
            if (kinds.contains(Kind.JSON)) {
                ResultJson.write(result, batch.file("result.json"));
                FilmTable.write(result, batch.file(FilmTable.FILE));
            }
            return batch.done();
        }
    }

    private static void vtk(RunResult result, List<FogSnapshot> times, Origins origins, FilmMesh mesh, Batch batch)
            throws IOException {
        List<Integer> numbers = new ArrayList<>();
        for (int i = 0; i < times.size(); i++) {
            ImageFile fog = VtkFiles.fog(result, times.get(i));
            AtomicFile.writeText(batch.file("fog-" + (i + 1) + ".vti"), fog::write);
            numbers.add(i + 1);
        }
        AtomicFile.writeText(batch.file("fog.pvd"), out -> {
            VtkXml xml = new VtkXml(out);
            out.write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
            xml.start("VTKFile type=\"Collection\" version=\"0.1\" byte_order=\"LittleEndian\"");
            xml.start("Collection");
            for (int i : numbers) {
                xml.empty(
                        "DataSet timestep=\"" + times.get(i - 1).timeS() + "\" part=\"0\" file=\"fog-" + i + ".vti\"");
            }
            xml.finish();
        });
        AtomicFile.writeText(batch.file("film.vtp"), mesh.vtk(result, origins)::write);
        AtomicFile.writeText(batch.file("surfels.vtp"), VtkFiles.surfels(result, origins)::write);
        AtomicFile.writeText(batch.file("seams.vtp"), VtkFiles.seams(result)::write);
        AtomicFile.writeText(batch.file("wand.vtp"), VtkFiles.wand(result)::write);
        AtomicFile.writeText(batch.file("stations.vtp"), VtkFiles.stations(result)::write);
    }

    private static void csv(RunResult r, Origins origins, Batch batch) throws IOException {
        AtomicFile.writeText(batch.file("surfels.csv"), out -> CsvFiles.surfels(r, origins, out));
        AtomicFile.writeText(batch.file("bare-places.csv"), out -> CsvFiles.regions(r, out));
        AtomicFile.writeText(batch.file("seams.csv"), out -> CsvFiles.seams(r, out));
        AtomicFile.writeText(batch.file("coverage.csv"), out -> CsvFiles.coverage(r, out));
        AtomicFile.writeText(batch.file("ledger.csv"), out -> CsvFiles.ledger(r, out));
        AtomicFile.writeText(batch.file("history.csv"), out -> CsvFiles.history(r, out));
    }
}
