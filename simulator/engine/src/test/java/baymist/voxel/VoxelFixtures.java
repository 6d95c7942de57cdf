package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.cavity.Part;
import baymist.cavity.PartKind;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.scene.PhaseStates;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** Cavities built by hand for the tests of this package. */
final class VoxelFixtures {
    final List<Part> parts = new ArrayList<>();
    final List<Opening> openings = new ArrayList<>();
    final List<double[]> sheets = new ArrayList<>();
    final List<Integer> partOfSheet = new ArrayList<>();
    final List<double[]> cut = new ArrayList<>();
    final List<Integer> partOfCut = new ArrayList<>();
    final List<double[]> closures = new ArrayList<>();
    final List<Integer> openingOfClosure = new ArrayList<>();
    Vec3 inside;

    int part(String name) {
        parts.add(new Part(name, PartKind.WALL, 0.001));
        return parts.size() - 1;
    }

    /** A whole triangle that is also its own cut sheet. */
    void triangle(int part, Vec3 a, Vec3 b, Vec3 c) {
        whole(part, a, b, c);
        cut(part, a, b, c);
    }

    void whole(int part, Vec3 a, Vec3 b, Vec3 c) {
        sheets.add(flat(a, b, c));
        partOfSheet.add(part);
    }

    void cut(int part, Vec3 a, Vec3 b, Vec3 c) {
        if (part >= 0) {
            cut.add(flat(a, b, c));
            partOfCut.add(part);
        }
    }

    /** Takes over parts and whole sheets of a cavity without openings. */
    void copy(Cavity cavity) {
        parts.addAll(cavity.parts());
        for (int t = 0; t < cavity.sheets().triangleCount(); t++) {
            triangle(
                    cavity.partOfSheet(t),
                    cavity.sheets().point(t, 0),
                    cavity.sheets().point(t, 1),
                    cavity.sheets().point(t, 2));
        }
    }

    void quad(int part, Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
        triangle(part, a, b, c);
        triangle(part, a, c, d);
    }

    private static double[] flat(Vec3 a, Vec3 b, Vec3 c) {
        return new double[] {a.x(), a.y(), a.z(), b.x(), b.y(), b.z(), c.x(), c.y(), c.z()};
    }

    /** A box of six walls, normals outward; one part for each wall, or a single part. */
    void box(String name, Vec3 low, Vec3 high, boolean onePart, UnaryOperator<Vec3> place) {
        String[] names = {"fore", "aft", "left", "right", "floor", "roof"};
        int part = onePart ? part(name) : -1;
        for (int d = 0; d < 6; d++) {
            wall(onePart ? part : part(name + " " + names[d]), low, high, d, place);
        }
    }

    /** Corners of a wall, counter-clockwise seen from outside. */
    static Vec3[] wallCorners(Vec3 low, Vec3 high, int d) {
        int axis = d >> 1;
        int b = (axis + 1) % 3;
        int c = (axis + 2) % 3;
        Vec3[] corners = new Vec3[4];
        double[][] ring = {{0, 0}, {1, 0}, {1, 1}, {0, 1}};
        for (int k = 0; k < 4; k++) {
            double[] r = ring[(d & 1) == 1 ? k : 3 - k];
            double[] p = new double[3];
            p[axis] = (d & 1) == 1 ? high.get(axis) : low.get(axis);
            p[b] = r[0] == 0 ? low.get(b) : high.get(b);
            p[c] = r[1] == 0 ? low.get(c) : high.get(c);
            corners[k] = new Vec3(p[0], p[1], p[2]);
        }
        return corners;
    }

    void wall(int part, Vec3 low, Vec3 high, int d, UnaryOperator<Vec3> place) {
        Vec3[] c = wallCorners(low, high, d);
        quad(part, place.apply(c[0]), place.apply(c[1]), place.apply(c[2]), place.apply(c[3]));
    }

