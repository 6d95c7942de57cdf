package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SceneException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BulkDataReaderTest {
    @TempDir
    Path dir;

    /** A unit square and a triangle on it, in one of the three forms. */
    private static final String SMALL = """
            GRID           1              0.      0.      0.
            GRID           2       0      1.      0. 7.59-16
            GRID           3             1.0    1.+0     0.0
            GRID           4                      1.
            GRID           5             .5      -1.      0.
            CQUAD4        11       7       1       2       3       4
            CTRIA3        12       8       1       5       2
            """;

    private static final String LARGE = """
            GRID*                  1                              0.              0.+G1
            *G1                   0.
            GRID*                  2               0            1.D0              0.
            *                7.59-16               0
            GRID*                  3                             1.0            1.+0
            *
            GRID*                  4                                              1.
            GRID*                  5                              .5             -1.
            *                     0.
            CQUAD4*               11               7               1               2
            *                      3               4
            CTRIA3        12       8       1       5       2
            """;

    private static final String FREE = """
            GRID,1,,0.,0.,0.
            grid,2,0,1.,0.,7.59-16
            GRID, 3 ,, 1.0 , 1.+0 , 0.0
            GRID,4,,,1.
            GRID*,5,,.5,-1.,+A
            *A,0.
            CQUAD4,11,7,1,2,3,4
            CTRIA3,12,8,1,5,2
            """;

    @Test
    void smallLargeAndFreeFieldsGiveTheSameSheets() throws IOException {
        for (String form : new String[] {SMALL, LARGE, FREE, SMALL.replace("\n", "\r\n")}) {
            Cavity cavity = CavityFixtures.build(MeshFiles.spec(MeshFiles.text(dir, "m.bdf", form), 0.5));
            assertEquals(3, sheetTriangles(cavity), form);
            assertEquals(
                    0.25 + 0.125,
                    CavityHealth.of(cavity).parts().stream()
                            .mapToDouble(CavityHealth.PartArea::wholeM2)
                            .sum(),
                    1e-15);
            assertEquals("property 7", cavity.parts().get(0).name());
            assertEquals("property 8", cavity.parts().get(1).name());
            assertEquals(0.001, cavity.parts().get(0).gaugeM());
        }
    }

    private static int sheetTriangles(Cavity cavity) {
        int n = 0;
        for (int t = 0; t < cavity.sheets().triangleCount(); t++) {
            n += cavity.partOfSheet(t) >= 0 ? 1 : 0;
        }
        return n;
    }

    @Test
    void headerIsSkippedAndNamesAndGaugesAreRead() throws IOException {
        String file = "INIT MASTER(S)\nGRID nonsense, before, the, bulk\nCEND\nBEGIN BULK\n"
                + "$ Femap Property 7 : WING_U_SKIN_000\n"
                + "PSHELL         7       1     .02       1               1              0.\n"
                + "$ lower rib\nPSHELL,8,1,.03 $ rest of the line\n"
                + "CBAR           1       1       1       2\n"
                + SMALL
                + "ENDDATA\nGRID,9,,nonsense\n";
        Cavity cavity = CavityFixtures.build(MeshFiles.spec(MeshFiles.text(dir, "m.bdf", file), 0.1));
        assertEquals(
                new Part("wing u skin 000", PartKind.SKIN, 0.002),
                cavity.parts().get(0));
        assertEquals("lower rib", cavity.parts().get(1).name());
        assertEquals(PartKind.RIB, cavity.parts().get(1).kind());
        assertEquals(0.003, cavity.parts().get(1).gaugeM(), 1e-15);
        assertTrue(
                cavity.remarks().stream().anyMatch(r -> r.startsWith("1 CBAR")),
                cavity.remarks().toString());
    }

    @Test
    void quotedNamesAndTabsAreRead() throws IOException {
        String file = "$HMNAME PROP                   7\"Front_Spar\" 4\n"
                + SMALL.replace("CTRIA3        12       8       1       5       2", "CTRIA3\t12\t8\t1\t5\t2");
        Cavity cavity = CavityFixtures.build(MeshFiles.spec(MeshFiles.text(dir, "m.nas", file)));
        assertEquals("front spar", cavity.parts().get(0).name());
        assertEquals(PartKind.SPAR, cavity.parts().get(0).kind());
    }

    @Test
    void flatAndDuplicateShellsAreDroppedAndRemarked() throws IOException {
        String file = SMALL
                + "CTRIA3        13       8       2       5       1\n"
                + "CTRIA3        14       8       2       2       1\n";
        Cavity cavity = CavityFixtures.build(MeshFiles.spec(MeshFiles.text(dir, "m.dat", file)));
        assertEquals(3, sheetTriangles(cavity));
        assertTrue(cavity.remarks().stream().anyMatch(r -> r.startsWith("1 triangle(s) given twice")));
        assertTrue(cavity.remarks().stream().anyMatch(r -> r.startsWith("1 triangle(s) without area")));
    }

    /** Entries after the public quick reference guides of the format (PCOMP, CSHEAR, PSHEAR, CQUAD8, CTRIA6), from memory. */
    @Test
    void laminatesShearPanelsAndCurvedShellsAreSheetsWithTheirGauge() throws IOException {
        String file = """
                PCOMP          1
                               1    .002      0.     YES       1    .003     45.     YES
                               1             90.
                PCOMP          2                                                     SYM
                               1    .002      0.     YES       1    .001     45.     YES
                PSHEAR,3,1,.0016
                GRID,1,,0.,0.,0.
                GRID,2,,1.,0.,0.
                GRID,3,,1.,1.,0.
                GRID,4,,0.,1.,0.
                GRID,5,,0.,0.,1.
                GRID,6,,1.,0.,1.
                CQUAD8        11       1       1       2       3       4      91      92
                              93      94
                CTRIA6        12       2       1       2       5      91      92      93
                CSHEAR,13,3,1,2,6,5
                CHEXA,14,1,1,2,3,4,5,6,+
                +,7,8
                CWELD,15,1
                CWELD,16,1
                CORD2R,7,0,0.,0.,0.,0.,0.,1.
                """;
        Cavity c = CavityFixtures.build(MeshFiles.spec(MeshFiles.text(dir, "m.bdf", file)));
        assertEquals(3, c.parts().size());
        // a blank thickness repeats the ply above: 2 + 3 + 3 mm; symmetric: twice 3 mm
        assertEquals(0.008, c.parts().get(0).gaugeM(), 1e-15);
        assertEquals(0.006, c.parts().get(1).gaugeM(), 1e-15);
        assertEquals(0.0016, c.parts().get(2).gaugeM(), 1e-15);
        assertEquals(1, CavityHealth.of(c).parts().get(0).wholeM2(), 1e-15);
        assertEquals(0.5, CavityHealth.of(c).parts().get(1).wholeM2(), 1e-15);
        assertEquals(1, CavityHealth.of(c).parts().get(2).wholeM2(), 1e-15);
        String remarks = c.remarks().toString();
        assertTrue(remarks.contains("1 CHEXA") && remarks.contains("2 CWELD") && !remarks.contains("CORD"), remarks);
    }

    @Test
    void namesAboveElementsAndInListsAreRead() throws IOException {
        String file = """
                $ANSA_NAME_COMMENT;8;PSHELL;Drain_Bay;;NO;NO;NO;NO;
                GRID,1,,0.,0.,0.
                GRID,2,,1.,0.,0.
                GRID,3,,1.,1.,0.
                GRID,4,,0.,1.,0.
                GRID,5,,0.,0.,1.
                $       Shell element data for family    CARGO_FLOOR/SEG.00
                CQUAD4,1,7,1,2,3,4
                $       Shell element data for family    FRAME_1
                CTRIA3,2,9,1,2,5
                CTRIA3,3,8,2,3,5
                $ Elements and Element Properties for region : Keel
                PSHELL,11,1,.001
                CTRIA3,4,11,3,4,5
                """;
        Cavity c = CavityFixtures.build(MeshFiles.spec(MeshFiles.text(dir, "m.bdf", file)));
        assertEquals(
                List.of("cargo floor/seg.00", "frame 1", "drain bay", "keel"),
                c.parts().stream().map(Part::name).toList());
        assertEquals(PartKind.WALL, c.parts().get(0).kind());
        assertEquals(PartKind.RIB, c.parts().get(1).kind());
    }

    @Test
    void hostileBulkDataEndsInOneClearSentence() throws IOException {
        refused("MSH-010", SMALL.replace("1.+0", " nan"));
        refused("MSH-010", SMALL.replace("  1.+0", "1.+999"));
        refused("MSH-010", SMALL.replace("GRID           3", "GRID          -3"));
        refused("MSH-010", SMALL.replace("GRID           3", "GRID         3.5"));
        refused("MSH-011", SMALL.replace("2       0", "2       4"));
        refused("MSH-011", "GRDSET,,3\n" + SMALL);
        refused("MSH-012", "INCLUDE 'wing.bdf'\n" + SMALL);
        refused("MSH-013", SMALL + "GRID,3,,5.,5.,5.\n");
        refused("MSH-014", SMALL + "CTRIA3,13,8,1,2,77\n");
        refused("MSH-010", SMALL + "CTRIA3,13,8,1,2,77,1,1,1,1,1,1,1,1\n");
        refused("MSH-010", SMALL + "CTRIA3,13,8,1,2\n");
        refused("MSH-003", "$ nothing here\n");
        refused("MSH-003", "\u0000\u0001\u0002");
        refused("MSH-004", "GRID " + "x".repeat(20_000));
        refused("MSH-015", SMALL.replace(" 1.+0", "1.+30"));
    }

    private void refused(String id, String content) throws IOException {
        Path file = MeshFiles.text(dir, "h.bdf", content);
        SceneException e =
                assertThrows(SceneException.class, () -> CavityFixtures.build(MeshFiles.spec(file)), content);
        assertEquals(id, e.findings().get(0).id(), e.getMessage());
        assertEquals(1, e.findings().size());
    }
}
