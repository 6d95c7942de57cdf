package baymist.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.numeric.Workers;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import org.junit.jupiter.api.Test;

/** Bays ring by ring, and the air's way out of those that are left out. */
class BayRingsTest {
    private static final double HOLE_M2 = Math.PI / 4 * 0.07 * 0.07;
    private static final double PORT_M2 = Math.PI / 4 * 0.06 * 0.06;

    private final boolean[] firstTwo = {true, true, false, false, false, false};

    private static BayRings rings(Scene scene, Cavity cavity) {
        try (Workers one = new Workers(1)) {
            VoxelGrid grid = Voxelizer.voxelize(cavity, scene.voxel(), one);
            return BayRings.of(cavity, grid);
        }
    }

    @Test
    void eachRingIsOneOpeningFurther() {
        Scene scene = BoxOfBays.upwards(6, 3);
        BayRings rings = rings(scene, CavityBuilder.build(scene));
        boolean[] third = {false, false, true, false, false, false};
        assertArrayEquals(new boolean[] {false, true, true, true, false, false}, rings.around(third, 1));
        assertArrayEquals(new boolean[] {true, true, true, true, true, false}, rings.around(third, 2));
        assertArrayEquals(third, rings.around(third, 0));
    }

    @Test
    void aCutHoleAndTheWaysOutBehindItAreOrificesInSeries() {
        Scene scene = BoxOfBays.upwards(6, 1);
        Cavity cavity = CavityBuilder.build(scene);
        double[] factor = rings(scene, cavity).airFactors(firstTwo, OpenFractions.areasM2(cavity.openings()));
        // four ports and the hole of the end rib lead out of the four bays left out; drops of pressure add, so 1/a^2
        // does
        double out = 4 * PORT_M2 + HOLE_M2;
        double both = 1 / Math.sqrt(1 / (HOLE_M2 * HOLE_M2) + 1 / (out * out));
        assertEquals(both / HOLE_M2, factor[cavity.openingIndex("rib 3 hole")], 1e-3);
        assertEquals(1, factor[cavity.openingIndex("rib 2 hole")]);
        assertEquals(1, factor[cavity.openingIndex("bay 1 port")]);
    }

    @Test
    void baysWithoutAWayOutDrawNoAir() {
        Scene scene = BoxOfBays.shutFrom(6, 3);
        Cavity cavity = CavityBuilder.build(scene);
        double[] factor = rings(scene, cavity).airFactors(firstTwo, OpenFractions.areasM2(cavity.openings()));
        assertEquals(0, factor[cavity.openingIndex("rib 3 hole")]);
        assertEquals(1, factor[cavity.openingIndex("rib 2 hole")]);
    }
}
