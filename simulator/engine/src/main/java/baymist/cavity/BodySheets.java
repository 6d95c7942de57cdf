package baymist.cavity;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.scene.BodySpec;
import java.util.ArrayList;
import java.util.List;

/**
 * Closed sheets of plain bodies, wound outward. Round ones are faceted and grown by a trifle so that their surface is exact:
 * film is mass by area. Their volume is then short by under 0.3 %.
 */
final class BodySheets {
    private static final int SEGMENTS = 48;
    /** Halvings of an icosahedron's edges: 1280 triangles. */
    private static final int HALVINGS = 3;

    private BodySheets() {}

    static void add(SheetModel model, int part, BodySpec body) {
        if (body instanceof BodySpec.Cuboid b) {
            cuboid(model, part, b);
        } else if (body instanceof BodySpec.Cylinder c) {
            cylinder(model, part, c);
        } else if (body instanceof BodySpec.Sphere s) {
            sphere(model, part, s);
        } else {
            throw new IllegalArgumentException("no sheets for " + body.getClass());
        }
    }

    static Box3 bounds(BodySpec body) {
        SheetModel alone = new SheetModel();
        add(alone, 0, body);
        return alone.mesh().bounds();
    }

    private static void cuboid(SheetModel model, int part, BodySpec.Cuboid b) {
        Vec3[] c = new Vec3[8];
        for (int i = 0; i < 8; i++) {
            c[i] = b.centreM()
                    .plus(((i & 1) - 0.5) * b.sizeM().x(), b.xAxis())
                    .plus(((i >> 1 & 1) - 0.5) * b.sizeM().y(), b.yAxis())
                    .plus(((i >> 2 & 1) - 0.5) * b.sizeM().z(), b.zAxis());
        }
        // corners by bits x, y, z; each side counter-clockwise from outside
        int[][] sides = {{0, 4, 6, 2}, {1, 3, 7, 5}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 2, 3, 1}, {4, 5, 7, 6}};
        for (int[] s : sides) {
            model.quad(part, c[s[0]], c[s[1]], c[s[2]], c[s[3]]);
        }
    }

    /** A prism over a regular polygon, whose radius R makes its surface that of the cylinder. */
    private static void cylinder(SheetModel model, int part, BodySpec.Cylinder c) {
        double angle = Math.PI / SEGMENTS;
        // ends n sin(2a) R² / 2 each, side 2 n sin(a) R L: a R² + b R = area
        double a = SEGMENTS * Math.sin(2 * angle);
        double b = 2 * SEGMENTS * Math.sin(angle) * c.lengthM();
        double radius = (Math.sqrt(b * b + 4 * a * c.areaM2()) - b) / (2 * a);
        Vec3 axis = c.toM().minus(c.fromM()).unit();
        Vec3 u = axis.anyPerpendicular();
        Vec3 v = axis.cross(u);
        List<Vec3> near = new ArrayList<>();
        List<Vec3> far = new ArrayList<>();
        for (int k = 0; k < SEGMENTS; k++) {
            Vec3 out = u.times(radius * Math.cos(2 * k * angle)).plus(radius * Math.sin(2 * k * angle), v);
            near.add(c.fromM().plus(out));
            far.add(c.toM().plus(out));
        }
        for (int k = 0; k < SEGMENTS; k++) {
            int next = (k + 1) % SEGMENTS;
            model.quad(part, near.get(k), near.get(next), far.get(next), far.get(k));
            model.triangle(part, c.fromM(), near.get(next), near.get(k));
            model.triangle(part, c.toM(), far.get(k), far.get(next));
        }
    }

    /** An icosahedron with its edges halved on the sphere, grown until its surface is the sphere's. */
    private static void sphere(SheetModel model, int part, BodySpec.Sphere s) {
        List<Vec3[]> triangles = icosahedron();
        for (int h = 0; h < HALVINGS; h++) {
            List<Vec3[]> finer = new ArrayList<>();
            for (Vec3[] t : triangles) {
                // sums commute to the bit, so neighbours find the same middle
                Vec3 ab = t[0].plus(t[1]).unit();
                Vec3 bc = t[1].plus(t[2]).unit();
                Vec3 ca = t[2].plus(t[0]).unit();
                finer.add(new Vec3[] {t[0], ab, ca});
                finer.add(new Vec3[] {ab, t[1], bc});
                finer.add(new Vec3[] {ca, bc, t[2]});
                finer.add(new Vec3[] {ab, bc, ca});
            }
            triangles = finer;
        }
        double area = 0;
        for (Vec3[] t : triangles) {
            area += 0.5 * t[1].minus(t[0]).cross(t[2].minus(t[0])).length();
        }
        double radius = s.radiusM() * Math.sqrt(4 * Math.PI / area);
        for (Vec3[] t : triangles) {
            model.triangle(
                    part,
                    s.centreM().plus(radius, t[0]),
                    s.centreM().plus(radius, t[1]),
                    s.centreM().plus(radius, t[2]));
        }
    }

    private static List<Vec3[]> icosahedron() {
        double g = (1 + Math.sqrt(5)) / 2;
        Vec3[] p = {
            new Vec3(-1, g, 0), new Vec3(1, g, 0), new Vec3(-1, -g, 0), new Vec3(1, -g, 0),
            new Vec3(0, -1, g), new Vec3(0, 1, g), new Vec3(0, -1, -g), new Vec3(0, 1, -g),
            new Vec3(g, 0, -1), new Vec3(g, 0, 1), new Vec3(-g, 0, -1), new Vec3(-g, 0, 1)
        };
        int[][] faces = {
            {0, 11, 5}, {0, 5, 1}, {0, 1, 7}, {0, 7, 10}, {0, 10, 11}, {1, 5, 9}, {5, 11, 4}, {11, 10, 2}, {10, 7, 6},
            {7, 1, 8}, {3, 9, 4}, {3, 4, 2}, {3, 2, 6}, {3, 6, 8}, {3, 8, 9}, {4, 9, 5}, {2, 4, 11}, {6, 2, 10},
            {8, 6, 7}, {9, 8, 1}
        };
        List<Vec3[]> triangles = new ArrayList<>();
        for (int[] f : faces) {
            triangles.add(new Vec3[] {p[f[0]].unit(), p[f[1]].unit(), p[f[2]].unit()});
        }
        return triangles;
    }
}
