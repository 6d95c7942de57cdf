package baymist.cavity;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The bore of a tube as a regular prism, equal to it in cross-section: the corners lie at r sqrt((2 pi / n) / sin(2 pi / n)),
 * so that the polygon's area is pi r^2.
 */
final class TubePrism {
    /** Face number of the wall, see {@link #faceOf}. */
    static final int WALL = 0;

    private final List<Vec3> first = new ArrayList<>();
    private final List<Vec3> last = new ArrayList<>();
    private final Vec3 start;
    private final Vec3 along;
    private final double radiusM;
    private final ConvexBody body = new ConvexBody();

    TubePrism(Vec3 from, Vec3 to, double radiusM, int segments) {
        this.start = from;
        this.radiusM = radiusM;
        along = to.minus(from).unit();
        double step = 2 * Math.PI / segments;
        double corner = radiusM * Math.sqrt(step / Math.sin(step));
        Vec3 u = along.anyPerpendicular();
        Vec3 v = along.cross(u);
        for (int i = 0; i < segments; i++) {
            Vec3 spoke = u.times(corner * Math.cos(i * step)).plus(corner * Math.sin(i * step), v);
            first.add(from.plus(spoke));
            last.add(to.plus(spoke));
        }
        for (int i = 0; i < segments; i++) {
            Vec3 out = u.times(Math.cos((i + 0.5) * step)).plus(Math.sin((i + 0.5) * step), v);
            body.within(out, first.get(i));
        }
        body.within(along.negate(), from).within(along, to);
    }

    ConvexBody body() {
        return body;
    }

    double radiusM() {
        return radiusM;
    }

    /** Unit vector from the axis through a point off it, square to the axis. */
    Vec3 spoke(Vec3 p) {
        Vec3 d = p.minus(start);
        return d.plus(-d.dot(along), along).unit();
    }

    /** Sides of the wall, wound outward. */
    List<List<Vec3>> sides() {
        List<List<Vec3>> sides = new ArrayList<>();
        for (int i = 0; i < first.size(); i++) {
            int next = (i + 1) % first.size();
            sides.add(List.of(first.get(i), first.get(next), last.get(next), last.get(i)));
        }
        return sides;
    }

    /** The first (0) or last (1) end, wound outward. */
    List<Vec3> end(int which) {
        List<Vec3> rim = new ArrayList<>(which == 0 ? first : last);
        if (which == 0) {
            Collections.reverse(rim);
        }
        return rim;
    }

    /** 0 = the wall, 1 = the first end, 2 = the last, by the outward normal of a side. */
    int faceOf(Vec3 outward) {
        double cosine = outward.dot(along);
        return Math.abs(cosine) < 0.5 ? WALL : cosine < 0 ? 1 : 2;
    }
}
