package baymist.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.units.Dimension;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CaseTableTest {
    private static final String HEAD = String.join(",", CaseTable.COLUMNS) + "\n";

    @TempDir
    private Path folder;

    private Path table(String rows) throws IOException {
        return Files.writeString(folder.resolve("cases.csv"), HEAD + rows);
    }

    private VerificationReport run(String rows) throws IOException {
        table(rows);
        return Verification.run(folder, "", new RunOptions(1), RunObserver.NONE);
    }

    @Test
    void everyFaultyRowIsToldWithItsLine() throws IOException {
        Path file = table("a,fog,slip,diameter=1 um,x,0.1,exact,s,seen\n"
                + "b,fog,slip,diameter,1,0.1,exact,s,seen\n"
                + "c,fog,slip,diameter=1 um,1,abs q,exact,s,seen\n"
                + "d,fog,slip\n"
                + "e,fog,slip,diameter=1 um,1,0.1,exact,s,seen\n"
                + "e,fog,slip,diameter=1 um,1,0.1,exact,s,seen\n");
        SceneException e = assertThrows(SceneException.class, () -> CaseTable.read(file));
        assertEquals(5, e.findings().size());
        assertEquals(2, e.findings().get(0).place().line());
        assertTrue(e.findings().get(4).text().contains("stands twice"));
    }

    @Test
    void aWrongHeaderAMissingTableAndAnUnknownCaseAreRefused() throws IOException {
        Path file = Files.writeString(folder.resolve("cases.csv"), "id,value\n1,2\n");
        assertThrows(SceneException.class, () -> CaseTable.read(file));
        assertThrows(SceneException.class, () -> CaseTable.read(folder.resolve("none.csv")));
        table("a,fog,slip,diameter=1 um,1.15,0.1,exact,s,seen\n");
        RunOptions options = new RunOptions(1);
        assertThrows(SceneException.class, () -> Verification.run(folder, "b", options, RunObserver.NONE));
    }

    @ParameterizedTest
    @CsvSource({
        "nonsense, diameter=1 um, is not known",
        "slip, size=1 um, is missing",
        "slip, diameter=1 s, is a time",
        "drillDiameter, number=1.5, a whole number expected",
        "drillDiameter, number=x, a number expected",
        "gapShareRoundWand, hole=1 mm, is missing",
        "pinComponent, wand=0 1; clock=0 deg; along=1 0 0, three numbers expected",
        "pinComponent, wand=0 a 1; clock=0 deg; along=1 0 0, three numbers expected",
        "dragCoefficient, law=mine; reynolds=1, is not known",
        "depositionSpeed, diameter=1 um; density=1 g/mL; friction=1 cm/s; wall=roof, is not known",
        "cavityVolume, scene=none.yaml, none.yaml"
    })
    void whatCannotBeEvaluatedFailsWithASentence(String quantity, String inputs, String words) throws IOException {
        VerificationReport report = run("a,fog," + quantity + "," + inputs + ",1,0.1,exact,s,seen\n");
        assertFalse(report.passed());
        assertTrue(report.outcomes().get(0).failure().contains(words), report.table());
    }

    @Test
    void inputsReadQuantitiesWordsAndVectors() {
        Inputs in = Inputs.parse(" a = 2 mm ;; b=word; v=1 -2 3e-1 ; airTemperature=300 K", folder.resolve("t.csv"));
        assertEquals(2e-3, in.lengthM("a"));
        assertEquals("word", in.word("b"));
        assertEquals("other", in.word("c", "other"));
        assertEquals(7, in.si("c", Dimension.LENGTH, 7));
        assertEquals(new Vec3(1, -2, 0.3), in.vector("v"));
        assertEquals(300, in.air().temperatureK());
        assertEquals(101_325, in.air().pressurePa());
        assertEquals(9.80665, in.gravityMPerS2());
        assertEquals(folder.resolve("word"), in.file("b"));
        assertEquals("a=2 mm; b=word; v=1 -2 3e-1; airTemperature=300 K", in.toString());
    }

    @Test
    void theTableKeepsToAHundredColumns() throws IOException {
        String row = ",fog,slip,diameter=1 um,1.15461234567,1e-9,exact,s,seen\n";
        VerificationReport report = run("a" + "x".repeat(40) + row + "b" + row.replace("1e-9", "abs 0.1"));
        assertTrue(report.table().lines().allMatch(l -> l.length() <= 100), report.table());
        assertTrue(report.table().contains("1 of 2 values"), report.table());
    }
}
