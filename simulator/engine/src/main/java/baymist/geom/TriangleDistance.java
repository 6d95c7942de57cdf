package baymist.geom;

/**
 * Distances to a triangle in closed form. Sources: Ericson (2005), Real-Time Collision Detection, sections 5.1.5 (point) and
 * 5.1.9 (two segments); a segment is nearest to a triangle either where it pierces it, at one of its ends, or at one of the
 * triangle's edges.
 */
public final class TriangleDistance {
    private TriangleDistance() {}

    /** Point of triangle abc nearest to p. Triangles without area are treated as the segments that they are. */
    public static Vec3 closestPoint(Vec3 p, Vec3 a, Vec3 b, Vec3 c) {
        Vec3 ab = b.minus(a);
        Vec3 ac = c.minus(a);
        Vec3 n = ab.cross(ac);
        double n2 = n.dot(n);
        if (n2 > 0) {
            // barycentric weights of the foot point; inside the triangle when none is negative
            Vec3 ap = p.minus(a);
            double wb = ap.cross(ac).dot(n) / n2;
            double wc = ab.cross(ap).dot(n) / n2;
            if (wb >= 0 && wc >= 0 && wb + wc <= 1) {
                return a.plus(wb, ab).plus(wc, ac);
            }
        }
        Vec3 best = closestOnSegment(p, a, b);
        Vec3 second = closestOnSegment(p, b, c);
        if (second.distance(p) < best.distance(p)) {
            best = second;
        }
        Vec3 third = closestOnSegment(p, c, a);
        return third.distance(p) < best.distance(p) ? third : best;
    }

    /** Point of segment ab nearest to p. */
    public static Vec3 closestOnSegment(Vec3 p, Vec3 a, Vec3 b) {
        Vec3 d = b.minus(a);
        double l2 = d.dot(d);
        if (!(l2 > 0)) {
            return a;
        }
        double t = p.minus(a).dot(d) / l2;
        return t <= 0 ? a : t >= 1 ? b : a.plus(t, d);
    }

    /** Distance between segments p1p2 and q1q2, m. */
    public static double segmentSegmentM(Vec3 p1, Vec3 p2, Vec3 q1, Vec3 q2) {
        Vec3 u = p2.minus(p1);
        Vec3 v = q2.minus(q1);
        double best = Math.min(
                Math.min(
                        closestOnSegment(p1, q1, q2).distance(p1),
                        closestOnSegment(p2, q1, q2).distance(p2)),
                Math.min(
                        closestOnSegment(q1, p1, p2).distance(q1),
                        closestOnSegment(q2, p1, p2).distance(q2)));
        // both feet inside: the distance of the two lines along their common normal
        Vec3 n = u.cross(v);
        double n2 = n.dot(n);
        if (n2 > 1e-28 * u.dot(u) * v.dot(v)) {
            Vec3 w = q1.minus(p1);
            double s = w.cross(v).dot(n) / n2;
            double t = w.cross(u).dot(n) / n2;
            if (s > 0 && s < 1 && t > 0 && t < 1) {
                best = Math.min(best, Math.abs(w.dot(n)) / Math.sqrt(n2));
            }
        }
        return best;
    }

    /** Distance between segment pq and triangle abc, m; 0 where they cross. */
    public static double segmentTriangleM(Vec3 p, Vec3 q, Vec3 a, Vec3 b, Vec3 c) {
        if (pierces(p, q, a, b, c)) {
            return 0;
        }
        double best = Math.min(
                closestPoint(p, a, b, c).distance(p), closestPoint(q, a, b, c).distance(q));
        best = Math.min(best, segmentSegmentM(p, q, a, b));
        best = Math.min(best, segmentSegmentM(p, q, b, c));
        return Math.min(best, segmentSegmentM(p, q, c, a));
    }

    /** Whether the segment meets the triangle's inside or rim with its ends on different sides of the plane; exact. */
    static boolean pierces(Vec3 p, Vec3 q, Vec3 a, Vec3 b, Vec3 c) {
        int sideP = Predicates.orient3d(a, b, c, p);
        int sideQ = Predicates.orient3d(a, b, c, q);
        if (sideP * sideQ >= 0) {
            return false;
        }
        int e1 = Predicates.orient3d(p, q, a, b);
        int e2 = Predicates.orient3d(p, q, b, c);
        int e3 = Predicates.orient3d(p, q, c, a);
        return (e1 >= 0 && e2 >= 0 && e3 >= 0) || (e1 <= 0 && e2 <= 0 && e3 <= 0);
    }
}
