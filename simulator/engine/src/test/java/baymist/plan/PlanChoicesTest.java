package baymist.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SceneException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.scene.OpeningState;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import baymist.scene.io.SceneWriter;
import baymist.study.Planning;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A box of two halves with a blank baffle between: what a plan can't reach, opens, covers. */
class PlanChoicesTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path folder;

    private Scene scene(String more) throws IOException {
        return scene(more, "3 mm");
    }

    /** @param drain of the aft half: a hole that the wand fills needs it as a vent */
    private Scene scene(String more, String drain) throws IOException {
        Path wand = Path.of("../../models/wands/needle-1-8-all-round.yaml")
                .toAbsolutePath()
                .normalize();
        Path product = Path.of("../../models/products/ambergale-40.yaml")
                .toAbsolutePath()
                .normalize();
        Path file = folder.resolve("halves.yaml");
        Files.writeString(file, """
                baymist: 1
                title: Two halves
                cavity:
                  family: box_section
                  name: two halves
                  gauge: 0.8 mm
                  rectangle: {width: 100 mm, height: 80 mm}
                  line: [{at: [0 mm, 0 mm, 0 mm]}, {at: [240 mm, 0 mm, 0 mm]}]
                  baffles: [{along: 120 mm}]
                  holes:
                    - {name: forward port, wall: left wall, shape: {circle: 20 mm}, along: 60 mm}
                    - {name: forward drain, wall: bottom, shape: {circle: 6 mm}, along: 25 mm}
                    - {name: aft port, wall: left wall, shape: {circle: 20 mm}, along: 180 mm, state: closed}
                    - {name: aft drain, wall: bottom, shape: {circle: %s}, along: 215 mm}
                wands: ["%s"]
                product: "%s"
                supply: {pressure: 60 psi, liquid: 40 mL/min, droplets: {rosin_rammler: {dv50: 50 um, spread: 2}}}
                entries: [{name: port, opening: forward port}]
                hang: 10 s
                air: projected
                voxel: 12 mm
                numerics: {size_bins: 3}
                """.formatted(drain, wand, product) + more);
        return SceneReader.read(file);
    }

    private static PlanResult plan(Scene scene, boolean full) {
        DoseSettings dose = new DoseSettings(new Planning(1, 2, 32, 1), 0.05, 4, 4, 1, 1);
        PlanOptions options = new PlanOptions(dose, DoseStore.none(), Double.NaN, 8e-6, 3, 6, full, false);
        return Planner.plan(scene, options, new RunOptions(2), RunObserver.NONE);
    }

    @Test
    void aBayThatNothingLeadsToIsNamedWithTheReasonAndWhatIsNeeded() throws IOException {
        PlanResult plan = plan(scene(""), false);
        assertEquals(1, plan.blind().size());
        BlindBay blind = plan.blind().get(0);
        assertEquals(0.5, blind.share(), 0.05); // the baffle halves the box
        assertTrue(blind.atMost() < 0.05);
        assertTrue(blind.why().contains("'aft drain' of 3.0 mm, too small for the thinnest wand"), blind.why());
        assertTrue(blind.why().contains("'aft port' of 20.0 mm, shut while spraying"), blind.why());
        assertTrue(blind.needed().contains("'aft port' opened while spraying"), blind.needed());
        assertTrue(plan.checked().reached() < 0.55);
    }

    @Test
    void aPanelThatMayComeOffIsTakenOffWhereItBringsABay() throws IOException {
        PlanResult plan = plan(scene("plan: {panels: [aft port]}\n"), false);
        assertEquals(java.util.List.of("aft port"), plan.panels());
        assertTrue(plan.blind().isEmpty(), plan.blind().toString());
        assertTrue(plan.checked().reached() > 0.6, plan.checked().toString());
        Path written = folder.resolve("plan.yaml");
        SceneWriter.write(plan.planned(), written);
        Scene again = SceneReader.read(written);
        assertEquals(
                OpeningState.OPEN,
                java.util.Objects.requireNonNull(again.states().get("aft port")).pass());
        assertEquals(plan.planned().passes().size(), again.passes().size());
        assertTrue(again.passes().stream().anyMatch(p -> p.entry().equals("aft port")));
    }

    @Test
    void aHoleLiftsABlindBayAndNoMoreAreDrilledThanPay() throws IOException {
        Scene scene = scene(
                "drilling: {parts: [left wall, bottom], grid: 30 mm, most: 1, least_gain: 1 %}\n"
                        + "compare: {to: 10 mm, draw_back: 10 mm/s, hold: 2 s}\n"
                        + "passes: [{name: forward, entry: port, wand: needle 1/8 in all round, from: deepest, to: 10 mm,"
                        + " draw_back: 10 mm/s, hold: 2 s}]\n",
                "6 mm");
        DoseSettings dose = new DoseSettings(new Planning(1, 2, 32, 1), 0.05, 4, 4, 1, 1);
        PlanOptions options = new PlanOptions(dose, DoseStore.none(), Double.NaN, 8e-6, 4, 6, false, true);
        PlanResult plan = Planner.plan(scene, options, new RunOptions(2), RunObserver.NONE);
        assertNotNull(plan.holes());
        java.util.List<String> cut = plan.planned().cuts().stream()
                .map(c -> c.name())
                .filter(n -> n.startsWith("access hole"))
                .toList();
        assertTrue(!cut.isEmpty() && cut.size() <= plan.holes().chosen().size(), cut.toString());
        assertTrue(plan.checked().reached() > 0.9, plan.checked().toString());
        assertTrue(plan.blind().isEmpty(), plan.blind().toString());
        // every hole that stays drilled is sprayed through, and what it must bring at least is two points
        for (String hole : cut) {
            assertTrue(plan.planned().passes().stream().anyMatch(p -> p.entry().equals(hole)), hole);
        }
        assertTrue(plan.checked().reached() - 0.02 * cut.size() > 0.5, "more than the forward half");
    }

    @Test
    void anUnknownPanelIsRefused() throws IOException {
        Scene scene = scene("plan: {panels: [aft door]}\n");
        SceneException e = assertThrows(SceneException.class, () -> plan(scene, false));
        assertEquals("PLN-003", e.findings().get(0).id());
        assertTrue(e.getMessage().contains("aft port"), e.getMessage());
    }

    @Test
    void anItemThatThePlanWouldSprayIsBaggedAndTheSceneSaysSo() throws IOException {
        PlanResult plan = plan(scene("protected: [{name: seal, part: right wall, limit: 0.1 um}]\n"), true);
        assertEquals(java.util.List.of("seal"), plan.masked());
        ProtectedItem seal = plan.planned().protectedItems().get(0);
        assertEquals(ProtectedItem.Mask.BAG, seal.mask());
        assertNotNull(plan.verified());
        assertTrue(PlanHits.of(plan.verified()).isEmpty());
        Path written = folder.resolve("plan.yaml");
        SceneWriter.write(plan.planned(), written);
        assertEquals(
                ProtectedItem.Mask.BAG,
                SceneReader.read(written).protectedItems().get(0).mask());
    }

    @Test
    void limitsOfTheSceneAreKept() throws IOException {
        Scene scene = scene("plan: {slowest: 10 mm/s, fastest: 60 mm/s, product: 3 mL, passes: 2}\n");
        PlanOptions asked = new PlanOptions(
                new DoseSettings(new Planning(1, 2, 32, 1), 0.05, 4, 4, 1, 1),
                DoseStore.none(),
                Double.NaN,
                Double.NaN,
                0,
                4,
                false,
                false);
        PlanResult plan = Planner.plan(scene, asked, new RunOptions(2), RunObserver.NONE);
        assertTrue(plan.checked().productM3() <= 3e-6 * 1.001, plan.checked().toString());
        assertTrue(plan.planned().passes().size() <= 2);
        plan.planned()
                .passes()
                .forEach(p -> assertTrue(p.drawBackMPerS() >= 0.01 && p.drawBackMPerS() <= 0.06, p.toString()));
    }
}
