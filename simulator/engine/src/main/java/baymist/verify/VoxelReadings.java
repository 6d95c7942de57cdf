package baymist.verify;

import baymist.geom.Vec3;
import baymist.run.CheckResult;
import baymist.voxel.FaceSet;
import baymist.voxel.SurfelSet;
import baymist.voxel.UnresolvedArea;
import baymist.voxel.VoxelGrid;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToDoubleBiFunction;

/** Cells, surfels and faces of a scene's cavity. */
final class VoxelReadings {
    private VoxelReadings() {}

    static Map<String, ToDoubleBiFunction<CheckResult, Inputs>> all() {
        Map<String, ToDoubleBiFunction<CheckResult, Inputs>> all = new TreeMap<>();
        all.put("cavityVolume", (r, in) -> r.grid().totalVolumeM3());
        all.put("bays", (r, in) -> r.grid().bays().size());
        all.put("bayVolume", (r, in) -> r.grid().bays().get(in.whole("bay") - 1).volumeM3());
        all.put("interiorArea", (r, in) -> resolved(r.grid()) + r.grid().unresolvedAreaM2());
        all.put("unresolvedShare", (r, in) -> r.grid().unresolvedAreaM2() / resolved(r.grid()));
        all.put("partArea", (r, in) -> area(r, in));
        all.put("closedSurface", (r, in) -> closedSurface(r.grid()));
        all.put("volumeFromSurfels", (r, in) -> volumeFromSurfels(r.grid()));
        all.put("zoneArea", (r, in) -> zoneArea(r.grid(), in));
        all.put("airCentroid", (r, in) -> airCentroid(r.grid(), in));
        all.put("openingFaceArea", (r, in) -> openingFaceArea(r, in));
        all.put("leaks", (r, in) -> r.grid().leaks().size());
        return all;
    }

    /** Sum over the surfels of the structure (closures left out). */
    private static double sum(SurfelSet surfels, IntToDoubleFunction term) {
        double sum = 0;
        for (int s = 0; s < surfels.count(); s++) {
            sum += surfels.closure()[s] < 0 ? term.applyAsDouble(s) : 0;
        }
        return sum;
    }

    private static double resolved(VoxelGrid grid) {
        return sum(grid.surfels(), s -> grid.surfels().areaM2()[s]);
    }

    /** Interior area of a part, resolved and unresolved. */
    private static double area(CheckResult r, Inputs in) {
        SurfelSet f = r.grid().surfels();
        String name = in.word("part");
        IntPredicate named = p -> r.cavity().parts().get(p).name().equals(name);
        double unresolved = r.grid().unresolved().stream()
                .filter(u -> named.test(u.part()))
                .mapToDouble(UnresolvedArea::areaM2)
                .sum();
        return unresolved + sum(f, s -> named.test(f.part()[s]) ? f.areaM2()[s] : 0);
    }

    private static Vec3 normal(SurfelSet f, int s) {
        return new Vec3(f.normalX()[s], f.normalY()[s], f.normalZ()[s]);
    }

    private static Vec3 centre(SurfelSet f, int s) {
        return new Vec3(f.centreX()[s], f.centreY()[s], f.centreZ()[s]);
    }

    /** Length of the sum of all area vectors over the sum of all areas: zero for a closed surface. */
    private static double closedSurface(VoxelGrid grid) {
        SurfelSet f = grid.surfels();
        Vec3 vector = Vec3.ZERO;
        for (int s = 0; s < f.count(); s++) {
            vector = vector.plus(f.areaM2()[s], normal(f, s));
        }
        return vector.length() / resolved(grid);
    }

    /** Volume by the divergence theorem: a third of the sum of area times distance of its plane from the origin. */
    private static double volumeFromSurfels(VoxelGrid grid) {
        SurfelSet f = grid.surfels();
        return -sum(f, s -> f.areaM2()[s] * centre(f, s).dot(normal(f, s))) / 3;
    }

    /** Area of the surface between two heights. */
    private static double zoneArea(VoxelGrid grid, Inputs in) {
        SurfelSet f = grid.surfels();
        double low = in.number("low");
        double high = in.number("high");
        return sum(f, s -> f.centreZ()[s] >= low && f.centreZ()[s] < high ? f.areaM2()[s] : 0);
    }

    private static double airCentroid(VoxelGrid grid, Inputs in) {
        int axis = in.whole("axis");
        double moment = 0;
        for (int c = 0; c < grid.cellCount(); c++) {
            moment += grid.volumeM3(c) * grid.centre(c).get(axis);
        }
        return moment / grid.totalVolumeM3();
    }

    /** Area of an opening as its faces carry it. */
    private static double openingFaceArea(CheckResult r, Inputs in) {
        int opening = r.cavity().openingIndex(in.word("opening"));
        FaceSet faces = r.grid().faces();
        double area = 0;
        for (int f = 0; f < faces.count(); f++) {
            area += faces.opening()[f] == opening ? faces.areaM2()[f] : 0;
        }
        for (int v = 0; v < faces.vents(); v++) {
            area += faces.ventOpening()[v] == opening ? faces.ventAreaM2()[v] : 0;
        }
        return area;
    }
}
