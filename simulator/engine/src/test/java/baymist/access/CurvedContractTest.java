package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.EntrySpec;
import baymist.scene.Flexibility;
import baymist.scene.OpeningState;
import baymist.scene.WandMaterial;
import baymist.scene.WandPiece;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** What the searches for flexible wands and hook tubes promise, on random cavities, against {@link BodyOracle}, which shares nothing with them. */
class CurvedContractTest {
    private static final SourcePlace HERE = new SourcePlace("job.yaml", 12, "entries[1]");
    /** Chords of a body lie this far inside its arcs at most; then rounding. */
    private static final double SLACK_M = CurvedPath.SAGITTA_M + 1e-6;

    private static ReachProblem problem(Cavity cavity, WandSpec wand, int budget) {
        boolean[] open = new boolean[cavity.openings().size()];
        for (int i = 0; i < open.length; i++) {
            open[i] = cavity.openings().get(i).states().pass() == OpeningState.OPEN;
        }
        return new ReachProblem(
                Surroundings.of(cavity, open, List.of()),
                new EntrySpec("e", "port", null, HERE),
                wand,
                new ReachSettings(2e-3, budget, 6));
    }

    private static WandSpec flexible(Random random) {
        double d = 0.003 + 0.009 * random.nextDouble();
        double length = 0.2 + 0.8 * random.nextDouble();
        return new WandSpec(
                "flex",
                length,
                d,
                d / 2,
                HookFitTest.TIP,
                List.of(new WandPiece.Straight(length)),
                WandMaterial.NYLON,
                new Flexibility(
                        d * (4 + 12 * random.nextDouble()),
                        Math.PI * (0.3 + 2 * random.nextDouble()),
                        random.nextBoolean() ? 5 : Double.POSITIVE_INFINITY,
                        0.3),
                List.of(),
                d,
                0);
    }

    @Test
    void everyFlexibleWayIsFreeAndEveryStopIsNear() {
        Random random = new Random(1744);
        int feasible = 0;
        int deep = 0;
        for (int n = 0; n < 350; n++) {
            ReachProblem p = problem(RandomCavity.of(random), flexible(random), 400);
            WandReach reach = new FlexibleReach().search(p);
            String at = "cavity " + n + ", seed 1744";
            if (!reach.feasible()) {
                assertTrue(reach.tips().isEmpty() && reach.maxDepthM() == 0, at);
                continue;
            }
            feasible++;
            deep += reach.maxDepthM() > 0.2 ? 1 : 0;
            Flexibility flex = p.wand().flexibility();
            for (WandPose pose : spread(reach.tips())) {
                confirm(p, pose, at);
                assertTrue(pose.depthM() <= p.wand().lengthM() + 1e-9, at + ": longer than the wand");
                bendsAsAllowed(pose, flex, at);
            }
            stopIsNear(p, reach, at);
        }
        assertTrue(feasible > 250 && deep > 100, feasible + " feasible, " + deep + " deep");
    }

    @Test
    void everyHookIsFreeAndEveryStopIsNear() {
        Random random = new Random(1850);
        int feasible = 0;
        int bent = 0;
        for (int n = 0; n < 150; n++) {
            double d = 0.003 + 0.006 * random.nextDouble();
            double radius = d * (1.5 + 4 * random.nextDouble());
            WandSpec hook = HookFitTest.hook(
                    d,
                    0.05 + 0.1 * random.nextDouble(),
                    radius,
                    0.3 + 1.3 * random.nextDouble(),
                    0.01 + 0.04 * random.nextDouble());
            ReachProblem p = problem(RandomCavity.of(random), hook, 400);
            WandReach reach = new HookReach().search(p);
            String at = "cavity " + n + ", seed 1850";
            if (!reach.feasible()) {
                assertTrue(reach.tips().isEmpty() && reach.maxDepthM() == 0, at);
                continue;
            }
            feasible++;
            bent += reach.maxDepthM() > 0.05 ? 1 : 0;
            for (WandPose pose : spread(reach.tips())) {
                confirm(p, pose, at);
            }
            stopIsNear(p, reach, at);
        }
        assertTrue(feasible > 60 && bent > 30, feasible + " feasible, " + bent + " with the bend inside");
    }

    private static List<WandPose> spread(List<WandPose> tips) {
        return tips.size() < 3 ? tips : List.of(tips.get(0), tips.get(tips.size() / 2), tips.get(tips.size() - 1));
    }

