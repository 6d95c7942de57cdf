package baymist.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import baymist.export.Exports.Kind;
import baymist.export.Outside.Said;
import baymist.geom.Vec3;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** VTK's own readers (Kitware, BSD licence; Debian's python3-vtk9) find in each file what result.json says. */
class VtkReadBackTest {
    private static final Optional<String> PYTHON = Outside.pythonWithVtk();

    @TempDir
    Path folder;

    private Said readBack() throws IOException {
        return Outside.run(PYTHON.orElseThrow(), "src/test/python/read_back.py", folder.toString());
    }

    @Test
    void everyFileHoldsWhatTheResultHolds() throws IOException {
        assumeTrue(PYTHON.isPresent(), "needs python3-vtk9 and python3-numpy");
        QuickRun run = QuickRun.get();
        Exports.write(run.result(), run.watch(), EnumSet.allOf(Kind.class), folder);
        Said said = readBack();
        assertEquals(0, said.code(), said.text());
        assertTrue(said.text().contains("all checks hold"), said.text());
        // two passes and the end of the job
        assertTrue(said.text().contains("fog-3.vti read without complaint"), said.text());
    }

    @Test
    void aNumberThatIsAFewPercentOffIsSeen() throws IOException {
        assumeTrue(PYTHON.isPresent(), "needs python3-vtk9 and python3-numpy");
        QuickRun run = QuickRun.get();
        Exports.write(run.result(), run.watch(), EnumSet.allOf(Kind.class), folder);
        Path json = folder.resolve("result.json");
        String airborne = "\"airborneKg\" : " + run.result().ledger().airborneKg();
        String text = Files.readString(json);
        assertTrue(text.contains(airborne), "the ledger's fog in the air");
        Files.writeString(
                json,
                text.replaceFirst(
                        java.util.regex.Pattern.quote(airborne),
                        "\"airborneKg\" : " + 1.02 * run.result().ledger().airborneKg()));
        Said said = readBack();
        assertEquals(1, said.code(), said.text());
        assertTrue(said.text().contains("WRONG  fog in the air at the end"), said.text());
    }

    /** Arrays of one byte less than a block, a block, and more: the format counts the last block in another way when it is full. */
    @Test
    void arraysOfManyBlocksAreReadWhole() throws IOException {
        assumeTrue(PYTHON.isPresent(), "needs python3-vtk9 and python3-numpy");
        for (int n :
                new int[] {1, VtkXml.BLOCK / 8 - 1, VtkXml.BLOCK / 8, 2 * VtkXml.BLOCK / 8, 2 * VtkXml.BLOCK / 8 + 3}) {
            double[] values = new double[n];
            for (int i = 0; i < n; i++) {
                values[i] = 0.5 * i - (i % 7);
            }
            ImageFile image = new ImageFile(
                    new int[] {n, 1, 1},
                    Vec3.ZERO,
                    new Vec3(1, 1, 1),
                    List.of(),
                    List.of(VtkArray.doubles("number", 1, values)),
                    "number",
                    "");
            Path file = folder.resolve(n + ".vti");
            try (var out = Files.newBufferedWriter(file)) {
                image.write(out);
            }
            String script = String.format(
                    Locale.ROOT,
                    "from vtkmodules.vtkIOXML import vtkXMLImageDataReader as R\n"
                            + "from vtkmodules.util.numpy_support import vtk_to_numpy as f\nimport numpy\n"
                            + "r = R(); r.SetFileName(r'%s'); r.Update()\n"
                            + "a = f(r.GetOutput().GetCellData().GetArray('number'))\n"
                            + "i = numpy.arange(%d)\nprint(len(a), (a == 0.5 * i - i %% 7).all())\n",
                    file,
                    n);
            Said said = Outside.run(PYTHON.orElseThrow(), "-c", script);
            assertEquals(n + " True", said.text().strip());
        }
    }

    /** A job without passes has no wand and no stations: files without points are files all the same. */
    @Test
    void aFileWithoutPointsIsReadWithoutComplaint() throws IOException {
        assumeTrue(PYTHON.isPresent(), "needs python3-vtk9 and python3-numpy");
        List<PolyFile> empty = List.of(
                new Lines()
                        .file(
                                List.of(VtkArray.strings("pass_names", List.of())),
                                List.of(VtkArray.ints("pass", new int[0])),
                                "pass"),
                PolyFile.points(
                        new double[0],
                        List.of(VtkArray.strings("words", List.of("\u00b5m, \"<&>\"", "", "second"))),
                        List.of(VtkArray.doubles("depth_m", 1, new double[0])),
                        "depth_m"));
        for (PolyFile file : empty) {
            Path vtp = folder.resolve("empty.vtp");
            try (var out = Files.newBufferedWriter(vtp)) {
                file.write(out);
            }
            String script = "from vtkmodules.vtkIOXML import vtkXMLPolyDataReader as R\n"
                    + "h = []; r = R(); r.AddObserver('ErrorEvent', lambda *_: h.append(1))\n"
                    + "r.AddObserver('WarningEvent', lambda *_: h.append(1)); r.SetFileName(r'" + vtp
                    + "'); r.Update()\n"
                    + "o = r.GetOutput(); w = o.GetFieldData().GetAbstractArray('words')\n"
                    + "print(h, o.GetNumberOfPoints(), o.GetNumberOfCells(),"
                    + " w and ascii([w.GetValue(i) for i in range(w.GetNumberOfValues())]))\n";
            Said said = Outside.run(PYTHON.orElseThrow(), "-c", script);
            String words = file == empty.get(0) ? "None" : "['\\xb5m, \"<&>\"', '', 'second']";
            assertEquals("[] 0 0 " + words, said.text().strip());
        }
    }
}
