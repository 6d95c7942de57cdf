package baymist.access;

import baymist.access.HookShape.Stretch;
import baymist.geom.Bvh;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;

/**
 * Where a hook tube in a hole touches sheets. The entry's own sheet counts from {@link #pastM} on either side of the hole on; the stretch within it has
 * been judged by the exact hole.
 */
final class HookSpace {
    /** Where a sheet is met. */
    record Touch(String part, Vec3 placeM, double clearanceM) {}

    private final FreeSpace own;
    private final FreeSpace others;
    private final double pastM;

    HookSpace(ReachProblem p, double tubeRadiusM) {
        Surroundings around = p.surroundings();
        int ownPart = p.opening().part();
        own = space(around, t -> around.part(t) == ownPart);
        others = space(around, t -> around.part(t) != ownPart);
        pastM = p.gaugeM() + 0.05 * p.opening().place().outline().reachM() + 0.2 * tubeRadiusM;
    }

    private static FreeSpace space(Surroundings around, IntPredicate takes) {
        TriangleMesh mesh = around.mesh();
        List<Integer> taken = new ArrayList<>();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (takes.test(t)) {
                taken.add(t);
            }
        }
        double[] xyz = new double[9 * taken.size()];
        int[] corners = new int[3 * taken.size()];
        for (int i = 0; i < taken.size(); i++) {
            for (int k = 0; k < 3; k++) {
                for (int axis = 0; axis < 3; axis++) {
                    xyz[9 * i + 3 * k + axis] = mesh.point(taken.get(i), k).get(axis);
                }
                corners[3 * i + k] = 3 * i + k;
            }
        }
        return new FreeSpace(Bvh.of(new TriangleMesh(xyz, corners)), i -> around.name(taken.get(i)), 0.008);
    }

    double pastM() {
        return pastM;
    }

    /**
     * Whether the tube is free of other sheets by at least {@code roomM}, and of its own entry's sheet by that where it is farther than {@code nearM} from the
     * hole, by nothing more nearer to it.
     */
    boolean free(HookPlace place, double roomM, double nearM) {
        double end = place.slideM();
        double begin = end - place.shape().lengthM();
        for (Stretch s : place.stretches(begin, end)) {
            if (!others.free(s.piece(), s.radiusM() + roomM)) {
                return false;
            }
        }
        double near = Math.max(pastM, nearM);
        return freeOfOwn(place, near, end, roomM)
                && freeOfOwn(place, begin, -near, roomM)
                && freeOfOwn(place, pastM, Math.min(near, end), 0)
                && freeOfOwn(place, Math.max(begin, -near), -pastM, 0);
    }

    private boolean freeOfOwn(HookPlace place, double from, double to, double roomM) {
        for (Stretch s : place.stretches(from, to)) {
            if (!own.free(s.piece(), s.radiusM() + roomM)) {
                return false;
            }
        }
        return true;
    }

    /** Nearest sheet to the tube beyond the hole, to 0.1 mm. */
    @Nullable
    Touch nearest(HookPlace place) {
        double end = place.slideM();
        double begin = end - place.shape().lengthM();
        Touch best = nearest(others, place.stretches(begin, end), null);
        best = nearest(own, place.stretches(pastM, end), best);
        return nearest(own, place.stretches(begin, -pastM), best);
    }

    private static @Nullable Touch nearest(FreeSpace space, List<Stretch> stretches, @Nullable Touch before) {
        Touch best = before;
        for (Stretch s : stretches) {
            FreeSpace.Block b = space.leastClearance(List.of(s.piece()), s.radiusM(), 1e-4);
            if (Double.isFinite(b.clearanceM()) && (best == null || b.clearanceM() < best.clearanceM())) {
                best = new Touch(b.part(), b.placeM(), b.clearanceM());
            }
        }
        return best;
    }

    long distances() {
        return own.exactQueries() + others.exactQueries();
    }
}
