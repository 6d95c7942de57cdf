package baymist.plan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.Vec3;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningSpec;
import baymist.scene.Scene;
import baymist.scene.SceneFixtures;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import baymist.scene.io.SceneReader;
import baymist.study.Planning;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Plans against what trying everything finds. */
class GriddedPassesTest {
    private static final RunOptions TWO = new RunOptions(2);
    private static final TipSpec ONE_SIDED =
            new TipSpec("one-sided", List.of(new TipSpec.Jet(Math.PI / 2, 0, 0.8e-3, 1, 1)));

    @Test
    void aHundredIsPartedAsEvenlyAsItCanBe() {
        assertArrayEquals(new int[] {5, 5, 4}, sorted(GriddedPasses.parts(100, true)));
        assertArrayEquals(new int[] {1, 10, 10}, GriddedPasses.parts(100, false));
        assertArrayEquals(new int[] {5, 5, 2}, sorted(GriddedPasses.parts(50, true)));
    }

    private static int[] sorted(int[] n) {
        return java.util.Arrays.stream(n)
                .boxed()
                .sorted((a, b) -> b - a)
                .mapToInt(i -> i)
                .toArray();
    }

    private static Scene small(double x, double y, double z, double hangS, TipSpec tip, Vec3... holes) {
        List<OpeningSpec> cuts = new ArrayList<>();
        List<EntrySpec> entries = new ArrayList<>();
        for (Vec3 at : holes) {
            String name = "hole " + cuts.size();
            cuts.add(SceneFixtures.round(name, "aft wall", 0.03, at));
            entries.add(new EntrySpec(name, name, null, SceneFixtures.HERE));
        }
        return SceneFixtures.minimal()
                .withCavity(SceneFixtures.block(new Vec3(x, y, z)))
                .withCuts(cuts.toArray(OpeningSpec[]::new))
                .withEntries(entries.toArray(EntrySpec[]::new))
                .withWands(new WandSpec("rod", x + 0.1, 0.00635, 0.002, tip))
                .withPasses()
                .withVoxel(0.025, 0.025, 0.02)
                .withHangS(hangS)
                .build();
    }

    /** Three small cavities; every one of some hundred and fifty to two hundred combinations is run. */
    private static List<Scene> smallCavities() {
        return List.of(
                small(0.6, 0.1, 0.1, 10, SceneFixtures.ring(4, 4e-4), new Vec3(0.6, 0.05, 0.05)),
                small(0.4, 0.3, 0.08, 5, ONE_SIDED, new Vec3(0.4, 0.08, 0.04), new Vec3(0.4, 0.22, 0.04)),
                small(0.3, 0.25, 0.25, 20, ONE_SIDED, new Vec3(0.3, 0.1, 0.15)));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void aPlanIsAsGoodAsTheBestOfAllCombinationsOfASmallCavity(int which) {
        Scene scene = smallCavities().get(which);
        DoseSettings dose = new DoseSettings(new Planning(1, 3, 32, 1), 0.1, 6, 8, 1, 1);
        PlanOptions options = new PlanOptions(dose, DoseStore.none(), Double.NaN, Double.NaN, 4, 20, false, false);
        PlanProof proof = PlanProof.of(scene, options, 150, TWO, RunObserver.NONE);
        assertTrue(proof.grid() >= 150 && proof.grid() <= 200, proof.grid() + " combinations");
        double best = proof.best().score().reached();
        assertTrue(best > 0.05, "best " + best);
        // the contract: the best one or one within a point, for no more product
        assertTrue(
                proof.plan().checked().reached() >= best - 0.01,
                best + " against " + proof.plan().checked());
        assertTrue(proof.plan().checked().productM3() <= proof.best().score().productM3() * 1.001);
    }

    /** Voxels four times as long as in a full run and two sizes: quick, and both sides are run alike. */
    @ParameterizedTest
    @ValueSource(strings = {"control-surface-pin-aft", "tail-cone"})
    void thePlanOfADemoBeatsTheBestOfAHundredGriddedPasses(String name) {
        Scene scene = SceneReader.read(Path.of("../../scenes/" + name + ".yaml"));
        DoseSettings dose = new DoseSettings(new Planning(4, 2, 32, 1), 0.1, 10, 8, 1, 2);
        PlanOptions options = new PlanOptions(dose, DoseStore.none(), Double.NaN, Double.NaN, 0, 14, false, false);
        PlanProof proof = PlanProof.of(scene, options, GriddedPasses.COUNT, TWO, RunObserver.NONE);
        assertTrue(proof.grid() >= GriddedPasses.COUNT, proof.grid() + " passes");
        assertTrue(proof.best().score().reached() > 0.1);
        assertTrue(
                proof.wins(),
                "best pass " + proof.best() + ", plan " + proof.plan().checked());
        assertEquals(
                proof.plan().matrix().scene().voxel(),
                dose.planning().of(scene, proof.plan().matrix().cavity()).voxel(),
                "both at the same resolution");
    }
}
