package baymist.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SceneException;
import baymist.run.RunResult;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RunDifferenceTest {
    @TempDir
    Path folder;

    private Path written(RunResult r) throws IOException {
        ResultJson.write(r, folder.resolve("result.json"));
        FilmTable.write(r, folder.resolve(FilmTable.FILE));
        return folder;
    }

    @Test
    void aRunAgainstItselfChangesNothing() throws IOException {
        RunResult r = SampleRun.wedge();
        RunDifference d = RunDifference.of(r, PastRun.read(written(r)));
        assertTrue(d.sameVoxels());
        assertEquals(0, d.unmatchedM2());
        assertEquals(0, d.total().gainedM2() + d.total().lostM2());
        assertEquals(d.total().filmBeforeM3(), d.total().filmNowM3());
        for (int s = 0; s < r.filmM().length; s++) {
            // to the last bit
            assertEquals(r.filmM()[s], d.beforeM()[s], 0);
        }
        d.regions().forEach(x -> assertEquals(x.beforeM2(), x.nowM2(), 0));
        d.seams().forEach(x -> assertEquals(x.before(), x.now(), 0));
        assertTrue(DifferenceReport.of(d).contains("none changed"));
    }

    @Test
    void whatIsGainedLessWhatIsLostIsTheDifferenceInEveryRow() throws IOException {
        RunResult before = SampleRun.wedge();
        RunResult now = SampleRun.wedgeLater();
        RunDifference d = RunDifference.of(now, PastRun.read(written(before).resolve("result.json")));
        assertTrue(d.sameVoxels());
        double area = before.coverage().total().areaM2();
        assertEquals(area * before.coverage().total().reached(), d.total().reachedBeforeM2(), 1e-12);
        assertEquals(area * now.coverage().total().reached(), d.total().reachedNowM2(), 1e-12);
        assertTrue(d.total().gainedM2() > 0 && d.total().lostM2() > 0);
        Stream.of(List.of(d.total()), d.byPart(), d.byBay())
                .flatMap(List::stream)
                .forEach(c -> assertEquals(
                        c.reachedNowM2() - c.reachedBeforeM2(), c.gainedM2() - c.lostM2(), 1e-12, c.name()));
        for (List<RunDifference.Change> table : List.of(d.byPart(), d.byBay())) {
            assertEquals(
                    area,
                    table.stream().mapToDouble(RunDifference.Change::areaM2).sum(),
                    1e-12);
            assertEquals(
                    d.total().gainedM2(),
                    table.stream().mapToDouble(RunDifference.Change::gainedM2).sum(),
                    1e-12);
            assertEquals(
                    d.total().protectedNowM2(),
                    table.stream()
                            .mapToDouble(RunDifference.Change::protectedNowM2)
                            .sum(),
                    1e-12);
        }
        String text = DifferenceReport.of(d);
        assertTrue(text.lines().allMatch(l -> l.length() <= 100), text);
        assertTrue(text.contains("gained film"), text);
    }

    @Test
    void otherVoxelsAreMatchedByPlaceAndSide() throws IOException {
        RunResult r = SampleRun.wedge();
        PastRun past = PastRun.read(written(r));
        // every second surfel is missing and all are moved by a millimetre
        FilmTable t = past.film();
        int n = t.rows() / 2;
        double[] xyz = new double[3 * n];
        double[] normal = new double[3 * n];
        double[] area = new double[n];
        double[] film = new double[n];
        List<String> part = new java.util.ArrayList<>();
        for (int i = 0; i < n; i++) {
            part.add(t.part().get(2 * i));
            area[i] = 2 * t.areaM2()[2 * i];
            film[i] = t.part().get(2 * i).equals("upper skin") ? 7e-6 : 3e-6;
            for (int k = 0; k < 3; k++) {
                xyz[3 * i + k] = t.xyzM()[6 * i + k] + 1e-3;
                normal[3 * i + k] = t.normal()[6 * i + k];
            }
        }
        RunDifference d = RunDifference.of(
                r,
                new PastRun(
                        past.file(),
                        past.title(),
                        past.stateHash(),
                        new FilmTable(part, xyz, normal, area, film),
                        past.regionsM2(),
                        past.seams(),
                        past.seamLengthM()));
        assertFalse(d.sameVoxels());
        assertTrue(d.unmatchedM2() < 0.02 * d.total().areaM2(), "unmatched " + d.unmatchedM2());
        int upper = r.cavity().partIndex("upper skin");
        for (int s = 0; s < d.beforeM().length; s++) {
            double expected = r.grid().surfels().part()[s] == upper ? 7e-6 : 3e-6;
            assertTrue(Double.isNaN(d.beforeM()[s]) || d.beforeM()[s] == expected);
        }
        assertTrue(DifferenceReport.of(d).contains("other voxels"));
    }

    @Test
    void wrongFilesAreRefusedWithOneSentence() throws IOException {
        assertEquals("CMP-001", id(() -> PastRun.read(folder.resolve("none.json"))));
        Files.writeString(folder.resolve("odd.json"), "{\"baymist\": 1}");
        assertEquals("CMP-001", id(() -> PastRun.read(folder.resolve("odd.json"))));
        Files.writeString(folder.resolve("odd.json"), "no json {");
        assertEquals("CMP-001", id(() -> PastRun.read(folder.resolve("odd.json"))));
        RunResult r = SampleRun.wedge();
        ResultJson.write(r, folder.resolve("result.json"));
        assertEquals("CMP-002", id(() -> PastRun.read(folder)));
        FilmTable.write(SampleRun.tank(), folder.resolve(FilmTable.FILE));
        assertEquals("CMP-002", id(() -> PastRun.read(folder)));
        PastRun tank = PastRun.read(written(SampleRun.tank()));
        assertEquals("CMP-003", id(() -> RunDifference.of(r, tank)));
    }

    private static String id(org.junit.jupiter.api.function.Executable act) {
        return assertThrows(SceneException.class, act).findings().get(0).id();
    }

    @Test
    void namesWithCommasSurvive() {
        String name = "rib 2, \"aft\"";
        FilmTable t = FilmTable.parse(FilmTable.HEADER + "\n\"rib 2, \"\"aft\"\"\",bay 1,1,2,3,0,0,1,0.5,1.0E-6,0,0\n");
        assertEquals(name, t.part().get(0));
        assertEquals(1e-6, t.filmM()[0]);
        assertThrows(IllegalArgumentException.class, () -> FilmTable.parse("x\n"));
        assertThrows(IllegalArgumentException.class, () -> FilmTable.parse(FilmTable.HEADER + "\na,b\n"));
    }
}