    private static void confirm(ReachProblem p, WandPose pose, String at) {
        TriangleMesh mesh = p.surroundings().mesh();
        int own = p.opening().part();
        double r = pose.radiusM();
        double step = r / 3;
        Supplier<String> meets = () -> at + ": the body meets a sheet";
        assertTrue(
                BodyOracle.free(pose, mesh, step, SLACK_M, t -> p.surroundings().part(t) != own), meets);
        // the entry's own sheet counts once the body is past it; in it, the exact hole has judged
        WandPose beyond = beyond(
                pose, 2 * p.gaugeM() + 0.1 * p.opening().place().outline().reachM() + r);
        if (beyond != null) {
            assertTrue(
                    BodyOracle.free(
                            beyond, mesh, step, SLACK_M, t -> p.surroundings().part(t) == own),
                    meets);
        }
    }

    private static WandPose beyond(WandPose pose, double cutM) {
        List<Vec3> kept = new ArrayList<>();
        double gone = 0;
        List<Vec3> line = pose.centrelineM();
        for (int i = 0; i + 1 < line.size(); i++) {
            double length = line.get(i).distance(line.get(i + 1));
            if (gone <= cutM && gone + length > cutM) {
                kept.add(
                        line.get(i).plus((cutM - gone) / length, line.get(i + 1).minus(line.get(i))));
            }
            gone += length;
            if (gone > cutM) {
                kept.add(line.get(i + 1));
            }
        }
        return kept.size() < 2 ? null : new WandPose(kept, pose.radiusM(), pose.depthM());
    }

    /** Angle between chords over their mean length gives the curvature; the sum of angles the bend. */
    private static void bendsAsAllowed(WandPose pose, Flexibility flex, String at) {
        double sum = 0;
        List<Vec3> line = pose.centrelineM();
        for (int i = 1; i + 1 < line.size(); i++) {
            Vec3 a = line.get(i).minus(line.get(i - 1));
            Vec3 b = line.get(i + 1).minus(line.get(i));
            double angle = Math.atan2(a.cross(b).length(), a.dot(b));
            sum += angle;
            if (Math.min(a.length(), b.length()) > 1e-4) {
                assertTrue(
                        angle <= (a.length() + b.length()) / 2 / flex.minBendRadiusM() * 1.01 + 1e-4,
                        at + ": bent by " + angle + " in " + (a.length() + b.length()) / 2);
            }
        }
        assertTrue(sum <= flex.maxTotalBendRad() + 1e-3, at + ": bent by " + sum);
    }

    private static void stopIsNear(ReachProblem p, WandReach reach, String at) {
        WandStop stop = reach.stop();
        if (stop == null) {
            throw new AssertionError(at + ": no stop");
        }
        WandPose deepest = reach.tips().get(0);
        assertEquals(reach.maxDepthM(), deepest.depthM(), 1e-9, at);
        int triangles = 0;
        for (int t = 0; t < p.surroundings().mesh().triangleCount(); t++) {
            triangles += p.surroundings().name(t).equals(stop.partName()) ? 1 : 0;
        }
        if (triangles == 0) {
            assertTrue(List.of("wand length", "push limit").contains(stop.partName()), at + ": " + stop);
            return;
        }
        if (stop.why().contains("does not pass")) {
            return;
        }
        double onPart = Double.POSITIVE_INFINITY;
        double[] place = {stop.placeM().x(), stop.placeM().y(), stop.placeM().z()};
        for (int t = 0; t < p.surroundings().mesh().triangleCount(); t++) {
            if (p.surroundings().name(t).equals(stop.partName())) {
                double[][] corners = new double[3][];
                for (int k = 0; k < 3; k++) {
                    Vec3 v = p.surroundings().mesh().point(t, k);
                    corners[k] = new double[] {v.x(), v.y(), v.z()};
                }
                onPart = Math.min(onPart, BodyOracle.distance(place, corners));
            }
        }
        assertTrue(onPart < 1e-9, at + ": the place lies " + onPart + " off " + stop.partName());
        double off = Double.POSITIVE_INFINITY;
        List<Vec3> line = deepest.centrelineM();
        for (int i = 0; i + 1 < line.size(); i++) {
            for (int k = 0; k <= 400; k++) {
                Vec3 q = line.get(i).plus(k / 400.0, line.get(i + 1).minus(line.get(i)));
                off = Math.min(off, q.distance(stop.placeM()));
            }
        }
        assertTrue(
                off <= deepest.radiusM() + stop.clearanceM() + 1.5e-4,
                at + ": " + stop + " but " + off + " from a body of radius " + deepest.radiusM());
    }
}
