package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.scene.VoxelSpec;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** What strikes a skin beside a member belongs to the side of the member from which it came. */
class SurfelSideTest {
    private static final double LENGTH = 0.4;
    private static final double DEPTH = 0.2;
    private static final double HEIGHT = 0.12;

    /** A box with a blank rib in the plane x = a + b y + c z. */
    private static Cavity withRib(double a, double b, double c) {
        VoxelFixtures f = new VoxelFixtures();
        f.box("box", Vec3.ZERO, new Vec3(LENGTH, DEPTH, HEIGHT), false, UnaryOperator.identity());
        int rib = f.part("rib");
        Vec3 low = new Vec3(a, 0, 0);
        Vec3 right = new Vec3(a + b * DEPTH, DEPTH, 0);
        Vec3 high = new Vec3(a + b * DEPTH + c * HEIGHT, DEPTH, HEIGHT);
        Vec3 left = new Vec3(a + c * HEIGHT, 0, HEIGHT);
        f.triangle(rib, low, right, high);
        f.triangle(rib, low, high, left);
        return f.cavity("slanted rib");
    }

    @Test
    void aSurfelIsNeverTakenFromBehindARib() {
        Random random = new Random(7);
        for (int n = 0; n < 24; n++) {
            double a = 0.12 + 0.1 * random.nextDouble();
            double b = 0.6 * (random.nextDouble() - 0.5);
            double c = 0.6 * (random.nextDouble() - 0.5);
            Cavity cavity = withRib(a, b, c);
            double h = 0.013 + 0.012 * random.nextDouble();
            VoxelGrid grid = VoxelizerLawTest.voxels(cavity, new VoxelSpec(h, 1.2 * h, 0.9 * h));
            SurfelLocator locator = SurfelLocator.of(grid, cavity);
            int fore = grid.bayOfCell(grid.cellHolding(new Vec3(0.005, 0.1, 0.06)));
            int aft = grid.bayOfCell(grid.cellHolding(new Vec3(0.395, 0.1, 0.06)));
            assertTrue(fore != aft);
            int found = 0;
            for (int k = 0; k < 400; k++) {
                double y = DEPTH * random.nextDouble();
                boolean floor = random.nextBoolean();
                double at = a + b * y + (floor ? 0 : c * HEIGHT);
                double off = 1.5 * h * (random.nextDouble() - 0.5);
                Vec3 p = new Vec3(at + off, y, floor ? 0 : HEIGHT);
                Vec3 air = floor ? Vec3.Z : Vec3.Z.negate();
                int s = locator.surfelNear(p, floor ? 4 : 5, air);
                if (s >= 0) {
                    found++;
                    assertEquals(
                            off < 0 ? fore : aft,
                            grid.bayOfCell(grid.surfels().cell()[s]),
                            "rib " + a + " " + b + " " + c + ", voxel " + h + ", point " + p);
                }
            }
            assertTrue(found > 380, "found " + found + " of 400");
        }
    }
}
