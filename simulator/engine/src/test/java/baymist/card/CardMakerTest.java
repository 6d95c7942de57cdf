package baymist.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SceneException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.CardSpec;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Period;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CardMakerTest {
    private static final String SCENE = """
            baymist: 1
            title: Box, high pass first
            cavity:
              family: block
              name: box
              size: [640 mm, 240 mm, 200 mm]
              ports:
                - {name: low port, part: forward wall, shape: {circle: 20 mm}, at: [0, 60 mm, 50 mm]}
                - {name: high port, part: forward wall, shape: {circle: 20 mm}, at: [0, 120 mm, 150 mm]}
                - {name: vent, part: aft wall, shape: {circle: 30 mm}, at: [640 mm, 120 mm, 100 mm], state: {pass: open, hang: taped, after: closed}}
                - {name: hand hole, part: aft wall, shape: {circle: 60 mm}, at: [640 mm, 60 mm, 100 mm], state: closed}
                - {name: weep, part: floor, shape: {circle: 8 mm}, at: [20 mm, 200 mm, 0]}
            protected:
              - {name: clutch, mask: bag, limit: 0 um, box: {at: [500 mm, 180 mm, 60 mm], size: [60 mm, 60 mm, 60 mm]}}
            entries: [{name: low, opening: low port}, {name: high, opening: high port}]
            wands:
              - {name: fan, length: 700 mm, outer_diameter: 6 mm, bore: 2 mm,
                 tip: {one_sided: {jets: 4, arc: 120 deg, orifice: 0.4 mm}}}
            product: {name: oil, density: 870 kg/m3, viscosity: 40 cSt, surface_tension: 0.03 N/m}
            supply: {pressure: 60 psi, liquid: 30 mL/min, droplets: {log_normal: {dv50: 40 um, deviation: 1.5}}}
            passes:
              - {name: upper line, entry: high, wand: fan, from: 600 mm, to: 40 mm, draw_back: 100 mm/s, clock: 90 deg}
              - {name: lower line, entry: low, wand: fan, from: 600 mm, to: 40 mm, draw_back: 100 mm/s, clock: 180 deg, hold: 1 s, hang: 5 s}
            hang: 20 s
            voxel: 20 mm
            air: projected
            numerics: {size_bins: 3, rays_per_jet: 32}
            card: {interval: 24 months, allowance: 50 %, cup: 2 mL}
            """;

    @TempDir
    static Path folder;

    private static CardSource source;
    private static WorkCard card;

    @BeforeAll
    static void run() throws IOException {
        source = CardSource.of(Simulation.run(scene(SCENE), new RunOptions(2), RunObserver.NONE));
        card = CardMaker.of(source, CardOptions.NONE);
    }

    private static Scene scene(String text) throws IOException {
        Path file = folder.resolve("box.yaml");
        Files.writeString(file, text);
        return SceneReader.read(file);
    }

    @Test
    void passesStandLowBeforeHigh() {
        assertEquals(
                List.of("lower line", "upper line"),
                card.steps().stream().map(WorkCard.Step::name).toList());
        assertTrue(card.orderChanged());
        assertTrue(card.steps().get(0).heightM() < card.steps().get(1).heightM());
    }

    /** By hand: 0.56 m at 0.1 m/s are 5.6 s; half a metre takes 5 s; a second of holding comes before. */
    @Test
    void aStepIsThePassAsStated() {
        WorkCard.Step low = card.steps().get(0);
        assertEquals(0.600, low.fromM(), 1e-9);
        assertEquals(0.040, low.toM(), 1e-9);
        assertEquals(5.0, low.secondsPerHalfMetre(), 1e-12);
        assertEquals(6.6, low.triggerS(), 1e-9);
        assertEquals(1, low.holdS(), 0);
        assertEquals(5, low.waitS(), 0);
        assertEquals(Math.PI, low.clockRad(), 1e-12);
        assertEquals("down", low.pin());
        assertTrue(low.up() && low.turned());
        assertNull(low.stopped());
        // axes x aft, y right, z up: who looks aft has the structure's left on the right hand, at three o'clock
        assertEquals("left", card.steps().get(1).pin());
    }

    /** By hand: 12.2 s of trigger at 30 mL/min are 6.1 mL; the bore holds pi/4 (2 mm)^2 700 mm = 2.2 mL; half as much again; cups of 2 mL. */
    @Test
    void productIsForAllBaysWithAllowanceAndRefills() {
        WorkCard.Product p = card.product();
        assertEquals(6.1e-6, p.sprayedM3(), 1e-9);
        assertEquals(2.199e-6, p.boresM3(), 1e-9);
        assertEquals(1.5 * (6.1e-6 + 2.199e-6), p.neededM3(), 2e-9);
        assertEquals(7, p.cups());
        assertEquals(6, p.refills());
        double film = p.bays().stream().mapToDouble(WorkCard.BayShare::filmM3).sum();
        assertTrue(film > 0 && film <= p.sprayedM3() * (1 + 1e-9));
    }

    /**
     * Air through choked orifices: ISO 6358 and any gas dynamics text, m = C A p0 sqrt(gamma/(R T)) (2/(gamma+1))^((gamma+1)/(2(gamma-1))); at
     * 293 K 0.0404 sqrt(K) s/m of A p0 / sqrt(T).
     */
    @Test
    void airAtTheHoseEndIsThatOfChokedOrifices() {
        WorkCard.Supply s = card.supply().get(0);
        double p0 = 101325 + 60 * 6894.757;
        double area = 4 * Math.PI / 4 * 0.4e-3 * 0.4e-3;
        double mass = 0.85 * area * p0 * 0.04042 / Math.sqrt(293.15);
        assertEquals(mass, s.airKgPerS(), 0.005 * mass);
        assertEquals(s.airKgPerS() / 1.204, s.freeAirM3PerS(), 0.005 * s.freeAirM3PerS());
        assertEquals(30e-6 / 60, s.liquidM3PerS(), 1e-12);
    }

    @Test
    void everyOpeningHasItsUse() {
        Map<String, WorkCard.Use> uses = new java.util.TreeMap<>();
        card.openings().forEach(o -> uses.put(o.name(), o.use()));
        assertEquals(
                Map.of(
                        "low port",
                        WorkCard.Use.ENTRY,
                        "high port",
                        WorkCard.Use.ENTRY,
                        "vent",
                        WorkCard.Use.VENT,
                        "hand hole",
                        WorkCard.Use.PANEL,
                        "weep",
                        WorkCard.Use.DRAIN),
                uses);
        assertEquals(new WorkCard.Masks(1, 0, 1), card.masks());
    }

    @Test
    void cautionsNameEveryHazard() {
        String all = card.cautions().toString().toLowerCase(java.util.Locale.ROOT);
        for (String word : List.of(
                "local rules",
                "respirator",
                "skin",
                "sparks",
                "bond",
                "oxygen",
                "30 psi",
                "mask",
                "approved data",
                "paint",
                "confined")) {
            assertTrue(all.contains(word), word);
        }
        assertEquals("Local rules first", card.cautions().get(0).about());
    }

    @Test
    void pointsAreRankedAndLieOnTheStructure() {
        for (int i = 0; i < card.points().size(); i++) {
            WorkCard.Point p = card.points().get(i);
            assertEquals(i + 1, p.number());
            var box = source.cavity().sheets().bounds().grown(0.02);
            assertEquals(box, box.including(p.atM()), p.toString());
        }
        List<WorkCard.Doubt> doubts =
                card.points().stream().map(WorkCard.Point::doubt).toList();
        assertEquals(doubts.stream().sorted().toList(), doubts);
        assertTrue(card.points().stream()
                .filter(p -> p.doubt() == WorkCard.Doubt.NEAR_LIMIT)
                .allMatch(p -> p.filmM() >= 1e-6 && p.filmM() < 2e-6));
    }

    @Test
    void aReasonStandsBesideItsRegion() {
        String label = source.coverage().unreached().get(0).label();
        WorkCard told = CardMaker.of(source, new CardOptions(null, null, Map.of(label, "It lies behind a web.")));
        assertEquals("It lies behind a web.", told.points().get(0).reason());
    }

    /** Calendar arithmetic: 24 months after 29 February 2024 is 28 February 2026. */
    @Test
    void dueDateFollowsFromTheInterval() {
        CardOptions options = new CardOptions(null, LocalDate.of(2024, 2, 29), Map.of());
        assertEquals(
                LocalDate.of(2026, 2, 28), CardMaker.of(source, options).due().next());
        CardOptions other = new CardOptions(Period.ofWeeks(6), LocalDate.of(2026, 1, 1), Map.of());
        assertEquals(
                LocalDate.of(2026, 2, 12), CardMaker.of(source, other).due().next());
        assertNull(card.due().next());
    }

    @Test
    void intervalsAreReadAndSaid() {
        assertEquals("24 months", CardSpec.words(CardSpec.interval("24 months")));
        assertEquals("1 year", CardSpec.words(CardSpec.interval("1 year")));
        assertEquals("6 weeks", CardSpec.words(CardSpec.interval("6 weeks")));
        assertEquals("90 days", CardSpec.words(CardSpec.interval("90 days")));
        for (String wrong : List.of("", "soon", "0 days", "24", "2.5 years", "-1 day", "24 month s")) {
            assertNull(CardSpec.interval(wrong), wrong);
        }
    }

    @Test
    void theCardIsTracedToItsRun() {
        assertEquals(source.scene().hash(), card.origin().sceneHash());
        assertEquals(source.record().stateHash(), card.origin().stateHash());
        assertTrue(card.origin().settings().containsKey("air"));
    }

    @Test
    void aSceneWithoutPassesHasNoCard() throws IOException {
        String none = SCENE.replaceAll("(?s)passes:.*?hang: 20 s", "hang: 20 s").replace("high pass first", "nothing");
        SceneException e = assertThrows(SceneException.class, () -> CardMaker.requirePasses(scene(none)));
        assertEquals("CRD-001", e.findings().get(0).id());
    }
}
