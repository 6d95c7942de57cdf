package baymist.access;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.cavity.Part;
import baymist.cavity.PartKind;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.scene.OpeningState;
import baymist.scene.PhaseStates;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Builds small cavities by hand for tests: flat parallelograms, each with at most one opening. */
public final class TestCavity {
    private final List<Part> parts = new ArrayList<>();
    private final List<Opening> openings = new ArrayList<>();
    private final Soup sheets = new Soup();
    private final Soup cut = new Soup();
    private final Soup closures = new Soup();

    private static final class Soup {
        final List<Vec3> points = new ArrayList<>();
        final List<Integer> owner = new ArrayList<>();

        void add(int of, Vec3 a, Vec3 b, Vec3 c) {
            points.addAll(List.of(a, b, c));
            owner.add(of);
        }

        TriangleMesh mesh() {
            double[] xyz = new double[3 * points.size()];
            int[] corners = new int[points.size()];
            for (int i = 0; i < points.size(); i++) {
                Vec3 p = points.get(i);
                xyz[3 * i] = p.x();
                xyz[3 * i + 1] = p.y();
                xyz[3 * i + 2] = p.z();
                corners[i] = i;
            }
            return new TriangleMesh(xyz, corners);
        }

        int[] owners() {
            return owner.stream().mapToInt(Integer::intValue).toArray();
        }
    }

    public static final PhaseStates OPEN = PhaseStates.ALWAYS_OPEN;
    public static final PhaseStates PLUGGED =
            new PhaseStates(OpeningState.PLUGGED, OpeningState.PLUGGED, OpeningState.PLUGGED);

    /** An opening about a point of a sheet. */
    public record Hole(String name, Outline outline, Vec3 centre, Vec3 normal, boolean exterior, PhaseStates states) {}

    /** Adds a sheet corner + s*u + t*v, s and t in 0..1, of gauge 0.6 mm. */
    public TestCavity sheet(String name, Vec3 corner, Vec3 u, Vec3 v, Hole... hole) {
        return sheet(name, 0.6e-3, corner, u, v, hole);
    }

    public TestCavity sheet(String name, double gaugeM, Vec3 corner, Vec3 u, Vec3 v, Hole... hole) {
        int part = parts.size();
        parts.add(new Part(name, PartKind.WALL, gaugeM));
        quad(sheets, part, corner, u, v);
        if (hole.length == 0) {
            quad(cut, part, corner, u, v);
            return this;
        }
        Hole h = hole[0];
        PlacedOutline place = PlacedOutline.of(h.outline(), h.centre(), u.unit(), h.normal());
        int index = openings.size();
        openings.add(new Opening(h.name(), part, Opening.Kind.PORT, place, h.states(), h.exterior()));
        List<double[]> polygon = h.outline().polygon(64);
        for (int i = 0; i < polygon.size(); i++) {
            double[] p = polygon.get(i);
            double[] q = polygon.get((i + 1) % polygon.size());
            closures.add(index, place.centreM(), place.point(p[0], p[1]), place.point(q[0], q[1]));
        }
        ring(part, place, polygon, corner, u, v);
        return this;
    }

    private static void quad(Soup soup, int part, Vec3 corner, Vec3 u, Vec3 v) {
        soup.add(part, corner, corner.plus(u), corner.plus(u).plus(v));
        soup.add(part, corner, corner.plus(u).plus(v), corner.plus(v));
    }

    /** Sheet round a hole: rays from the hole's centre through its corners and the sheet's cut the rest into quadrilaterals. */
    private void ring(int part, PlacedOutline place, List<double[]> polygon, Vec3 corner, Vec3 u, Vec3 v) {
        List<double[]> outer = new ArrayList<>();
        for (Vec3 p : List.of(corner, corner.plus(u), corner.plus(u).plus(v), corner.plus(v))) {
            outer.add(new double[] {place.u(p), place.v(p)});
        }
        TreeSet<Double> angles = new TreeSet<>();
        polygon.forEach(p -> angles.add(Math.atan2(p[1], p[0])));
        outer.forEach(p -> angles.add(Math.atan2(p[1], p[0])));
        List<Double> list = new ArrayList<>(angles);
        for (int i = 0; i < list.size(); i++) {
            double a = list.get(i);
            double b = i + 1 < list.size() ? list.get(i + 1) : list.get(0) + 2 * Math.PI;
            if (b - a < 1e-9) {
                continue;
            }
            Vec3 ia = at(place, polygon, a);
            Vec3 ib = at(place, polygon, b);
            Vec3 oa = at(place, outer, a);
            Vec3 ob = at(place, outer, b);
            cut.add(part, ia, oa, ob);
            cut.add(part, ia, ob, ib);
        }
    }

    private static Vec3 at(PlacedOutline place, List<double[]> polygon, double angle) {
        double du = Math.cos(angle);
        double dv = Math.sin(angle);
        double best = Double.POSITIVE_INFINITY;
        for (int i = 0; i < polygon.size(); i++) {
            double[] p = polygon.get(i);
            double[] q = polygon.get((i + 1) % polygon.size());
            double eu = q[0] - p[0];
            double ev = q[1] - p[1];
            double det = du * ev - dv * eu;
            if (Math.abs(det) < 1e-15) {
                continue;
            }
            double t = (p[0] * ev - p[1] * eu) / det;
            double s = (p[0] * dv - p[1] * du) / det;
            if (t > 0 && s >= -1e-9 && s <= 1 + 1e-9) {
                best = Math.min(best, t);
            }
        }
        return place.point(best * du, best * dv);
    }

    public Cavity build() {
        return new Cavity(
                "test",
                parts,
                openings,
                sheets.mesh(),
                sheets.owners(),
                cut.mesh(),
                cut.owners(),
                closures.mesh(),
                closures.owners(),
                null,
                List.of());
    }

    /** A box with its low corner at the origin; an opening may be given for the left wall (y = 0). */
    public static TestCavity box(double lx, double ly, double lz, Hole... inLeftWall) {
        Vec3 x = new Vec3(lx, 0, 0);
        Vec3 y = new Vec3(0, ly, 0);
        Vec3 z = new Vec3(0, 0, lz);
        return new TestCavity()
                .sheet("forward wall", Vec3.ZERO, y, z)
                .sheet("aft wall", x, y, z)
                .sheet("left wall", Vec3.ZERO, x, z, inLeftWall)
                .sheet("right wall", y, x, z)
                .sheet("floor", Vec3.ZERO, x, y)
                .sheet("ceiling", z, x, y);
    }

    /** A round port in the left wall, inward normal +y. */
    public static Hole port(String name, double x, double z, double diameterM, PhaseStates states) {
        return new Hole(name, new Outline.Circle(diameterM / 2), new Vec3(x, 0, z), Vec3.Y, true, states);
    }
}
