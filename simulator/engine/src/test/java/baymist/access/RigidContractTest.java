package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.EntrySpec;
import baymist.scene.OpeningState;
import baymist.scene.TipSpec;
import baymist.scene.WandSpec;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What the search for straight wands promises, on random cavities, against checks that share nothing with it. */
class RigidContractTest {
    private static final SourcePlace HERE = new SourcePlace("job.yaml", 12, "entries[1]");

    private static ReachProblem problem(Cavity cavity, double rodM, double lengthM, int budget) {
        boolean[] open = new boolean[cavity.openings().size()];
        for (int i = 0; i < open.length; i++) {
            open[i] = cavity.openings().get(i).states().pass() == OpeningState.OPEN;
        }
        WandSpec wand = new WandSpec("w", lengthM, rodM, rodM / 2, new TipSpec("t", List.of()));
        return new ReachProblem(
                Surroundings.of(cavity, open, List.of()),
                new EntrySpec("e", "port", null, HERE),
                wand,
                new ReachSettings(2e-3, budget, 6));
    }

    @Test
    void everyWayInIsFreeAndEveryStopIsTouchedInAThousandCavities() {
        Random random = new Random(1957);
        int feasible = 0;
        int beyond = 0;
        for (int n = 0; n < 1000; n++) {
            Cavity cavity = RandomCavity.of(random);
            double rod = 0.003 + 0.012 * random.nextDouble();
            ReachProblem p = problem(cavity, rod, 0.2 + 0.8 * random.nextDouble(), 160);
            WandReach reach = new RigidReach().search(p);
            String at = "cavity " + n + ", seed 1957";
            if (!reach.feasible()) {
                assertTrue(reach.tips().isEmpty() && reach.maxDepthM() == 0, at);
                continue;
            }
            feasible++;
            WandPose deepest = reach.tips().get(0);
            assertEquals(reach.maxDepthM(), deepest.depthM(), 1e-12, at);
            beyond += deepest.tipM().y() > 0.3 ? 1 : 0;
            for (WandPose pose :
                    reach.tips().subList(0, Math.min(2, reach.tips().size()))) {
                confirm(p, pose, at);
            }
            stopIsTouched(p, deepest, reach.stop(), at);
        }
        assertTrue(feasible > 800 && beyond > 300, feasible + " feasible, " + beyond + " deep");
    }

    private static void confirm(ReachProblem p, WandPose pose, String at) {
        TriangleMesh mesh = p.surroundings().mesh();
        int own = p.opening().part();
        double r = pose.radiusM();
        // a rod may be cut short by its first sample at the plane of the opening: its own sheet is judged below
        assertTrue(
                BodyOracle.free(
                        pose, mesh, r / 3, 0.02 * r, t -> p.surroundings().part(t) != own),
                at + ": the body meets a sheet");
        Opening opening = p.opening();
        Vec3 axis = pose.tipAxis();
        Vec3 start = pose.centrelineM().get(0);
        for (int i = 0; i < 360; i++) {
            // the rod's surface where it crosses both faces of the sheet
            double psi = Math.toRadians(i);
            Vec3 a = axis.anyPerpendicular();
            Vec3 side = start.plus(r * Math.cos(psi), a).plus(r * Math.sin(psi), axis.cross(a));
            for (int face = -1; face <= 1; face += 2) {
                double h = (0.5 * face * p.gaugeM() - opening.place().heightM(side))
                        / axis.dot(opening.place().normal());
                Vec3 q = side.plus(h, axis);
                double room = opening.place()
                        .outline()
                        .clearanceM(opening.place().u(q), opening.place().v(q));
                assertTrue(room > -1e-9, at + ": the rod cuts the edge of its hole by " + room);
            }
        }
    }

