package baymist.viewer.draw;

import baymist.geom.Vec3;

/**
 * What can be said once and for all of how a piece is seen: whether its triangles can hide each other at all, and from where all of them
 * are seen from behind. Sides seen from behind are not drawn.
 */
public final class PieceSight {
    /** Overlaps from dents less than this deep can't be seen, m. */
    private static final double DENT_M = 2e-6;

    private final Vec3 centre;
    private final double radiusM;
    private final Vec3 axis;
    /** Largest angle between a triangle's normal and the axis, rad. */
    private final double spreadRad;

    private final boolean bulging;

    /**
     * @param xyz corners' coordinates, m, [3 * vertices]
     * @param corners corner numbers, [3 * triangles of the surface]
     */
    public PieceSight(Piece piece, float[] xyz, int[] corners) {
        float[] c = piece.centre();
        centre = new Vec3(c[0], c[1], c[2]);
        int[] triangles = piece.triangles();
        Vec3[] normals = new Vec3[triangles.length];
        Vec3 sum = Vec3.ZERO;
        double radius = 0;
        for (int i = 0; i < normals.length; i++) {
            Vec3 a = at(xyz, corners, 3 * triangles[i]);
            Vec3 b = at(xyz, corners, 3 * triangles[i] + 1);
            Vec3 d = at(xyz, corners, 3 * triangles[i] + 2);
            radius = Math.max(radius, Math.max(a.distance(centre), Math.max(b.distance(centre), d.distance(centre))));
            Vec3 twice = b.minus(a).cross(d.minus(a));
            sum = sum.plus(twice);
            normals[i] = twice.length() > 0 ? twice.unit() : Vec3.ZERO;
        }
        radiusM = radius;
        axis = sum.length() > 0 ? sum.unit() : Vec3.X;
        double least = 1;
        for (Vec3 n : normals) {
            least = n.length() > 0 ? Math.min(least, n.dot(axis)) : least;
        }
        spreadRad = sum.length() > 0 ? Math.acos(Math.max(-1, Math.min(1, least))) : Math.PI;
        bulging = bulging(triangles, xyz, corners, normals);
    }

    private static Vec3 at(float[] xyz, int[] corners, int corner) {
        int v = 3 * corners[corner];
        return new Vec3(xyz[v], xyz[v + 1], xyz[v + 2]);
    }

    private static boolean bulging(int[] triangles, float[] xyz, int[] corners, Vec3[] normals) {
        for (int i = 0; i < normals.length; i++) {
            Vec3 n = normals[i];
            double plane = at(xyz, corners, 3 * triangles[i]).dot(n) + DENT_M;
            for (int t : triangles) {
                for (int k = 0; k < 3; k++) {
                    int v = 3 * corners[3 * t + k];
                    if (xyz[v] * n.x() + xyz[v + 1] * n.y() + xyz[v + 2] * n.z() > plane) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    /**
     * Whether no triangle seen from its front hides another one from anywhere: all corners lie behind every triangle's plane, so that the
     * piece is part of the skin of a convex body, which a line of sight enters once. Flat pieces are so.
     */
    public boolean neverHidesItself() {
        return bulging;
    }

    /**
     * Whether all triangles are seen from behind; may be false for some of which this holds, never the other way round.
     *
     * @param eye m, in the coordinates of the piece
     */
    public boolean fromBehind(Vec3 eye) {
        Vec3 to = eye.minus(centre);
        double distance = to.length();
        if (!(distance > radiusM)) {
            return false;
        }
        double off = Math.acos(Math.max(-1, Math.min(1, to.dot(axis) / distance)));
        return off - spreadRad - Math.asin(radiusM / distance) > Math.PI / 2;
    }
}
