package baymist.cavity;

import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec.Flange;
import baymist.scene.PhaseStates;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A plane web with flanged holes. The web has real holes at the foot of each lip and is cut into triangles through the very
 * vertices of its rim; the lip is a ring of sheet of its own (kind OTHER) from there to its free edge; over the free edge lies
 * a lid that belongs to the web and is cut out again, as a whole, by the hole's opening.
 */
final class FlangedWeb {
    private final SheetModel model;
    private final double gaugeM;
    private final SourcePlace place;

    FlangedWeb(SheetModel model, double gaugeM, SourcePlace place) {
        this.model = model;
        this.gaugeM = gaugeM;
        this.place = place;
    }

    /**
     * A hole of a web, placed in the web's plane.
     *
     * @param forward direction square to the web on which a lip with {@link Flange#forward} stands
     */
    record Hole(
            String name,
            PlacedOutline inWeb,
            PhaseStates states,
            @Nullable Flange flange,
            Vec3 forward) {
        boolean flanged() {
            return flange != null;
        }
    }

    /** Openings of holes with plain edges; the web itself is made elsewhere. */
    void plain(int part, List<Hole> holes) {
        for (Hole hole : holes) {
            if (!hole.flanged()) {
                model.placed.add(new SheetModel.Placed(
                        hole.name(), part, Opening.Kind.HOLE, hole.inWeb(), hole.states(), place));
            }
        }
    }

    /**
     * The web within a rim, with the lips of its flanged holes and all openings.
     *
     * @param rim corners in turn, all in one plane
     */
    void web(int part, List<Vec3> rim, List<Hole> holes) {
        List<List<Vec3>> feet = new ArrayList<>();
        for (Hole hole : holes) {
            Flange flange = hole.flange();
            if (flange != null) {
                List<double[]> edge = hole.inWeb().outline().polygon(ConvexPieces.SEGMENTS_PER_TURN);
                List<Vec3> foot = points(hole.inWeb(), grown(edge, cutBackM(flange)));
                feet.add(foot);
                lip(part, hole, flange, edge, foot);
            }
        }
        plain(part, holes);
        fill(part, rim, feet, holes);
    }

    private static double cutBackM(Flange flange) {
        // straight out: cos(pi/2) is not quite 0
        return Math.abs(flange.angleRad() - Math.PI / 2) < 1e-9 ? 0 : flange.depthM() / Math.tan(flange.angleRad());
    }

    private void lip(int part, Hole hole, Flange flange, List<double[]> edge, List<Vec3> foot) {
        Vec3 out = hole.forward().times(flange.forward() ? flange.depthM() : -flange.depthM());
        PlacedOutline web = hole.inWeb();
        PlacedOutline free =
                new PlacedOutline(web.outline(), web.centreM().plus(out), web.uAxis(), web.vAxis(), web.normal());
        List<Vec3> rim = points(free, edge);
        int ring = model.part(hole.name() + " flange", PartKind.OTHER, gaugeM);
        for (int k = 0; k < rim.size(); k++) {
            int n = (k + 1) % rim.size();
            model.quad(ring, foot.get(k), foot.get(n), rim.get(n), rim.get(k));
        }
        fill(part, rim, List.of(), List.of(hole));
        model.placed.add(new SheetModel.Placed(hole.name(), part, Opening.Kind.HOLE, free, hole.states(), place));
    }

    private static List<Vec3> points(PlacedOutline frame, List<double[]> polygon) {
        return polygon.stream().map(p -> frame.point(p[0], p[1])).toList();
    }

    /** The polygon with every side moved outward by the same distance. */
    static List<double[]> grown(List<double[]> polygon, double byM) {
        if (byM == 0) {
            return polygon;
        }
        List<double[]> out = new ArrayList<>();
        int n = polygon.size();
        for (int i = 0; i < n; i++) {
            double[] p = polygon.get(i);
            double[] m = outward(polygon.get((i + n - 1) % n), p);
            double[] k = outward(p, polygon.get((i + 1) % n));
            // mitre: the point whose distance from both sides is one
            double scale = byM / (1 + m[0] * k[0] + m[1] * k[1]);
            out.add(new double[] {p[0] + scale * (m[0] + k[0]), p[1] + scale * (m[1] + k[1])});
        }
        return out;
    }

    private static double[] outward(double[] a, double[] b) {
        double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
        return new double[] {(b[1] - a[1]) / length, -(b[0] - a[0]) / length};
    }

    private void fill(int part, List<Vec3> rim, List<List<Vec3>> feet, List<Hole> holes) {
        Vec3 normal = SheetCutter.areaVector(rim);
        int axis = Math.abs(normal.x()) >= Math.abs(normal.y()) && Math.abs(normal.x()) >= Math.abs(normal.z())
                ? 0
                : Math.abs(normal.y()) >= Math.abs(normal.z()) ? 1 : 2;
        List<Vec3> all = new ArrayList<>(turned(rim, axis));
        List<List<double[]>> loops = new ArrayList<>();
        List<double[]> flatRim = flat(all, axis);
        for (List<Vec3> foot : feet) {
            List<Vec3> loop = turned(foot, axis);
            all.addAll(loop);
            loops.add(flat(loop, axis));
        }
        List<int[]> triangles = PolygonTriangles.of(flatRim, loops);
        if (triangles == null) {
            SpecCheck check = new SpecCheck(place);
            List<String> names =
                    holes.stream().filter(Hole::flanged).map(Hole::name).toList();
            check.error(
                    "CAV-031",
                    "the flange of '" + String.join("' or '", names) + "' reaches over the edge of "
                            + model.parts.get(part).name() + " or meets another flange or itself; "
                            + "make the hole or the flange smaller or move it inward");
            check.orThrow();
            return;
        }
        for (int[] t : triangles) {
            model.triangle(part, all.get(t[0]), all.get(t[1]), all.get(t[2]));
        }
    }

    /** The loop counter-clockwise in the plane without the given axis. */
    private static List<Vec3> turned(List<Vec3> loop, int axis) {
        return SheetCutter.areaVector(loop).get(axis) > 0 ? loop : RibSheets.reversed(loop);
    }

    private static List<double[]> flat(List<Vec3> loop, int axis) {
        return loop.stream()
                .map(p -> new double[] {p.get((axis + 1) % 3), p.get((axis + 2) % 3)})
                .toList();
    }
}
