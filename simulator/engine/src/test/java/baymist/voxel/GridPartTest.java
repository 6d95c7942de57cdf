package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.numeric.Workers;
import baymist.run.BoxOfBays;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Some bays of a grid are what they are in the whole; only their ways into other bays have become vents. */
class GridPartTest {
    private static final Cavity BOX;
    private static final VoxelGrid WHOLE;

    static {
        Scene scene = BoxOfBays.upwards(6, 3);
        BOX = CavityBuilder.build(scene);
        try (Workers one = new Workers(1)) {
            WHOLE = Voxelizer.voxelize(BOX, scene.voxel(), one);
        }
    }

    private static boolean[] kept(int... bays) {
        boolean[] kept = new boolean[WHOLE.bays().size()];
        for (int b : bays) {
            kept[b] = true;
        }
        return kept;
    }

    @Test
    void cellsOfThePartAreThoseOfTheWhole() {
        assertEquals(6, WHOLE.bays().size());
        GridPart part = GridPart.of(WHOLE, kept(1, 2, 3));
        VoxelGrid g = part.grid();
        int seen = 0;
        for (int c = 0; c < WHOLE.cellCount(); c++) {
            int mine = part.cell(c);
            boolean wanted = WHOLE.bayOfCell(c) >= 1 && WHOLE.bayOfCell(c) <= 3;
            assertEquals(wanted, mine >= 0);
            if (mine >= 0) {
                assertEquals(seen++, mine);
                assertEquals(WHOLE.centre(c), g.centre(mine));
                assertEquals(WHOLE.volumeM3(c), g.volumeM3(mine));
                assertEquals(mine, g.cellAt(WHOLE.i(c), WHOLE.j(c), WHOLE.k(c)));
                assertEquals(WHOLE.bayOfCell(c) - 1, g.bayOfCell(mine));
                for (int d = 0; d < 6; d++) {
                    int next = WHOLE.neighbour(c, d);
                    assertEquals(next < 0 ? -1 : part.cell(next), g.neighbour(mine, d));
                }
            } else {
                assertEquals(-1, g.cellAt(WHOLE.i(c), WHOLE.j(c), WHOLE.k(c)));
            }
        }
        assertEquals(seen, g.cellCount());
        double volume = 0;
        for (int b = 1; b <= 3; b++) {
            volume += WHOLE.bays().get(b).volumeM3();
        }
        assertEquals(volume, g.totalVolumeM3(), 1e-12 * volume);
        assertEquals(
                List.of("bay 2", "bay 3", "bay 4"),
                g.bays().stream().map(Bay::name).toList());
    }

    @Test
    void facesStayAndCutHolesAreVentsOfTheirOutlinesArea() {
        GridPart part = GridPart.of(WHOLE, kept(1, 2, 3));
        FaceSet f = WHOLE.faces();
        FaceSet g = part.grid().faces();
        int at = 0;
        for (int e = 0; e < f.count(); e++) {
            int low = part.cell(f.low()[e]);
            int high = part.cell(f.high()[e]);
            if (low >= 0 && high >= 0) {
                assertEquals(low, g.low()[at]);
                assertEquals(high, g.high()[at]);
                assertEquals(f.axis()[e], g.axis()[at]);
                assertEquals(f.areaM2()[e], g.areaM2()[at]);
                assertEquals(f.opening()[e], g.opening()[at++]);
            }
        }
        assertEquals(at, g.count());
        PartOfWhole origin = part.grid().part();
        assertNotNull(origin);
        int before = BOX.openingIndex("rib 2 hole");
        int after = BOX.openingIndex("rib 5 hole");
        assertEquals(new ArrayList<>(List.of(before, after)), new ArrayList<>(origin.cut()));
        for (int o : origin.cut()) {
            double area = 0;
            for (int v = 0; v < g.vents(); v++) {
                if (g.ventOpening()[v] == o) {
                    area += g.ventAreaM2()[v];
                    assertEquals(1, g.ventAxis()[v]);
                    assertEquals(o == before ? -1 : 1, g.ventSign()[v]);
                }
            }
            // exact: the outline's own area, pi/4 (70 mm)^2
            assertEquals(Math.PI / 4 * 0.07 * 0.07, area, 1e-3 * area);
        }
        for (int v = 1; v < g.vents(); v++) {
            assertTrue(g.ventCell()[v - 1] <= g.ventCell()[v]);
        }
    }

    @Test
    void surfelsStayWithTheirNeighbours() {
        GridPart part = GridPart.of(WHOLE, kept(2));
        SurfelSet s = WHOLE.surfels();
        SurfelSet t = part.grid().surfels();
        int seen = 0;
        for (int i = 0; i < s.count(); i++) {
            int mine = part.surfel(i);
            assertEquals(WHOLE.bayOfCell(s.cell()[i]) == 2, mine >= 0);
            if (mine >= 0) {
                assertEquals(seen++, mine);
                assertEquals(part.cell(s.cell()[i]), t.cell()[mine]);
                assertEquals(s.areaM2()[i], t.areaM2()[mine]);
                assertEquals(s.normalY()[i], t.normalY()[mine]);
                assertEquals(s.centreZ()[i], t.centreZ()[mine]);
                assertEquals(s.part()[i], t.part()[mine]);
                assertEquals(s.closure()[i], t.closure()[mine]);
                int[] beside = Arrays.copyOfRange(s.neighbour(), s.neighbourStart()[i], s.neighbourStart()[i + 1]);
                assertArrayEquals(
                        Arrays.stream(beside).map(part::surfel).toArray(),
                        Arrays.copyOfRange(t.neighbour(), t.neighbourStart()[mine], t.neighbourStart()[mine + 1]));
            }
        }
        assertEquals(seen, t.count());
    }

    @Test
    void everyBayKeptIsTheWhole() {
        VoxelGrid g = GridPart.of(WHOLE, kept(0, 1, 2, 3, 4, 5)).grid();
        assertNull(g.part());
        assertArrayEquals(WHOLE.faces().low(), g.faces().low());
        assertArrayEquals(WHOLE.faces().areaM2(), g.faces().areaM2());
        assertArrayEquals(WHOLE.faces().ventCell(), g.faces().ventCell());
        assertArrayEquals(WHOLE.faces().ventSign(), g.faces().ventSign());
        assertArrayEquals(WHOLE.faces().ventAreaM2(), g.faces().ventAreaM2());
        assertArrayEquals(WHOLE.faces().ventOpening(), g.faces().ventOpening());
        assertArrayEquals(WHOLE.surfels().neighbour(), g.surfels().neighbour());
        assertEquals(WHOLE.bays(), g.bays());
        assertEquals(WHOLE.unresolved(), g.unresolved());
    }
}