    int opening(String name, int part, Opening.Kind kind, boolean exterior, PlacedOutline place) {
        openings.add(new Opening(name, part, kind, place, PhaseStates.ALWAYS_OPEN, exterior));
        return openings.size() - 1;
    }

    /** Adds an opening's own polygon, fanned about its centre, as its closure. */
    void closeWithOutline(int opening) {
        PlacedOutline place = openings.get(opening).place();
        List<double[]> ring = place.outline().polygon(OpeningFootprint.SEGMENTS);
        for (int p = 0; p < ring.size(); p++) {
            double[] a = ring.get(p);
            double[] b = ring.get((p + 1) % ring.size());
            closures.add(flat(place.centreM(), place.point(a[0], a[1]), place.point(b[0], b[1])));
            openingOfClosure.add(opening);
        }
    }

    /**
     * Fills {@code cut} with a plane rectangle less a convex counter-clockwise hole, fan by fan, and {@code closures} with
     * the hole. The sheet spans {@code u} x {@code v} from {@code corner}; hole points are in (u, v) metres from the
     * corner.
     */
    void cutWithHole(
            int part, int opening, Vec3 corner, Vec3 u, double lengthM, Vec3 v, double widthM, List<double[]> hole) {
        double[][] outer = {{0, 0}, {lengthM, 0}, {lengthM, widthM}, {0, widthM}};
        int n = hole.size();
        double cu = 0;
        double cv = 0;
        for (double[] p : hole) {
            cu += p[0] / n;
            cv += p[1] / n;
        }
        // each hole edge joins the outer corner of its sector; sectors change where the corner does
        int[] sector = new int[n];
        for (int p = 0; p < n; p++) {
            int q = (p + 1) % n;
            double mu = 0.5 * (hole.get(p)[0] + hole.get(q)[0]) - cu;
            double mv = 0.5 * (hole.get(p)[1] + hole.get(q)[1]) - cv;
            sector[p] = mu >= 0 ? (mv >= 0 ? 2 : 1) : (mv >= 0 ? 3 : 0);
        }
        for (int p = 0; p < n; p++) {
            int q = (p + 1) % n;
            cut(part, at(corner, u, v, hole.get(q)), at(corner, u, v, hole.get(p)), at(corner, u, v, outer[sector[p]]));
            if (sector[p] != sector[q]) {
                cut(
                        part,
                        at(corner, u, v, outer[sector[p]]),
                        at(corner, u, v, outer[sector[q]]),
                        at(corner, u, v, hole.get(q)));
            }
            closures.add(flat(
                    at(corner, u, v, new double[] {cu, cv}),
                    at(corner, u, v, hole.get(p)),
                    at(corner, u, v, hole.get(q))));
            openingOfClosure.add(opening);
        }
    }

    private static Vec3 at(Vec3 corner, Vec3 u, Vec3 v, double[] p) {
        return corner.plus(p[0], u).plus(p[1], v);
    }

    Cavity cavity(String name) {
        return new Cavity(
                name,
                parts,
                openings,
                mesh(sheets),
                ints(partOfSheet),
                mesh(cut),
                ints(partOfCut),
                mesh(closures),
                ints(openingOfClosure),
                inside,
                List.of());
    }

    private static int[] ints(List<Integer> list) {
        return list.stream().mapToInt(Integer::intValue).toArray();
    }

    static TriangleMesh mesh(List<double[]> triangles) {
        double[] xyz = new double[9 * triangles.size()];
        int[] corners = new int[3 * triangles.size()];
        for (int t = 0; t < triangles.size(); t++) {
            System.arraycopy(triangles.get(t), 0, xyz, 9 * t, 9);
        }
        for (int c = 0; c < corners.length; c++) {
            corners[c] = c;
        }
        return new TriangleMesh(xyz, corners);
    }

    static Cavity plainBox(double x, double y, double z) {
        VoxelFixtures f = new VoxelFixtures();
        f.box("box", Vec3.ZERO, new Vec3(x, y, z), false, p -> p);
        return f.cavity("plain box");
    }

