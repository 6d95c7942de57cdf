package baymist.voxel;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/** Few places that tell the course of a way through many cells (Ramer 1972, Douglas and Peucker 1973). */
final class WayPoints {
    /** Most places that are told. */
    static final int MOST = 7;

    private WayPoints() {}

    /**
     * The ends of a way and the corners between them: those farthest from the straight line first, until every place lies
     * within a tolerance or there are {@value #MOST}.
     */
    static List<Vec3> of(List<Vec3> way, double toleranceM) {
        if (way.size() < 3) {
            return List.copyOf(way);
        }
        List<Integer> kept = new ArrayList<>(List.of(0, way.size() - 1));
        while (kept.size() < MOST) {
            int worst = -1;
            int after = 0;
            double most = toleranceM;
            for (int k = 0; k + 1 < kept.size(); k++) {
                for (int i = kept.get(k) + 1; i < kept.get(k + 1); i++) {
                    double off = offLine(way.get(i), way.get(kept.get(k)), way.get(kept.get(k + 1)));
                    if (off > most) {
                        most = off;
                        worst = i;
                        after = k;
                    }
                }
            }
            if (worst < 0) {
                break;
            }
            kept.add(after + 1, worst);
        }
        return kept.stream().map(way::get).toList();
    }

    private static double offLine(Vec3 p, Vec3 a, Vec3 b) {
        Vec3 ab = b.minus(a);
        double length2 = ab.dot(ab);
        double t = length2 > 0 ? Math.max(0, Math.min(1, p.minus(a).dot(ab) / length2)) : 0;
        return p.distance(a.plus(t, ab));
    }
}
