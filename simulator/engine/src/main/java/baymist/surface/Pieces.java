package baymist.surface;

import baymist.geom.Vec3;
import java.util.Arrays;

/**
 * Sheet triangles while they are split: vertices shared within a part, growing arrays.
 */
final class Pieces {
    /** Coordinates, m, [3 * vertices]. */
    private double[] xyz = new double[3 * 1024];
    /** Corner vertices, [3 * triangles]. */
    private int[] corners = new int[3 * 1024];
    /** Part of each triangle. */
    private int[] part = new int[1024];
    /** Flat stretch of sheet that each triangle lies in, see {@link FlatStretches}. */
    private int[] stretch = new int[1024];

    private int vertices;
    private int triangles;

    int vertices() {
        return vertices;
    }

    int triangles() {
        return triangles;
    }

    int addVertex(double x, double y, double z) {
        if (3 * vertices == xyz.length) {
            xyz = Arrays.copyOf(xyz, 2 * xyz.length);
        }
        xyz[3 * vertices] = x;
        xyz[3 * vertices + 1] = y;
        xyz[3 * vertices + 2] = z;
        return vertices++;
    }

    void add(int a, int b, int c, int ofPart, int ofStretch) {
        if (triangles == part.length) {
            part = Arrays.copyOf(part, 2 * part.length);
            stretch = Arrays.copyOf(stretch, 2 * stretch.length);
            corners = Arrays.copyOf(corners, 2 * corners.length);
        }
        part[triangles] = ofPart;
        stretch[triangles] = ofStretch;
        set(triangles++, a, b, c);
    }

    void set(int triangle, int a, int b, int c) {
        corners[3 * triangle] = a;
        corners[3 * triangle + 1] = b;
        corners[3 * triangle + 2] = c;
    }

    int stretch(int triangle) {
        return stretch[triangle];
    }

    void setStretch(int triangle, int ofStretch) {
        stretch[triangle] = ofStretch;
    }

    int corner(int triangle, int k) {
        return corners[3 * triangle + k];
    }

    int part(int triangle) {
        return part[triangle];
    }

    double coordinate(int vertex, int axis) {
        return xyz[3 * vertex + axis];
    }

    Vec3 point(int vertex) {
        return new Vec3(xyz[3 * vertex], xyz[3 * vertex + 1], xyz[3 * vertex + 2]);
    }

    double length2(int a, int b) {
        double x = xyz[3 * a] - xyz[3 * b];
        double y = xyz[3 * a + 1] - xyz[3 * b + 1];
        double z = xyz[3 * a + 2] - xyz[3 * b + 2];
        return x * x + y * y + z * z;
    }

    /** Twice the area times the normal. */
    Vec3 doubleAreaVector(int triangle) {
        Vec3 a = point(corner(triangle, 0));
        return point(corner(triangle, 1))
                .minus(a)
                .cross(point(corner(triangle, 2)).minus(a));
    }

    /** The same vertices without triangles. */
    Pieces verticesOnly() {
        Pieces copy = new Pieces();
        copy.xyz = xyz.clone();
        copy.vertices = vertices;
        return copy;
    }
}
