package baymist.run;

import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.scene.DropletSpec;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import baymist.scene.SupplySpec;
import baymist.scene.VoxelSpec;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What shops find, on small scenes. Common practice, no source: none of these has been published, and none is a measurement. Where the
 * engine and practice part, docs/validation.md says so.
 */
class PracticeTest {
    private static SupplySpec supply(double dv50M) {
        return new SupplySpec.Pressure(551_580.58, 0.85, 3.7e-4, new DropletSpec.RosinRammler(dv50M, 2));
    }

    /** A closed section of 1 x 0.2 x 0.15 m, one ring pass through a hole in its end. */
    private static SceneFixtures section(double dv50M) {
        return SceneFixtures.minimal()
                .withVoxel(0.025, 0.025, 0.025)
                .withSupply(supply(dv50M))
                .withNumerics(8, 64);
    }

    private static double at(RunResult r, double timeS) {
        double mass = 0;
        for (TimePoint p : r.history()) {
            mass = p.timeS() <= timeS + 1e-9 ? p.airborneKg() : mass;
        }
        return mass;
    }

    private static double sum(double[] kg) {
        double sum = 0;
        for (double k : kg) {
            sum += k;
        }
        return sum;
    }

    @Test
    void fogStillHangsAfterFiveMinutesInAClosedTailSection() {
        // Common practice, no source. A section as deep as a tail cone, 0.5 m; visible = 50 mg/m3, at which a beam
        // loses some 3 % on a metre
        // (3 C Q/(2 rho d) with Q = 2, d = 5 um: Hinds 1999, ch. 16).
        Scene scene = section(20e-6)
                .withCavity(SceneFixtures.block(new Vec3(0.8, 0.5, 0.5)))
                .withVoxel(0.05, 0.05, 0.05)
                .withCuts(SceneFixtures.round("hole", "aft wall", 0.02, new Vec3(0.8, 0.25, 0.25)))
                .withPasses(new baymist.scene.PassSpec("p", "aft", "rod", 0.7, 0.05, 0.1, 0, 0, 0, SceneFixtures.HERE))
                .withHangS(300)
                .build();
        RunResult r = TestScenes.run(scene, 2);
        double concentration = r.ledger().airborneKg() / r.grid().totalVolumeM3();
        assertTrue(concentration > 50e-6, concentration + " kg/m3");
        assertTrue(Math.abs(r.ledger().closure()) <= 1e-9, r.ledger().toString());
    }

    @Test
    void finerSettingGivesMoreFogThatHangsLongerAndCoarserMoreDirectFilm() {
        // Common practice, no source.
        RunResult fine = TestScenes.run(section(15e-6).withHangS(120).build(), 2);
        RunResult middle = TestScenes.run(section(30e-6).withHangS(120).build(), 2);
        RunResult coarse = TestScenes.run(section(60e-6).withHangS(120).build(), 2);
        double trigger = 7.5;
        assertTrue(at(fine, trigger) > at(middle, trigger) && at(middle, trigger) > at(coarse, trigger));
        double end = trigger + 120;
        assertTrue(at(fine, end) > at(middle, end) && at(middle, end) > at(coarse, end));
        assertTrue(sum(coarse.directKg()) > sum(middle.directKg()) && sum(middle.directKg()) > sum(fine.directKg()));
        for (RunResult r : List.of(fine, middle, coarse)) {
            assertTrue(Math.abs(r.ledger().closure()) <= 1e-9, r.ledger().toString());
        }
    }

    @Test
    void eachFurtherLineOfLighteningHolesAddsCoverage() {
        // Common practice, no source. The wing box of the demo, coarse, with one, two and three of its passes.
        Scene whole = TestScenes.read("wing-box.yaml")
                .withVoxel(new VoxelSpec(0.03, 0.04, 0.02))
                .withHangS(10)
                .withNumerics(5, 48);
        double[] reached = new double[3];
        for (int lines = 1; lines <= 3; lines++) {
            reached[lines - 1] = TestScenes.run(whole.withPasses(whole.passes().subList(0, lines)), 2)
                    .coverage()
                    .total()
                    .reached();
        }
        assertTrue(
                reached[1] > reached[0] && reached[2] > reached[1], reached[0] + " " + reached[1] + " " + reached[2]);
    }
}
