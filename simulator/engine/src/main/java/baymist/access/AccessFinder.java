package baymist.access;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.scene.EntrySpec;
import baymist.scene.WandAim;
import baymist.scene.WandSpec;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * How far a straight rigid wand goes into an entry, and what stops it: along the entry's direction through the roomiest place of the
 * opening, or along the best line for an aim ({@link RigidReach}).
 *
 * <p>Passing the hole: {@link HoleFit}. Depth: the swept flat-nosed cylinder ends at its first contact with a cut sheet, a closed opening or
 * an obstacle ({@link LineProbe}). Depth is counted along the axis from the plane of the opening to the nose.
 */
public final class AccessFinder {
    /** What {@link Insertion#stoppedBy()} says when nothing but the wand itself ends the insertion. */
    public static final String WAND_LENGTH = "wand length";

    private AccessFinder() {}

    /**
     * The insertion of a wand through an entry along the entry's direction.
     *
     * @param openInPass whether each opening stands open while spraying, [openings]
     * @return feasible or not, never null; an infeasible one has depth 0 and says why in {@code stoppedBy}
     * @throws baymist.problem.SceneException if the entry names no opening or its direction does not lead in
     */
    public static Insertion find(Cavity cavity, WandSpec wand, EntrySpec entry, boolean[] openInPass) {
        return find(
                new ReachProblem(Surroundings.of(cavity, openInPass, List.of()), entry, wand, ReachSettings.DEFAULT));
    }

    /**
     * The insertion for an aim.
     *
     * @param aim null = along the entry's direction; counts for straight wands alone
     * @param depthM depth that is wanted, m; infinite = as deep as it goes
     */
    public static Insertion find(ReachProblem p, @Nullable WandAim aim, double depthM) {
        if (p.wand().kind() != WandSpec.Kind.STRAIGHT) {
            return CurvedInsertion.find(p, aim);
        }
        return aim == null ? find(p) : new RigidReach().best(p, aim, depthM).insertion();
    }

    /** The insertion along the entry's direction. */
    public static Insertion find(ReachProblem p) {
        if (p.wand().kind() != WandSpec.Kind.STRAIGHT) {
            return CurvedInsertion.find(p, null);
        }
        int index = p.openingIndex();
        Vec3 axis = p.axis();
        LineProbe probe = new LineProbe(p);
        EntryRoom room = probe.room();
        double cos = axis.dot(room.place().normal());
        double tu = axis.dot(room.place().uAxis()) / cos;
        double tv = axis.dot(room.place().vAxis()) / cos;
        HoleFit fit = HoleFit.of(room, tu, tv, p.wand().thickestM());
        Vec3 origin = room.place().point(fit.u(), fit.v());
        String refusal = p.shut();
        if (refusal == null && fit.clearanceM() < 0) {
            refusal = String.format(
                    Locale.ROOT,
                    "'%s' is too small: a rod of %.3f mm lacks %.3f mm across",
                    p.opening().name(),
                    1e3 * p.wand().thickestM(),
                    -2e3 * fit.clearanceM());
        }
        if (refusal != null) {
            return refused(p, index, origin, axis, refusal, fit.clearanceM());
        }
        RodLine line = probe.line(fit.u(), fit.v(), tu, tv);
        WandStop stop = RigidReach.stop(p, line);
        return going(p, index, origin, axis, line.depthM(), stop.partName(), fit.clearanceM());
    }

    static Insertion refused(ReachProblem p, int opening, Vec3 origin, Vec3 axis, String why, double clearanceM) {
        return insertion(p, opening, origin, axis, 0, why, false, clearanceM);
    }

    static Insertion going(
            ReachProblem p, int opening, Vec3 origin, Vec3 axis, double depthM, String by, double clearanceM) {
        return insertion(p, opening, origin, axis, depthM, by, true, clearanceM);
    }

    private static Insertion insertion(
            ReachProblem p,
            int opening,
            Vec3 origin,
            Vec3 axis,
            double depthM,
            String by,
            boolean feasible,
            double clearanceM) {
        WandPath path = WandPath.straight(origin, axis, 0.5 * p.wand().thickestM(), depthM);
        return new Insertion(
                p.entry().name(), p.wand().name(), opening, origin, axis, depthM, by, feasible, clearanceM, path);
    }
}