    /**
     * Box x 0..length, with a rib square to x at {@code ribM} that has a round hole of radius {@code radiusM} about
     * (y, z) of the middle, and optionally a drilled hole of radius {@code drainM} in the floor near x = length / 4.
     */
    static Cavity ribbedBox(double length, double y, double z, double ribM, double radiusM, double drainM) {
        VoxelFixtures f = new VoxelFixtures();
        Vec3 high = new Vec3(length, y, z);
        String[] names = {"fore", "aft", "left", "right", "floor", "roof"};
        int floor = -1;
        for (int d = 0; d < 6; d++) {
            int part = f.part(names[d]);
            if (d == 4 && drainM > 0) {
                floor = part;
                for (Vec3[] t : new Vec3[][] {
                    tri(wallCorners(Vec3.ZERO, high, 4), 1, 2), tri(wallCorners(Vec3.ZERO, high, 4), 2, 3)
                }) {
                    f.whole(part, t[0], t[1], t[2]);
                }
            } else {
                f.wall(part, Vec3.ZERO, high, d, p -> p);
            }
        }
        int rib = f.part("rib 1");
        Vec3 a = new Vec3(ribM, 0, 0);
        f.whole(rib, a, new Vec3(ribM, y, 0), new Vec3(ribM, y, z));
        f.whole(rib, a, new Vec3(ribM, y, z), new Vec3(ribM, 0, z));
        Outline circle = new Outline.Circle(radiusM);
        PlacedOutline ribHole = PlacedOutline.of(circle, new Vec3(ribM, y / 2, z / 2), Vec3.Y, Vec3.X);
        int hole = f.opening("lightening hole", rib, Opening.Kind.HOLE, false, ribHole);
        f.cutWithHole(rib, hole, a, Vec3.Y, y, Vec3.Z, z, shifted(circle, y / 2, z / 2));
        if (drainM > 0) {
            Outline drill = new Outline.Circle(drainM);
            double dx = 0.2571 * length;
            double dy = 0.377 * y;
            PlacedOutline place = PlacedOutline.of(drill, new Vec3(dx, dy, 0), Vec3.X, Vec3.Z);
            int drain = f.opening("drain", floor, Opening.Kind.PORT, true, place);
            // floor normal points down: u along y, v along x
            f.cutWithHole(floor, drain, Vec3.ZERO, Vec3.Y, y, Vec3.X, length, shifted(drill, dy, dx));
        }
        return f.cavity("ribbed box");
    }

    private static Vec3[] tri(Vec3[] quad, int second, int third) {
        return new Vec3[] {quad[0], quad[second], quad[third]};
    }

    private static List<double[]> shifted(Outline outline, double u, double v) {
        List<double[]> points = new ArrayList<>();
        for (double[] p : outline.polygon(OpeningFootprint.SEGMENTS)) {
            points.add(new double[] {p[0] + u, p[1] + v});
        }
        return points;
    }