    private static void stopIsTouched(ReachProblem p, WandPose pose, WandStop stop, String at) {
        Vec3 off = stop.placeM().minus(pose.tipM());
        double ahead = off.dot(pose.tipAxis());
        double aside = off.plus(-ahead, pose.tipAxis()).length();
        assertTrue(Math.abs(ahead) <= stop.clearanceM() + 1e-9, at + ": the stop lies " + ahead + " m ahead");
        assertTrue(aside <= pose.radiusM() + stop.clearanceM() + 1e-9, at + ": the stop lies aside");
        if (stop.partName().equals(AccessFinder.WAND_LENGTH)) {
            assertEquals(p.wand().lengthM(), pose.depthM(), 1e-12, at);
            return;
        }
        double least = Double.POSITIVE_INFINITY;
        TriangleMesh mesh = p.surroundings().mesh();
        double[] place = {stop.placeM().x(), stop.placeM().y(), stop.placeM().z()};
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (p.surroundings().name(t).equals(stop.partName())) {
                double[][] c = new double[3][];
                for (int k = 0; k < 3; k++) {
                    Vec3 v = mesh.point(t, k);
                    c[k] = new double[] {v.x(), v.y(), v.z()};
                }
                least = Math.min(least, BodyOracle.distance(place, c));
            }
        }
        assertTrue(least < 1e-9, at + ": the stop is " + least + " m off " + stop.partName());
    }

    @Test
    void noLineOfACellReachesFartherThanItsBound() {
        Random random = new Random(77);
        int bounded = 0;
        for (int n = 0; n < 150; n++) {
            ReachProblem p = problem(RandomCavity.of(random), 0.002 + 0.01 * random.nextDouble(), 2, 10);
            LineProbe probe = new LineProbe(p);
            Beam beam = new Beam(p, probe);
            for (int i = 0; i < 30; i++) {
                double scale = Math.pow(10, -3 * random.nextDouble());
                double[] half = {0.01 * scale, 0.01 * scale, 0.3 * scale, 0.3 * scale};
                RodLine middle = probe.line(
                        0.01 * random.nextGaussian(),
                        0.01 * random.nextGaussian(),
                        0.2 * random.nextGaussian(),
                        0.2 * random.nextGaussian());
                LineCell cell = beam.cell(middle, half, 2, 2);
                bounded += cell.depthM() < 2 ? 1 : 0;
                for (int k = 0; k < 20; k++) {
                    RodLine line = probe.line(
                            middle.u() + half[0] * sign(random),
                            middle.v() + half[1] * sign(random),
                            middle.tu() + half[2] * sign(random),
                            middle.tv() + half[3] * sign(random));
                    assertTrue(
                            line.depthM() <= cell.depthM() + 1e-9,
                            "cavity " + n + " cell " + i + ", seed 77: " + line.depthM() + " beyond " + cell.depthM());
                }
            }
        }
        assertTrue(bounded > 2500, bounded + " cells were bounded");
    }

    private static double sign(Random random) {
        return 2 * random.nextDouble() - 1;
    }

    @Test
    void noRandomLineWithRoomBeatsTheSearch() {
        Random random = new Random(4);
        int complete = 0;
        for (int n = 0; n < 20; n++) {
            double rod = 0.004 + 0.008 * random.nextDouble();
            ReachProblem p = problem(RandomCavity.of(random), rod, 1.5, 20_000);
            WandReach reach = new RigidReach().search(p);
            complete += reach.resolutionM() <= 2e-3 ? 1 : 0;
            // a rod thicker by the resolution all round stands for a line with that much room
            LineProbe thick = new LineProbe(problem(p.cavity(), rod + 2 * reach.resolutionM(), 1.5, 1));
            for (int i = 0; i < 2000; i++) {
                RodLine line =
                        thick.line(0.02 * sign(random), 0.02 * sign(random), 0.5 * sign(random), 0.5 * sign(random));
                assertTrue(
                        line.depthM() <= reach.maxDepthM() + 2.5e-3,
                        "cavity " + n + ", seed 4: " + line + " beats " + reach.maxDepthM());
            }
        }
        assertTrue(complete >= 12, complete + " of 20 searches were complete");
    }
}
