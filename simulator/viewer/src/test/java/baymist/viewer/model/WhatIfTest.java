package baymist.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.Scene;
import baymist.scene.SceneContent;
import baymist.scene.SceneEdit;
import baymist.scene.io.SceneReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Edits of a job; what is saved must be read again as the same job. Factors of units: NIST SP 811 (2008), appendix B. */
class WhatIfTest {
    private static final Scene BOX = SceneReader.read(Fixture.scene("wing-box.yaml"));
    private static final String PASS = BOX.passes().get(0).name();

    private static WhatIf edited(WhatIf from, String id, String typed) {
        WhatIf.Edit e = from.with(id, typed);
        assertFalse(e.refused(), e.sentence());
        return e.result();
    }

    @Test
    void everyPassHasItsFieldsWithUnitsAndTips() {
        WhatIf w = WhatIf.of(BOX);
        assertEquals(8 * BOX.passes().size() + 2, w.fields().size());
        for (Field f : w.fields()) {
            assertTrue(f.tip().endsWith("."), f.id());
            assertTrue(
                    f.kind() == Field.Kind.CHOICE
                            ? f.choices().contains(f.choice())
                            : !f.unit().isEmpty(),
                    f.id());
            if (f.kind() == Field.Kind.NUMBER && Double.isFinite(f.value())) {
                assertTrue(f.value() >= f.min() - 1e-9 && f.value() <= f.max(), f.toString());
            }
        }
        assertFalse(w.changed());
    }

    @Test
    void numbersAreTakenInTheFieldsUnitOrInTheirOwn() {
        WhatIf w = edited(WhatIf.of(BOX), "from:" + PASS, "40 in");
        assertEquals(1.016, w.scene().passes().get(0).fromDepthM(), 1e-12);
        w = edited(w, "from:" + PASS, "900");
        assertEquals(0.9, w.scene().passes().get(0).fromDepthM(), 1e-12);
        w = edited(w, "clock:" + PASS, "0.25 turn");
        assertEquals(Math.PI / 2, w.scene().passes().get(0).clockRad(), 1e-12);
        w = edited(w, "rate:" + PASS, "3 in/s");
        assertEquals(0.0762, w.scene().passes().get(0).drawBackMPerS(), 1e-12);
        // 1 US fl oz = 29.57353 mL
        w = edited(w, "liquid", "3 fl oz/min");
        assertEquals(
                3 * 29.57353e-6 / 60 * BOX.product().densityKgPerM3(),
                w.scene().supply().liquidKgPerS(),
                1e-9);
        assertEquals(4, w.changes().size());
        assertTrue(w.changes().get(3).contains("88.72 mL/min"), w.changes().toString());
    }

    @Test
    void anEditTakenBackIsNoChange() {
        WhatIf w = edited(WhatIf.of(BOX), "clock:" + PASS, "90");
        assertTrue(w.changed());
        assertEquals(1, w.changes().size());
        double was = Math.toDegrees(BOX.passes().get(0).clockRad());
        WhatIf back = edited(w, "clock:" + PASS, String.valueOf(was));
        assertEquals(0, back.changes().size());
        assertFalse(back.changed());
    }

    @Test
    void nonsenseIsRefusedWithWhatWouldBeRight() {
        WhatIf w = WhatIf.of(BOX);
        String[][] bad = {
            {"from:" + PASS, "9 m", "would do"},
            {"from:" + PASS, "2 bar", "length"},
            {"from:" + PASS, "", "length"},
            {"to:" + PASS, "1.45 m then some", "length"},
            {"to:" + PASS, "1600", "would do"},
            {"entry:" + PASS, "back door", "root rear hole"},
            {"wand:" + PASS, "hose", "ring"},
            {"rate:" + PASS, "-3", "would do"},
            {"rate:" + PASS, "NaN", "speed"},
            {"colour", "red", "nothing called"},
        };
        for (String[] b : bad) {
            WhatIf.Edit e = w.with(b[0], b[1]);
            assertTrue(e.refused(), b[0] + " " + b[1]);
            assertTrue(e.sentence().contains(b[2]), e.sentence());
        }
        WhatIf deep = edited(w, "to:" + PASS, "600");
        WhatIf.Edit e = deep.with("from:" + PASS, "500");
        assertTrue(e.refused() && e.sentence().contains("no deeper"), e.sentence());
    }

    @Test
    void whatIsSavedIsReadAgainAsTheSameJob(@TempDir Path folder) throws Exception {
        WhatIf w = edited(WhatIf.of(BOX), "entry:" + PASS, "root front hole");
        w = edited(w, "from:" + PASS, WhatIf.DEEPEST);
        w = edited(w, "clock:" + PASS, "135");
        w = edited(w, "hang", "90 s");
        Path file = folder.resolve("tried.yaml");
        w.save(file);
        assertTrue(SceneContent.same(w.scene(), SceneReader.read(file)));
        try (var files = Files.list(folder)) {
            assertEquals(1, files.count(), "nothing but the scene is left behind");
        }
    }

    @Test
    void aPassGoesThroughAnyOpening(@TempDir Path folder) throws Exception {
        WhatIf there = WhatIf.of(BOX)
                .throughOpening(PASS, BOX.entries().get(1).opening())
                .result();
        assertNotNull(there);
        assertEquals(BOX.entries().get(1).name(), there.scene().passes().get(0).entry());
        assertEquals(BOX.entries().size(), there.scene().entries().size(), "the scene has an entry there");
        // an opening that no entry of the scene is at gets one
        String used = BOX.passes().get(0).entry();
        String free = BOX.entries().stream()
                .filter(e -> !e.name().equals(used))
                .findFirst()
                .orElseThrow()
                .opening();
        Scene fewer = SceneEdit.of(BOX)
                .entries(BOX.entries().stream()
                        .filter(e -> !e.opening().equals(free))
                        .toList())
                .passes(List.of(BOX.passes().get(0)))
                .done();
        WhatIf w = WhatIf.of(fewer).throughOpening(PASS, free).result();
        assertNotNull(w);
        assertEquals(free, w.scene().passes().get(0).entry());
        assertEquals(free, w.scene().entries().get(fewer.entries().size()).opening());
        Path file = folder.resolve("entered.yaml");
        w.save(file);
        assertTrue(SceneContent.same(w.scene(), SceneReader.read(file)));
        assertTrue(WhatIf.of(BOX).throughOpening("no pass", free).refused());
    }

    @Test
    void anEntryCanBeMovedToWhereThereIsNoHole() {
        WhatIf.Edit first = WhatIf.of(BOX).throughNewHole(PASS, "rib 1", new baymist.geom.Vec3(0.2, 0, 0.02), 0.012);
        assertFalse(first.refused(), first.sentence());
        assertTrue(first.sentence().contains("approved data"), first.sentence());
        WhatIf moved = first.result()
                .throughNewHole(PASS, "rib 1", new baymist.geom.Vec3(0.25, 0, 0.02), 0.012)
                .result();
        assertNotNull(moved);
        assertEquals(BOX.cuts().size() + 1, moved.scene().cuts().size());
        assertEquals(BOX.entries().size() + 1, moved.scene().entries().size());
        assertEquals(0.25, moved.scene().cuts().get(BOX.cuts().size()).centreM().x(), 1e-12);
        assertTrue(WhatIf.of(BOX)
                .throughNewHole("no pass", "rib 1", baymist.geom.Vec3.ZERO, 0.01)
                .refused());
    }
}
