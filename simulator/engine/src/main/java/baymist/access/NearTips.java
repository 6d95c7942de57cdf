package baymist.access;

import baymist.geom.Ray;
import baymist.geom.TriangleFilter;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Tells whether a place of the tip is near and in sight. Tip places are sorted into boxes as wide as the distance that counts. One object serves
 * one thread.
 */
public final class NearTips {
    /** Nearest places from which a point is looked at. */
    private static final int LOOKS = 5;
    /** Places closer together than this share of the distance are one. */
    private static final double ONE_PLACE = 1.0 / 6;

    private final Surroundings around;
    private final double withinM;
    private final Map<Key, List<Vec3>> boxes = new HashMap<>();
    private final Ray ray = new Ray();

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
        for (Vec3 p : one.values()) {
            boxes.computeIfAbsent(Key.of(p, withinM), k -> new ArrayList<>()).add(p);
        }
    }

    /** Whether a tip place lies within the distance and no sheet between. */
    public boolean sees(Vec3 at) {
        List<Vec3> near = new ArrayList<>();
        Key k = Key.of(at, withinM);
        for (long dx = -1; dx <= 1; dx++) {
            for (long dy = -1; dy <= 1; dy++) {
                for (long dz = -1; dz <= 1; dz++) {
                    for (Vec3 p : boxes.getOrDefault(new Key(k.x + dx, k.y + dy, k.z + dz), List.of())) {
                        if (p.distance(at) <= withinM) {
                            near.add(p);
                        }
                    }
                }
            }
        }
        near.sort(Comparator.comparingDouble(p -> p.distance(at)));
        for (Vec3 p : near.subList(0, Math.min(LOOKS, near.size()))) {
            Vec3 way = at.minus(p);
            if (way.dot(way) == 0) {
                return true;
            }
            ray.set(p, way, 0, 1);
            if (!around.bvh().closestHit(ray, TriangleFilter.ALL)) {
                return true;
            }
        }
        return false;
    }
}
