package baymist.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A job that is mirrored, or turned by a quarter about the vertical, gives the mirrored or turned result. Voxels, fog and film keep that to
 * rounding; the rays' places round a jet are not turned with it, so whole runs keep it to the error of sampling.
 */
class WholeRunSymmetryTest {
    private static final double A = 0.6;
    private static final double B = 0.28;
    private static final double C = 0.2;
    private static final double H = 0.04;

    private record Walls(double reached, double treated, double film, double[] byWallKg) {
        /** Of the walls: forward, aft, left, right, floor, ceiling of the plain job. */
        static Walls of(RunResult r, String... walls) {
            double[] kg = new double[walls.length];
            for (int s = 0; s < r.filmM().length; s++) {
                String part =
                        r.cavity().parts().get(r.grid().surfels().part()[s]).name();
                for (int w = 0; w < walls.length; w++) {
                    kg[w] += part.equals(walls[w]) ? r.directKg()[s] : 0;
                }
            }
            return new Walls(
                    r.coverage().total().reached(),
                    r.coverage().total().protectedShare(),
                    r.ledger().filmKg(),
                    kg);
        }

        double[] numbers() {
            double[] all = new double[3 + byWallKg.length];
            all[0] = reached;
            all[1] = treated;
            all[2] = film;
            System.arraycopy(byWallKg, 0, all, 3, byWallKg.length);
            return all;
        }
    }

    /** @param mirrored whether the tip is the mirrored one */
    private static Scene job(Vec3 size, String wall, Vec3 hole, Vec3 vent, boolean mirrored, long seed) {
        double hand = mirrored ? -1 : 1;
        TipSpec tip = new TipSpec(
                "skew",
                List.of(
                        new TipSpec.Jet(Math.toRadians(80), hand * Math.toRadians(50), 0.5e-3, 0.5, 0.5),
                        new TipSpec.Jet(Math.toRadians(60), hand * Math.toRadians(200), 0.5e-3, 0.3, 0.3),
                        new TipSpec.Jet(Math.toRadians(25), hand * Math.toRadians(300), 0.5e-3, 0.2, 0.2)));
        OpeningSpec entry = SceneFixtures.round("hole", wall, 0.02, hole);
        OpeningSpec port = SceneFixtures.round("vent", "ceiling", 0.04, vent);
        return SceneFixtures.minimal()
                .withCavity(SceneFixtures.block(size))
                .withCuts(entry, port)
                .withWands(new WandSpec("rod", 1.2, 0.00635, 0.002, tip))
                .withEntries(new EntrySpec("way in", "hole", null, SceneFixtures.HERE))
                .withPasses(
                        new PassSpec("pass", "way in", "rod", 0.45, 0.05, 0.1, hand * 0.4, 0, 0, SceneFixtures.HERE))
                .withVoxel(H, H, H)
                .withNumerics(4, 64)
                .withHangS(4)
                .build()
                .withRaySeed(seed);
    }

    private static Walls plain(long seed) {
        Scene scene = job(new Vec3(A, B, C), "aft wall", new Vec3(A, 0.09, 0.07), new Vec3(0.2, 0.1, C), false, seed);
        return Walls.of(
                TestScenes.run(scene, 2), "forward wall", "aft wall", "left wall", "right wall", "floor", "ceiling");
    }

    @Test
    void mirroredAndTurnedJobsAgreeWithinTwiceTheSpreadOfFiveSeeds() {
        List<double[]> seeds = new ArrayList<>();
        for (int k = 0; k < 5; k++) {
            seeds.add(plain(k).numbers());
        }
        Scene mirror =
                job(new Vec3(A, B, C), "aft wall", new Vec3(A, B - 0.09, 0.07), new Vec3(0.2, B - 0.1, C), true, 0);
        double[] mirrored = Walls.of(
                        TestScenes.run(mirror, 2),
                        "forward wall",
                        "aft wall",
                        "right wall",
                        "left wall",
                        "floor",
                        "ceiling")
                .numbers();
        // (x, y) to (B - y, x): forward becomes left, left becomes aft
        Scene turn =
                job(new Vec3(B, A, C), "right wall", new Vec3(B - 0.09, A, 0.07), new Vec3(B - 0.1, 0.2, C), false, 0);
        double[] turned = Walls.of(
                        TestScenes.run(turn, 2),
                        "left wall",
                        "right wall",
                        "aft wall",
                        "forward wall",
                        "floor",
                        "ceiling")
                .numbers();
        double[] first = seeds.get(0);
        assertNotEquals(first[3 + 2], seeds.get(1)[3 + 2], "the seed moves the rays");
        int struck = 0;
        for (int n = 0; n < first.length; n++) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (double[] s : seeds) {
                low = Math.min(low, s[n]);
                high = Math.max(high, s[n]);
            }
            // shares move by whole surfels: one of the walls' some 430
            double allowed = 2 * (high - low) + (n < 2 ? H * H / (2 * (A * B + A * C + B * C)) : 0);
            assertEquals(first[n], mirrored[n], allowed, "mirrored, number " + n);
            assertEquals(first[n], turned[n], allowed, "turned, number " + n);
            struck += first[n] > 0 ? 1 : 0;
            if (first[n] > 0 && n > 1) {
                assertTrue(high - low < 0.25 * first[n], "spread of number " + n + ": " + low + " to " + high);
            }
        }
        assertTrue(struck >= 3 + 4, "four walls are struck at least");
    }
}
