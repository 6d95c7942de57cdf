package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.coverage.ItemAssessor;
import baymist.coverage.ItemDose;
import baymist.geom.Vec3;
import baymist.report.ResultJson;
import baymist.report.TextReport;
import baymist.scene.BodySpec;
import baymist.scene.Obstacle;
import baymist.scene.ProtectedItem;
import baymist.scene.ProtectedItem.Mask;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A clutch and a fitting in the block of the fixtures, beside the wand's way. */
class ProtectedRunTest {
    private static ProtectedItem clutch(Mask mask, double limitM) {
        BodySpec body =
                new BodySpec.Cuboid(new Vec3(0.4, 0.05, 0.05), new Vec3(0.12, 0.05, 0.06), Vec3.X, Vec3.Y, Vec3.Z);
        return new ProtectedItem("clutch", body, null, limitM, mask, SceneFixtures.HERE);
    }

    private static RunResult run(ProtectedItem... items) {
        Scene scene = SceneFixtures.minimal()
                .withVoxel(0.025, 0.025, 0.025)
                .withHangS(30)
                .withProtected(items)
                .build();
        return TestScenes.run(scene, 2);
    }

    private static List<ItemDose> doses(RunResult r) {
        return ItemAssessor.assess(r.scene(), r.cavity(), r.grid(), r.filmM());
    }

    @Test
    void aBareItemGetsADoseAndAMaskStopsIt() throws IOException {
        RunResult none = run();
        RunResult bare = run(clutch(Mask.NONE, 1e-6));
        RunResult bagged = run(clutch(Mask.BAG, 1e-6));
        ItemDose dose = doses(bare).get(0);
        assertEquals(2 * (0.12 * 0.05 + 0.05 * 0.06 + 0.06 * 0.12), dose.areaM2() + dose.unresolvedM2(), 1e-12);
        assertTrue(dose.meanM() > 0 && dose.maxM() >= dose.meanM());
        assertTrue(dose.exceeded());
        assertTrue(bare.findings().stream().anyMatch(f -> f.id().equals("PROT-001")));
        // the fog that settles on the wand in its entry
        double onWand = bare.ledger().maskedKg();
        assertTrue(onWand < 1e-9 * bare.ledger().sprayedKg() && none.ledger().maskedKg() < 1e-9);

        ItemDose masked = doses(bagged).get(0);
        assertTrue(masked.masked());
        assertFalse(masked.exceeded());
        assertEquals(0, masked.meanM());
        assertEquals(0, masked.maxM());
        // what arrived by pass is what lies on it: nothing runs off a mask
        double arrived = bagged.outlook().consequences().arrivals().stream()
                .mapToDouble(a -> a.jetKg() + a.fogKg())
                .sum();
        assertEquals(masked.filmKg(), arrived, 0.02 * arrived);
        assertTrue(bagged.outlook().consequences().arrivals().stream()
                .allMatch(a -> a.item().equals("clutch") && a.pass().equals("pass 1")));
        assertTrue(TextReport.of(bare).contains("pass 1: "));
        // the same spray, booked as masked product instead of film
        assertEquals(dose.filmKg(), bagged.ledger().maskedKg() - onWand, 1e-12);
        assertEquals(
                bare.ledger().filmKg(),
                bagged.ledger().filmKg() + bagged.ledger().maskedKg() - onWand,
                1e-12);
        assertTrue(Math.abs(bagged.ledger().closure()) <= 1e-9);
        assertTrue(bagged.findings().stream().noneMatch(f -> f.id().equals("PROT-001")));
        assertEquals(bare.record().stateHash(), bagged.record().stateHash());

        StringWriter json = new StringWriter();
        ResultJson.write(bare, json);
        assertTrue(json.toString().contains("\"exceeded\" : true")
                || json.toString().contains("\"exceeded\":true"));
        assertTrue(TextReport.of(bare).contains("EXCEEDED"));
        assertTrue(TextReport.of(bagged).contains("masked"));
    }

    @Test
    void coverageLeavesItemsOut() {
        RunResult none = run();
        RunResult bare = run(clutch(Mask.NONE, 1e-2));
        assertEquals(
                none.coverage().total().areaM2() + none.grid().unresolvedAreaM2(),
                bare.coverage().total().areaM2()
                        + bare.grid().unresolved().stream()
                                .filter(u -> u.part() != bare.cavity().partIndex("clutch"))
                                .mapToDouble(u -> u.areaM2())
                                .sum(),
                1e-12);
        assertTrue(bare.coverage().byPart().stream().noneMatch(f -> f.name().equals("clutch")));
        assertFalse(doses(bare).get(0).exceeded());
    }

    @Test
    void aWandThatMeetsAnItemIsStoppedByIt() {
        BodySpec inTheWay = new BodySpec.Sphere(new Vec3(0.5, 0.1, 0.075), 0.03);
        Scene scene = SceneFixtures.minimal()
                .withProtected(new ProtectedItem("fitting", inTheWay, null, 0, Mask.NONE, SceneFixtures.HERE))
                .build();
        CheckResult c = Simulation.check(scene, new RunOptions(1), RunObserver.NONE);
        assertEquals("fitting", c.insertions().get(0).stoppedBy());
        assertEquals(0.47, c.insertions().get(0).maxDepthM(), 0.002);
    }

    @Test
    void anObstacleBehindTheEntryIsTold() {
        // the wand of 1.2 m comes in through the aft wall at x = 1 m and starts 0.8 m deep: 0.4 m stay outside
        assertEquals("[]", outside(1.0 + 1.25).toString());
        assertEquals("[ACC-007]", outside(1.0 + 0.7).toString());
        assertEquals("[ACC-006]", outside(1.0 + 0.3).toString());
    }

    private static List<String> outside(double wallX) {
        BodySpec wall = new BodySpec.Cuboid(new Vec3(wallX + 0.1, 0, 0), new Vec3(0.2, 4, 4), Vec3.X, Vec3.Y, Vec3.Z);
        Scene scene = SceneFixtures.minimal()
                .withObstacles(new Obstacle("hangar wall", wall, SceneFixtures.HERE))
                .build();
        return Simulation.check(scene, new RunOptions(1), RunObserver.NONE).findings().stream()
                .map(f -> f.id())
                .filter(id -> id.equals("ACC-006") || id.equals("ACC-007"))
                .toList();
    }
}
