package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.CavityBuilder;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.OpeningSpec;
import baymist.scene.SceneFixtures;
import baymist.scene.VoxelSpec;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** A structure turned by a quarter about z, or mirrored, gives the turned or mirrored voxels to rounding. */
class QuarterTurnTest {
    private static final double A = 0.37;
    private static final double B = 0.23;
    private static final double C = 0.15;

    private static VoxelGrid grid(Vec3 size, VoxelSpec voxel, OpeningSpec... cuts) {
        try (Workers workers = new Workers(1)) {
            return Voxelizer.voxelize(
                    CavityBuilder.build(SceneFixtures.block(size), List.of(cuts), Map.of(), List.of()), voxel, workers);
        }
    }

    private interface Turn {
        Vec3 of(Vec3 p);
    }

    /** Every surfel and vent by its turned place: area, rounded place as the key. */
    private static Map<String, Double> fingerprint(VoxelGrid g, Turn turn) {
        Map<String, Double> all = new TreeMap<>();
        SurfelSet f = g.surfels();
        for (int s = 0; s < f.count(); s++) {
            Vec3 at = turn.of(new Vec3(f.centreX()[s], f.centreY()[s], f.centreZ()[s]));
            all.merge((f.closure()[s] >= 0 ? "closure " : "sheet ") + key(at), f.areaM2()[s], Double::sum);
        }
        for (int c = 0; c < g.cellCount(); c++) {
            all.merge("cell " + key(turn.of(g.centre(c))), g.volumeM3(c), Double::sum);
        }
        for (int v = 0; v < g.faces().vents(); v++) {
            all.merge(
                    "vent " + key(turn.of(g.centre(g.faces().ventCell()[v]))),
                    g.faces().ventAreaM2()[v],
                    Double::sum);
        }
        return all;
    }

    private static String key(Vec3 p) {
        return Math.round(1e6 * p.x()) + " " + Math.round(1e6 * p.y()) + " " + Math.round(1e6 * p.z());
    }

    private static void assertSame(Map<String, Double> a, Map<String, Double> b) {
        assertEquals(a.keySet(), b.keySet());
        a.forEach((k, v) -> assertEquals(v, b.get(k), 1e-12 * v + 1e-18, k));
    }

    @Test
    void quarterTurnTurnsTheVoxels() {
        OpeningSpec here = SceneFixtures.round("hole", "forward wall", 0.03, new Vec3(0, 0.09, 0.061));
        // x' = B - y, y' = x: the forward wall x = 0 becomes the wall y' = 0.
        OpeningSpec there = SceneFixtures.round("hole", "left wall", 0.03, new Vec3(B - 0.09, 0, 0.061));
        VoxelGrid one = grid(new Vec3(A, B, C), new VoxelSpec(0.02, 0.015, 0.0125), here);
        VoxelGrid two = grid(new Vec3(B, A, C), new VoxelSpec(0.015, 0.02, 0.0125), there);
        assertTrue(one.faces().vents() > 1);
        assertSame(fingerprint(one, p -> new Vec3(B - p.y(), p.x(), p.z())), fingerprint(two, p -> p));
    }

    @Test
    void mirrorMirrorsTheVoxels() {
        OpeningSpec left = SceneFixtures.round("hole", "forward wall", 0.03, new Vec3(0, 0.09, 0.061));
        OpeningSpec right = SceneFixtures.round("hole", "forward wall", 0.03, new Vec3(0, B - 0.09, 0.061));
        VoxelGrid one = grid(new Vec3(A, B, C), new VoxelSpec(0.02, 0.015, 0.0125), left);
        VoxelGrid two = grid(new Vec3(A, B, C), new VoxelSpec(0.02, 0.015, 0.0125), right);
        assertSame(fingerprint(one, p -> new Vec3(p.x(), B - p.y(), p.z())), fingerprint(two, p -> p));
    }
}
