package baymist.geom;

import org.jspecify.annotations.Nullable;

/**
 * Indexed triangles, immutable. A triangle's normal follows the right-hand rule over its corners.
 */
public final class TriangleMesh {
    /** Vertex coordinates, m, [3 * vertexCount], x y z x y z ... */
    private final double[] xyz;
    /** Corner vertex numbers, [3 * triangleCount]. */
    private final int[] corners;

    private @Nullable Bvh tree;

    public TriangleMesh(double[] xyz, int[] corners) {
        this.xyz = xyz.clone();
        this.corners = corners.clone();
        for (int c : this.corners) {
            if (c < 0 || 3 * c + 2 >= this.xyz.length) {
                throw new IllegalArgumentException("corner " + c + " names no vertex");
            }
        }
    }

    /** The tree over these triangles: many stages look for the same ones. Made when first asked for; other threads wait for it. */
    synchronized Bvh tree() {
        Bvh made = tree;
        if (made == null) {
            made = Bvh.make(this);
            tree = made;
        }
        return made;
    }

    public int triangleCount() {
        return corners.length / 3;
    }

    public int vertexCount() {
        return xyz.length / 3;
    }

    /** Vertex number of corner {@code k} (0..2) of a triangle. */
    public int corner(int triangle, int k) {
        return corners[3 * triangle + k];
    }

    public Vec3 vertex(int vertex) {
        return new Vec3(xyz[3 * vertex], xyz[3 * vertex + 1], xyz[3 * vertex + 2]);
    }

    /** Coordinate (axis 0..2) of a vertex, m. */
    public double coordinate(int vertex, int axis) {
        return xyz[3 * vertex + axis];
    }

    /** Position of corner {@code k} (0..2) of a triangle. */
    public Vec3 point(int triangle, int k) {
        return vertex(corner(triangle, k));
    }

    /** Twice the area times the unit normal. */
    public Vec3 doubleAreaVector(int triangle) {
        Vec3 a = point(triangle, 0);
        return point(triangle, 1).minus(a).cross(point(triangle, 2).minus(a));
    }

    public double areaM2(int triangle) {
        return 0.5 * doubleAreaVector(triangle).length();
    }

    /** Unit normal; the zero vector for a triangle without area. */
    public Vec3 normal(int triangle) {
        Vec3 n = doubleAreaVector(triangle);
        double l = n.length();
        return l > 0 ? n.times(1 / l) : Vec3.ZERO;
    }

    public Vec3 centroid(int triangle) {
        return point(triangle, 0)
                .plus(point(triangle, 1))
                .plus(point(triangle, 2))
                .times(1.0 / 3.0);
    }

    public Box3 bounds() {
        Box3 box = Box3.EMPTY;
        for (int v = 0; v < vertexCount(); v++) {
            box = box.including(vertex(v));
        }
        return box;
    }
}
