package baymist.study;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.Bvh;
import baymist.geom.TriangleDistance;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.scene.BodySpec;
import baymist.scene.DrillingSpec;
import baymist.scene.Obstacle;
import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Where an access hole may be thought of. A hole of diameter D
 *
 * <ol>
 *   <li>lies in a part that the scene allows, and that it does not mark as primary or pressurised;
 *   <li>keeps at least {@link #EDGE_DIAMETERS} D from the sheet's free edges and from the rims of openings, and {@link
 * #PITCH_DIAMETERS} D from other drilled
 *       holes (FAA AC 43.13-1B, 4-57: edge distance 2 D, pitch 3 D, from memory);
 *   <li>keeps clear of every other part that meets the sheet (spar, rib, stringer, doubler) by a flange of {@link #FLANGE_M} and
 * half its diameter, and by 3 D
 *       from a row of rivets in the middle of that flange;
 *   <li>keeps {@link #ITEM_M} from protected items, along the drill's way in;
 *   <li>can be reached from outside: {@link #OUTSIDE_M} of free way for the drill, no sheet within {@link #INSIDE_M} behind.
 * </ol>
 *
 * <p>None of this approves a hole: drilling needs approved data and a licensed person.
 */
final class HoleRules {
    static final double EDGE_DIAMETERS = 2;
    static final double PITCH_DIAMETERS = 3;
    /** Width of a flange that a member may have on the sheet, m. ASSUMED: a usual light extrusion or bent flange. */
    static final double FLANGE_M = 0.020;
    /** Distance from protected items, m. ASSUMED: what a drill stop and a hand's slip ask for. */
    static final double ITEM_M = 0.025;
    /** Free way outside along the drill, m. ASSUMED: a right-angle drill. */
    static final double OUTSIDE_M = 0.15;
    /** Free way inside behind the sheet, m. ASSUMED: a drill stop. */
    static final double INSIDE_M = 0.010;
    /** Half the width of the drill's head, m, that must pass outside. ASSUMED. */
    static final double HEAD_M = 0.015;

    private final Scene scene;
    private final DrillingSpec spec;
    private final Cavity cavity;
    private final VoxelGrid grid;
    private final TriangleMesh sheets;
    private final Bvh tree;

    /** @throws SceneException DRL-001 for every name of the block that is no part of the cavity */
    HoleRules(Scene scene, DrillingSpec spec, Cavity cavity, VoxelGrid grid) {
        this.scene = scene;
        this.spec = spec;
        this.cavity = cavity;
        this.grid = grid;
        this.sheets = cavity.sheets();
        this.tree = Bvh.of(sheets);
        List<String> names = new ArrayList<>(spec.parts());
        names.addAll(spec.primary());
        names.addAll(spec.pressurised());
        names.addAll(spec.doublers());
        for (String name : names) {
            if (cavity.partIndex(name) < 0) {
                throw new SceneException(
                        "DRL-001",
                        spec.place(),
                        "`drilling` names the part '" + name + "', which the cavity does not have; it has "
                                + cavity.parts().stream().map(p -> p.name()).toList());
            }
        }
    }

    /** All places of the grid where a hole of this size keeps the rules, in the order of parts and places. */
    List<HoleSite> sites(DrillSize drill) {
        List<HoleSite> all = new ArrayList<>();
        for (String part : spec.parts()) {
            if (!spec.primary().contains(part) && !spec.pressurised().contains(part)) {
                int index = cavity.partIndex(part);
                List<Vec3[]> edges = freeEdges(index);
                for (HoleGrid.Place place : HoleGrid.of(sheets, cavity, index, spec.gridM())) {
                    HoleSite site = site(index, place, edges, drill);
                    if (site != null) {
                        all.add(site);
                    }
                }
            }
        }
        return all;
    }

    /** Whether a hole keeps its pitch from another one. */
    static boolean apart(HoleSite a, HoleSite b) {
        double d = Math.max(a.drill().diameterM(), b.drill().diameterM());
        return !a.part().equals(b.part()) || a.centreM().distance(b.centreM()) >= PITCH_DIAMETERS * d;
    }

    private @Nullable HoleSite site(int part, HoleGrid.Place place, List<Vec3[]> edges, DrillSize drill) {
        double d = drill.diameterM();
        Vec3 p = place.pointM();
        Vec3 inward = inward(place);
        if (inward == null) {
            return null;
        }
        double edge = edgeM(part, p, edges);
        Member member = nearestMember(part, p);
        double clear = Math.max(FLANGE_M + d / 2, FLANGE_M / 2 + PITCH_DIAMETERS * d);
        if (edge < EDGE_DIAMETERS * d || member.distanceM() < clear || hitsItem(p, inward) || !free(p, inward)) {
            return null;
        }
        String name = member.part() < 0 ? "" : cavity.parts().get(member.part()).name();
        return new HoleSite(cavity.parts().get(part).name(), p, inward, drill, edge, member.distanceM(), name);
    }

    /** Which way the cavity lies, or null if the sheet has it on both sides or on none. */
    private @Nullable Vec3 inward(HoleGrid.Place place) {
        Vec3 n = place.normal();
        boolean ahead = inside(place.pointM(), n);
        boolean behind = inside(place.pointM(), n.negate());
        return ahead == behind ? null : ahead ? n : n.negate();
    }

    /** Whether the nearest cell centre region on this side is air of the cavity; the sheet lies on a face of cells, so half a cell away. */
    private boolean inside(Vec3 p, Vec3 towards) {
        Vec3 v = grid.sizeM();
        double step =
                0.55 * (Math.abs(towards.x()) * v.x() + Math.abs(towards.y()) * v.y() + Math.abs(towards.z()) * v.z());
        return grid.cellHolding(p.plus(step, towards)) >= 0 || grid.cellHolding(p.plus(2 * step, towards)) >= 0;
    }

    /** Distance from free edges of the sheet and from rims of its openings, m; 0 within one. */
    private double edgeM(int part, Vec3 p, List<Vec3[]> edges) {
        double least = Double.POSITIVE_INFINITY;
        for (Vec3[] e : edges) {
            least = Math.min(
                    least, TriangleDistance.closestOnSegment(p, e[0], e[1]).distance(p));
        }
        for (Opening o : cavity.openings()) {
            if (o.part() == part) {
                double u = o.place().u(p);
                double v = o.place().v(p);
                double outside = -o.place().outline().clearanceM(u, v);
                double height = o.place().heightM(p);
                least = Math.min(least, outside <= 0 ? Math.abs(height) : Math.hypot(outside, height));
            }
        }
        return least;
    }

    private record Member(int part, double distanceM) {}

    private Member nearestMember(int part, Vec3 p) {
        int nearest = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int t = 0; t < sheets.triangleCount(); t++) {
            int other = cavity.partOfSheet(t);
            if (other >= 0 && other != part) {
                Vec3 c = TriangleDistance.closestPoint(p, sheets.point(t, 0), sheets.point(t, 1), sheets.point(t, 2));
                double d = c.distance(p);
                if (d < least) {
                    least = d;
                    nearest = other;
                }
            }
        }
        return new Member(nearest, least);
    }

    private boolean hitsItem(Vec3 p, Vec3 inward) {
        for (ProtectedItem item : scene.protectedItems()) {
            BodySpec body = item.body();
            if (body != null && body.distanceM(p, p.plus(OUTSIDE_M, inward)) < ITEM_M) {
                return true;
            }
        }
        return false;
    }

    private boolean free(Vec3 p, Vec3 inward) {
        Vec3 out = inward.negate();
        for (Obstacle o : scene.obstacles()) {
            if (o.body().distanceM(p, p.plus(OUTSIDE_M, out)) < HEAD_M) {
                return false;
            }
        }
        return tree.closestHit(p, out, 1e-6, OUTSIDE_M, (t, at, x, y, z) -> true) == null
                && tree.closestHit(p, inward, 1e-6, INSIDE_M, (t, at, x, y, z) -> true) == null;
    }

    /** Edges that one triangle of the part alone has. */
    private List<Vec3[]> freeEdges(int part) {
        Map<List<Vec3>, Integer> uses = new HashMap<>();
        List<Vec3[]> edges = new ArrayList<>();
        for (int t = 0; t < sheets.triangleCount(); t++) {
            for (int k = 0; k < 3 && cavity.partOfSheet(t) == part; k++) {
                Vec3 a = sheets.point(t, k);
                Vec3 b = sheets.point(t, (k + 1) % 3);
                uses.merge(key(a, b), 1, Integer::sum);
                edges.add(new Vec3[] {a, b});
            }
        }
        edges.removeIf(e -> uses.getOrDefault(key(e[0], e[1]), 0) > 1);
        return edges;
    }

    private static List<Vec3> key(Vec3 a, Vec3 b) {
        boolean swap = a.x() > b.x() || (a.x() == b.x() && (a.y() > b.y() || (a.y() == b.y() && a.z() > b.z())));
        return swap ? List.of(b, a) : List.of(a, b);
    }
}
