package baymist.cavity;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * Splits triangles along a level plane, so that a floor shares its vertices with the skin. A new vertex is worked out from
 * its edge's ends in one order, so that neighbours find the same point to the bit.
 */
final class LevelCut {
    private final double upM;

    LevelCut(double upM) {
        this.upM = upM;
    }

    /** A triangle of a part while the sheets are being made. */
    record Facet(int part, Vec3 a, Vec3 b, Vec3 c) {}

    List<Facet> split(List<Facet> facets) {
        List<Facet> out = new ArrayList<>();
        for (Facet f : facets) {
            Vec3[] p = {f.a(), f.b(), f.c()};
            int alone = -1;
            for (int k = 0; k < 3; k++) {
                int here = side(p[k]);
                int next = side(p[(k + 1) % 3]);
                int last = side(p[(k + 2) % 3]);
                if (here != 0 && here != next && here != last && (next != 0 || last != 0)) {
                    alone = k;
                }
            }
            if (alone < 0) {
                out.add(f);
            } else {
                around(f.part(), p[alone], p[(alone + 1) % 3], p[(alone + 2) % 3], out);
            }
        }
        return out;
    }

    private int side(Vec3 p) {
        return Double.compare(p.z(), upM);
    }

    /** Corner a lies on one side; b and c lie on the other or on the plane, not both on it. */
    private void around(int part, Vec3 a, Vec3 b, Vec3 c, List<Facet> out) {
        Vec3 ab = side(b) == 0 ? b : on(a, b);
        Vec3 ca = side(c) == 0 ? c : on(c, a);
        out.add(new Facet(part, a, ab, ca));
        if (side(b) == 0) {
            out.add(new Facet(part, b, c, ca));
        } else if (side(c) == 0) {
            out.add(new Facet(part, ab, b, c));
        } else {
            out.add(new Facet(part, ab, b, c));
            out.add(new Facet(part, ab, c, ca));
        }
    }

    private Vec3 on(Vec3 p, Vec3 q) {
        Vec3 low = p.z() < q.z() ? p : q;
        Vec3 high = p.z() < q.z() ? q : p;
        double s = (upM - low.z()) / (high.z() - low.z());
        return new Vec3(low.x() + s * (high.x() - low.x()), low.y() + s * (high.y() - low.y()), upM);
    }
}
