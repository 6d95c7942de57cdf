package baymist.access;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.scene.WandAim;
import baymist.scene.WandSpec;
import org.jspecify.annotations.Nullable;

/** The insertion of a flexible wand or a hook tube, for passes. */
final class CurvedInsertion {
    private CurvedInsertion() {}

    /** @param aim null or deepest = the way that goes deepest; near = the way whose tip comes nearest to the region (flexible wands) */
    static Insertion find(ReachProblem p, @Nullable WandAim aim) {
        return p.wand().kind() == WandSpec.Kind.FLEXIBLE ? flexible(p, aim) : hook(p);
    }

    private static Insertion flexible(ReachProblem p, @Nullable WandAim aim) {
        Box3 region = aim instanceof WandAim.Near near ? near.region() : null;
        FlexRoutes found = new FlexibleReach().routes(p, region);
        if (found.routes().isEmpty()) {
            return AccessFinder.refused(
                    p,
                    p.openingIndex(),
                    p.opening().place().centreM(),
                    p.axis(),
                    found.refusal().why(),
                    found.refusal().clearanceM());
        }
        FlexRoute route = found.routes().get(0);
        return of(p, route.path(), route.depthM(), route.stop(), found.playM());
    }

    private static Insertion hook(ReachProblem p) {
        HookMotion motion = new HookReach().motion(p, 0);
        if (motion.steps().isEmpty()) {
            return AccessFinder.refused(
                    p,
                    p.openingIndex(),
                    p.opening().place().centreM(),
                    p.axis(),
                    motion.stop().why(),
                    motion.stop().clearanceM());
        }
        double play = motion.steps().stream()
                .mapToDouble(HookMotion.Step::holeClearanceM)
                .min()
                .orElse(0);
        return of(p, motion.path(), motion.depthM(), motion.stop(), play);
    }

    private static Insertion of(ReachProblem p, WandPath path, double depthM, WandStop stop, double playM) {
        WandPose body = path.body(depthM);
        Vec3 origin = body.centrelineM().get(0);
        Vec3 axis = body.centrelineM().get(1).minus(origin).unit();
        return new Insertion(
                p.entry().name(),
                p.wand().name(),
                p.openingIndex(),
                origin,
                axis,
                depthM,
                stop.partName(),
                true,
                playM,
                path);
    }
}
