package baymist.voxel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.cavity.CavityFixtures;
import baymist.cavity.PartKind;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.scene.BodySpec;
import baymist.scene.CavitySpec;
import baymist.scene.ProtectedItem;
import baymist.scene.ProtectedItem.Mask;
import baymist.scene.SceneFixtures;
import baymist.scene.Turns;
import baymist.scene.VoxelSpec;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** An item inside adds exactly its area, none of it structure, and takes its volume. */
class ProtectedItemTest {
    private static final Vec3 SIZE = new Vec3(0.5, 0.4, 0.3);

    private static ProtectedItem item(BodySpec body) {
        return new ProtectedItem("item", body, null, 1e-6, Mask.NONE, CavityFixtures.PLACE);
    }

    private static Cavity cavity(CavitySpec spec, ProtectedItem... items) {
        return CavityBuilder.build(SceneFixtures.minimal()
                .withCavity(spec)
                .withCuts()
                .withEntries()
                .withPasses()
                .withProtected(items)
                .build());
    }

    private static VoxelGrid grid(Cavity cavity, double voxelM) {
        try (Workers workers = new Workers(1)) {
            return Voxelizer.voxelize(cavity, new VoxelSpec(voxelM, voxelM, voxelM), workers);
        }
    }

    /** Resolved and unresolved area of the item, and of the structure, m². */
    private static double[] areas(Cavity cavity, VoxelGrid grid) {
        double[] areas = new double[2];
        for (int s = 0; s < grid.surfels().count(); s++) {
            if (grid.surfels().closure()[s] >= 0) {
                continue;
            }
            boolean own = cavity.parts().get(grid.surfels().part()[s]).kind() == PartKind.PROTECTED;
            assertEquals(own, grid.surfels().isProtected(s));
            assertEquals(!own, grid.surfels().isStructure(s));
            areas[own ? 0 : 1] += grid.surfels().areaM2()[s];
        }
        for (UnresolvedArea u : grid.unresolved()) {
            areas[cavity.parts().get(u.part()).kind() == PartKind.PROTECTED ? 0 : 1] += u.areaM2();
        }
        return areas;
    }

    private static void check(BodySpec body, double voxelM) {
        Cavity bare = cavity(CavityFixtures.block(SIZE));
        Cavity with = cavity(CavityFixtures.block(SIZE), item(body));
        double[] areas = areas(with, grid(with, voxelM));
        assertEquals(body.areaM2(), areas[0], 1e-9 * body.areaM2(), body.toString());
        assertEquals(areas(bare, grid(bare, voxelM))[1], areas[1], 1e-12, body.toString());
        double taken = grid(bare, voxelM).totalVolumeM3() - grid(with, voxelM).totalVolumeM3();
        assertEquals(body.volumeM3(), taken, 0.005 * body.volumeM3(), body.toString());
        assertEquals(1, grid(with, voxelM).bays().size());
    }

    @Test
    void bodiesAnywhereAddTheirAreaAndTakeTheirVolume() {
        Random random = new Random(99);
        for (int draw = 0; draw < 25; draw++) {
            Vec3 at = new Vec3(
                    0.2 + 0.1 * random.nextDouble(),
                    0.15 + 0.1 * random.nextDouble(),
                    0.13 + 0.04 * random.nextDouble());
            check(new BodySpec.Sphere(at, 0.04 + 0.08 * random.nextDouble()), 0.02);
            Vec3 turn = new Vec3(360 * random.nextDouble(), 360 * random.nextDouble(), 360 * random.nextDouble());
            Vec3 size = new Vec3(0.05 + 0.1 * random.nextDouble(), 0.08, 0.05 + 0.05 * random.nextDouble());
            check(
                    new BodySpec.Cuboid(
                            at,
                            size,
                            Turns.turned(Vec3.X, turn),
                            Turns.turned(Vec3.Y, turn),
                            Turns.turned(Vec3.Z, turn)),
                    0.02);
            Vec3 axis = Turns.turned(new Vec3(0.05, 0, 0), turn);
            check(new BodySpec.Cylinder(at.minus(axis), at.plus(axis), 0.03 + 0.02 * random.nextDouble()), 0.02);
        }
    }

    @Test
    void itemsSmallerThanAVoxelKeepTheirAreaInTheBooks() {
        for (double diameter : new double[] {0.002, 0.008, 0.019}) {
            BodySpec body = new BodySpec.Sphere(new Vec3(0.2513, 0.2071, 0.1487), diameter / 2);
            Cavity with = cavity(CavityFixtures.block(SIZE), item(body));
            assertEquals(body.areaM2(), areas(with, grid(with, 0.03))[0], 1e-9 * body.areaM2());
        }
    }

    @Test
    void boxesOnLatticePlanesAndThroughCellCentresHoldToo() {
        for (double off : new double[] {0, 0.01, 0.005}) {
            Vec3 at = new Vec3(0.25 + off, 0.2 + off, 0.15 + off);
            check(new BodySpec.Cuboid(at, new Vec3(0.1, 0.06, 0.08), Vec3.X, Vec3.Y, Vec3.Z), 0.02);
        }
    }

    @Test
    void aNamedPartIsNoStructureOnBothSides() {
        ProtectedItem rib = new ProtectedItem("seal", null, "rib 2", 1e-6, Mask.NONE, CavityFixtures.PLACE);
        CavitySpec spec = CavityFixtures.wedgeSpec();
        Cavity plain = cavity(spec);
        Cavity cavity = cavity(spec, rib);
        assertEquals(
                PartKind.PROTECTED,
                cavity.parts().get(cavity.partIndex("rib 2")).kind());
        double[] areas = areas(cavity, grid(cavity, 0.01));
        double rib2 = 0;
        for (int t = 0; t < plain.cutSheets().triangleCount(); t++) {
            if (plain.partOfCut(t) == plain.partIndex("rib 2")) {
                rib2 += plain.cutSheets().areaM2(t);
            }
        }
        assertEquals(2 * rib2, areas[0], 1e-9 * rib2);
        assertTrue(Arrays.stream(grid(cavity, 0.01).bays().stream()
                                .mapToDouble(Bay::areaM2)
                                .toArray())
                        .sum()
                < Arrays.stream(grid(plain, 0.01).bays().stream()
                                .mapToDouble(Bay::areaM2)
                                .toArray())
                        .sum());
    }

    @Test
    void itemsThatCantBeAreToldInOneSentenceEach() {
        refused("CAV-063", item(new BodySpec.Sphere(new Vec3(0.49, 0.2, 0.15), 0.05)));
        refused("CAV-061", new ProtectedItem("x", null, "flor", 0, Mask.TAPE, CavityFixtures.PLACE));
        refused(
                "CAV-062",
                new ProtectedItem(
                        "floor",
                        new BodySpec.Sphere(new Vec3(0.2, 0.2, 0.1), 0.01),
                        null,
                        0,
                        Mask.BAG,
                        CavityFixtures.PLACE));
        ProtectedItem floor = new ProtectedItem("one", null, "floor", 0, Mask.NONE, CavityFixtures.PLACE);
        ProtectedItem again = new ProtectedItem("two", null, "floor", 0, Mask.NONE, CavityFixtures.PLACE);
        refused("CAV-062", floor, again);
    }

    private static void refused(String id, ProtectedItem... items) {
        SceneException e = assertThrows(SceneException.class, () -> cavity(CavityFixtures.block(SIZE), items));
        assertEquals(1, e.findings().size());
        assertEquals(id, e.findings().get(0).id(), e.getMessage());
    }
}