    /** Triangulated sphere: latitude and longitude quads. */
    static VoxelFixtures sphere(double radius, Vec3 centre, int around) {
        VoxelFixtures f = new VoxelFixtures();
        int part = f.part("ball");
        int rows = around / 2;
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < around; c++) {
                Vec3 p = onSphere(radius, centre, r, c, rows, around);
                Vec3 q = onSphere(radius, centre, r, c + 1, rows, around);
                Vec3 s = onSphere(radius, centre, r + 1, c + 1, rows, around);
                Vec3 t = onSphere(radius, centre, r + 1, c, rows, around);
                if (r > 0) {
                    f.triangle(part, p, s, q);
                }
                if (r < rows - 1) {
                    f.triangle(part, p, t, s);
                }
            }
        }
        return f;
    }

    private static Vec3 onSphere(double radius, Vec3 centre, int r, int c, int rows, int around) {
        double lat = Math.PI * r / rows;
        double lon = 2 * Math.PI * (c % around) / around;
        double ring = r == 0 || r == rows ? 0 : Math.sin(lat);
        return centre.plus(radius, new Vec3(ring * Math.cos(lon), ring * Math.sin(lon), Math.cos(lat)));
    }

    /** Prism, wound inward, with the given cross-section (counter-clockwise x, z points seen from -y), from y = 0 to {@code width}. */
    static Cavity prism(String name, List<double[]> section, double width, UnaryOperator<Vec3> place) {
        return prismSheets(section, width, place).cavity(name);
    }

    /** As {@link #prism}, before it is closed to a cavity. */
    static VoxelFixtures prismSheets(List<double[]> section, double width, UnaryOperator<Vec3> place) {
        VoxelFixtures f = new VoxelFixtures();
        int skin = f.part("skin");
        int left = f.part("left end");
        int right = f.part("right end");
        int n = section.size();
        double cx = 0;
        double cz = 0;
        for (double[] p : section) {
            cx += p[0] / n;
            cz += p[1] / n;
        }
        for (int i = 0; i < n; i++) {
            double[] p = section.get(i);
            double[] q = section.get((i + 1) % n);
            Vec3 a = place.apply(new Vec3(p[0], 0, p[1]));
            Vec3 b = place.apply(new Vec3(q[0], 0, q[1]));
            Vec3 c = place.apply(new Vec3(q[0], width, q[1]));
            Vec3 d = place.apply(new Vec3(p[0], width, p[1]));
            f.quad(skin, a, b, c, d);
            f.triangle(left, place.apply(new Vec3(cx, 0, cz)), b, a);
            f.triangle(right, place.apply(new Vec3(cx, width, cz)), d, c);
        }
        return f;
    }

    /** Prism between two lines of points (x, z) at equal stations, front and back closed, y from 0 to {@code width}. */
    static VoxelFixtures stripPrism(List<double[]> upper, List<double[]> lower, double width) {
        VoxelFixtures f = new VoxelFixtures();
        int skin = f.part("skin");
        int ends = f.part("ends");
        int last = upper.size() - 1;
        for (int i = 0; i < last; i++) {
            Vec3[] u = {at(upper, i, 0), at(upper, i + 1, 0), at(upper, i + 1, width), at(upper, i, width)};
            Vec3[] l = {at(lower, i, 0), at(lower, i + 1, 0), at(lower, i + 1, width), at(lower, i, width)};
            f.quad(skin, u[0], u[1], u[2], u[3]);
            f.quad(skin, l[3], l[2], l[1], l[0]);
            f.solid(ends, u[0], l[0], l[1], u[1]);
            f.solid(ends, u[3], u[2], l[2], l[3]);
        }
        f.solid(skin, at(upper, 0, 0), at(upper, 0, width), at(lower, 0, width), at(lower, 0, 0));
        f.solid(skin, at(upper, last, 0), at(lower, last, 0), at(lower, last, width), at(upper, last, width));
        return f;
    }

    private static Vec3 at(List<double[]> line, int i, double y) {
        return new Vec3(line.get(i)[0], y, line.get(i)[1]);
    }

    /** A quadrilateral of which one side may have no length. */
    private void solid(int part, Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
        for (Vec3[] t : new Vec3[][] {{a, b, c}, {a, c, d}}) {
            if (t[1].minus(t[0]).cross(t[2].minus(t[0])).length() > 0) {
                triangle(part, t[0], t[1], t[2]);
            }
        }
    }

    static List<double[]> circleSection(double radius, int segments) {
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < segments; i++) {
            double a = 2 * Math.PI * i / segments;
            points.add(new double[] {radius * Math.cos(a), radius * Math.sin(a)});
        }
        return points;
    }

    static double area(TriangleMesh mesh) {
        double sum = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            sum += mesh.areaM2(t);
        }
        return sum;
    }

    /** Volume inside an outward-wound closed mesh. */
    static double volume(TriangleMesh mesh) {
        double sum = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            sum += mesh.doubleAreaVector(t).dot(mesh.point(t, 0)) / 6;
        }
        return sum;
    }
}
