package baymist.cavity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.TriangleMesh;
import baymist.numeric.Workers;
import baymist.scene.VoxelSpec;
import baymist.voxel.FaceSet;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/** What every valid member of a family must satisfy once it is voxelised. */
final class FamilyLaw {
    private FamilyLaw() {}

    /** Volume by the divergence theorem over the sheets of an outer hull, each turned outward. */
    static double hullVolume(Cavity cavity, Predicate<String> hull, Predicate<String> turned) {
        TriangleMesh mesh = cavity.sheets();
        double sum = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            String part = cavity.parts().get(cavity.partOfSheet(t)).name();
            if (hull.test(part)) {
                double six = mesh.point(t, 0).dot(mesh.point(t, 1).cross(mesh.point(t, 2)));
                sum += turned.test(part) ? -six / 6 : six / 6;
            }
        }
        return sum;
    }

    /**
     * What a voxelised cavity must come to.
     *
     * @param areaM2 sheet that faces its air, both sides of inner sheets, openings cut out
     * @param areaShare relative tolerance of the area; volumeShare of the volume
     */
    record Expected(Set<String> openings, double areaM2, double areaShare, double volumeM3, double volumeShare) {}

    /** Sum over the parts of what is left of them, times the number of sides that face air. */
    static double area(Cavity cavity, ToDoubleFunction<String> sides) {
        double sum = 0;
        for (CavityHealth.PartArea part : CavityHealth.of(cavity).parts()) {
            sum += part.cutM2() * sides.applyAsDouble(part.part());
        }
        return sum;
    }

    /** Closed, with exactly the stated openings at their exact areas, and with all the sheet that faces its air. */
    static void holds(String name, Cavity cavity, VoxelSpec voxel, Expected expected) {
        try (Workers workers = new Workers(1)) {
            VoxelGrid grid = Voxelizer.voxelize(cavity, voxel, workers);
            assertTrue(grid.leaks().isEmpty(), name + ": " + grid.leaks());
            Set<String> found = new TreeSet<>();
            cavity.openings().forEach(o -> found.add(o.name()));
            assertEquals(new TreeSet<>(expected.openings), found, name);
            double[] open = openAreas(cavity, grid.faces());
            for (int o = 0; o < open.length; o++) {
                Opening opening = cavity.openings().get(o);
                assertEquals(opening.areaM2(), open[o], 1e-9 * opening.areaM2(), name + ": " + opening.name());
            }
            assertEquals(
                    expected.volumeM3,
                    grid.totalVolumeM3(),
                    expected.volumeShare * expected.volumeM3,
                    name + ": volume");
            assertEquals(expected.areaM2, sheetArea(grid), expected.areaShare * expected.areaM2, name + ": area");
        }
    }

    private static double[] openAreas(Cavity cavity, FaceSet faces) {
        double[] area = new double[cavity.openings().size()];
        for (int e = 0; e < faces.count(); e++) {
            if (faces.opening()[e] >= 0) {
                area[faces.opening()[e]] += faces.areaM2()[e];
            }
        }
        for (int e = 0; e < faces.vents(); e++) {
            area[faces.ventOpening()[e]] += faces.ventAreaM2()[e];
        }
        return area;
    }

    /** Sheet as surfels and as unresolved area; the pieces cut out don't count. */
    private static double sheetArea(VoxelGrid grid) {
        SurfelSet surfels = grid.surfels();
        double sum = grid.unresolvedAreaM2();
        for (int s = 0; s < surfels.count(); s++) {
            sum += surfels.closure()[s] < 0 ? surfels.areaM2()[s] : 0;
        }
        return sum;
    }
}
