package baymist.access;

import baymist.geom.Ray;
import baymist.geom.TriangleFilter;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Tells whether a place of the tip is near and in sight. Tip places are sorted into boxes as wide as the distance that counts. One object
 * serves one thread.
 */
public final class NearTips {
    /** Nearest places from which a point is looked at. */
    private static final int LOOKS = 5;
    /** Places closer together than this share of the distance are one. */
    private static final double ONE_PLACE = 1.0 / 6;

    private final Surroundings around;
    private final double withinM;
    /** Coordinates of the places in each box, m, [3 * places]. */
    private final Map<Key, double[]> boxes = new HashMap<>();

    private final Ray ray = new Ray();
    /** Nearest places of the point that is being looked at, nearest first, [LOOKS]; squared distances beside them. */
    private final Vec3[] nearest = new Vec3[LOOKS];

    private final double[] squared = new double[LOOKS];

    private record Key(long x, long y, long z) {
        static Key of(Vec3 p, double size) {
            return new Key(
                    (long) Math.floor(p.x() / size), (long) Math.floor(p.y() / size), (long) Math.floor(p.z() / size));
        }
    }

    /**
     * Sorts the places.
     *
     * @param places where the tip can be, m
     * @param withinM distance that counts as near, m
     */
    public NearTips(Surroundings around, List<Vec3> places, double withinM) {
        this.around = around;
        this.withinM = withinM;
        Map<Key, Vec3> one = new LinkedHashMap<>();
        for (Vec3 p : places) {
            one.putIfAbsent(Key.of(p, withinM * ONE_PLACE), p);
        }
        Map<Key, List<Vec3>> sorted = new LinkedHashMap<>();
        for (Vec3 p : one.values()) {
            sorted.computeIfAbsent(Key.of(p, withinM), k -> new ArrayList<>()).add(p);
        }
        sorted.forEach((key, list) -> {
            double[] flat = new double[3 * list.size()];
            for (int i = 0; i < list.size(); i++) {
                flat[3 * i] = list.get(i).x();
                flat[3 * i + 1] = list.get(i).y();
                flat[3 * i + 2] = list.get(i).z();
            }
            boxes.put(key, flat);
        });
    }

    /** Whether a tip place lies within the distance and no sheet between. */
    public boolean sees(Vec3 at) {
        int found = findNearest(at);
        for (int i = 0; i < found; i++) {
            Vec3 way = at.minus(nearest[i]);
            if (way.dot(way) == 0) {
                return true;
            }
            ray.set(nearest[i], way, 0, 1);
            if (!around.bvh().closestHit(ray, TriangleFilter.ALL)) {
                return true;
            }
        }
        return false;
    }

    private int findNearest(Vec3 at) {
        int found = 0;
        Key k = Key.of(at, withinM);
        for (long dx = -1; dx <= 1; dx++) {
            for (long dy = -1; dy <= 1; dy++) {
                for (long dz = -1; dz <= 1; dz++) {
                    double[] box = boxes.get(new Key(k.x + dx, k.y + dy, k.z + dz));
                    found = box == null ? found : take(box, at, found);
                }
            }
        }
        return found;
    }

    /** Takes the places of a box among the nearest; of equally near ones the first stays. */
    private int take(double[] box, Vec3 at, int before) {
        int found = before;
        for (int i = 0; i < box.length; i += 3) {
            double x = box[i] - at.x();
            double y = box[i + 1] - at.y();
            double z = box[i + 2] - at.z();
            double d = x * x + y * y + z * z;
            if (d > withinM * withinM || (found == LOOKS && d >= squared[LOOKS - 1])) {
                continue;
            }
            int slot = Math.min(found, LOOKS - 1);
            while (slot > 0 && squared[slot - 1] > d) {
                squared[slot] = squared[slot - 1];
                nearest[slot] = nearest[slot - 1];
                slot--;
            }
            squared[slot] = d;
            nearest[slot] = new Vec3(box[i], box[i + 1], box[i + 2]);
            found = Math.min(LOOKS, found + 1);
        }
        return found;
    }
}
