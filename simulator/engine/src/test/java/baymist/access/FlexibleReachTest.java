package baymist.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.cavity.Cavity;
import baymist.geom.Outline;
import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.EntrySpec;
import baymist.scene.Flexibility;
import baymist.scene.WandMaterial;
import baymist.scene.WandPiece;
import baymist.scene.WandSpec;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;

class FlexibleReachTest {
    private static final SourcePlace HERE = new SourcePlace("job.yaml", 12, "entries[1]");

    static WandSpec flexible(double lengthM, double bendM, double totalRad, double pushN) {
        return new WandSpec(
                "flex",
                lengthM,
                0.006,
                0.003,
                HookFitTest.TIP,
                List.of(new WandPiece.Straight(lengthM)),
                WandMaterial.NYLON,
                new Flexibility(bendM, totalRad, pushN, 0.3),
                List.of(),
                0.006,
                0);
    }

    /** An L of square section 0.1 m: along y for 0.5 m, then along x for 0.5 m; entry in the near end. */
    private static Cavity corner() {
        double w = 0.1;
        return new TestCavity()
                .sheet(
                        "near end",
                        Vec3.ZERO,
                        new Vec3(w, 0, 0),
                        new Vec3(0, 0, w),
                        new TestCavity.Hole(
                                "port",
                                new Outline.Circle(0.012),
                                new Vec3(0.05, 0, 0.05),
                                Vec3.Y,
                                true,
                                TestCavity.OPEN))
                .sheet("outer wall", Vec3.ZERO, new Vec3(0, 0.5, 0), new Vec3(0, 0, w))
                .sheet("inner wall", new Vec3(w, 0, 0), new Vec3(0, 0.4, 0), new Vec3(0, 0, w))
                .sheet("outer leg", new Vec3(0, 0.5, 0), new Vec3(0.5, 0, 0), new Vec3(0, 0, w))
                .sheet("inner leg", new Vec3(w, 0.4, 0), new Vec3(0.4, 0, 0), new Vec3(0, 0, w))
                .sheet("far end", new Vec3(0.5, 0.4, 0), new Vec3(0, 0.1, 0), new Vec3(0, 0, w))
                .sheet("floor 1", Vec3.ZERO, new Vec3(w, 0, 0), new Vec3(0, 0.5, 0))
                .sheet("floor 2", new Vec3(w, 0.4, 0), new Vec3(0.4, 0, 0), new Vec3(0, 0.1, 0))
                .sheet("roof 1", new Vec3(0, 0, w), new Vec3(w, 0, 0), new Vec3(0, 0.5, 0))
                .sheet("roof 2", new Vec3(w, 0.4, w), new Vec3(0.4, 0, 0), new Vec3(0, 0.1, 0))
                .build();
    }

    private static ReachProblem problem(Cavity cavity, WandSpec wand, int budget) {
        boolean[] open = new boolean[cavity.openings().size()];
        java.util.Arrays.fill(open, true);
        return new ReachProblem(
                Surroundings.of(cavity, open, List.of()),
                new EntrySpec("e", "port", null, HERE),
                wand,
                new ReachSettings(2e-3, budget, 50));
    }

    private static boolean roundTheCorner(WandReach reach) {
        return reach.tips().stream().anyMatch(t -> t.tipM().x() > 0.4);
    }

    @Test
    void flexibleWandTurnsTheCornerThatAStraightRodCannot() {
        Cavity cavity = corner();
        WandReach soft = new FlexibleReach().search(problem(cavity, flexible(1.2, 0.05, 6, 1e9), 12_000));
        assertTrue(roundTheCorner(soft));
        WandSpec rod = new WandSpec("rod", 1.2, 0.006, 0.003, HookFitTest.TIP);
        assertFalse(roundTheCorner(new RigidReach().search(problem(cavity, rod, 12_000))));
        WandReach stiff = new FlexibleReach().search(problem(cavity, flexible(1.2, 0.6, 6, 1e9), 12_000));
        assertFalse(roundTheCorner(stiff), "0.6 m radius does not turn in 0.1 m");
    }

    @Test
    void totalBendAndLengthEndAWandWhereTheyAreUsedUp() {
        Cavity cavity = corner();
        WandReach little = new FlexibleReach().search(problem(cavity, flexible(1.2, 0.05, 0.6, 1e9), 12_000));
        assertFalse(roundTheCorner(little), "34 degrees do not turn a right angle");
        WandReach shorter = new FlexibleReach().search(problem(cavity, flexible(0.3, 0.05, 6, 1e9), 12_000));
        assertEquals(0.3, shorter.maxDepthM(), 1e-6);
        assertEquals(AccessFinder.WAND_LENGTH, shorter.stop().partName());
    }

    @Test
    void weakPushEndsAWandBeforeTheFarEnd() {
        Cavity cavity = corner();
        double full = new FlexibleReach()
                .search(problem(cavity, flexible(1.2, 0.05, 6, 1e9), 12_000))
                .maxDepthM();
        FlexRoutes weak = new FlexibleReach().routes(problem(cavity, flexible(1.2, 0.05, 6, 1.3), 12_000));
        double deepest =
                weak.routes().stream().mapToDouble(FlexRoute::depthM).max().orElse(0);
        assertTrue(deepest < full - 0.05, deepest + " against " + full);
        for (FlexRoute r : weak.routes()) {
            assertTrue(r.pushN() <= 1.3 + 1e-9);
        }
    }

    @Test
    void sameResultTwiceAndOnAnyThread() {
        ReachProblem p = problem(corner(), flexible(1.2, 0.05, 6, 20), 4000);
        List<CompletableFuture<WandReach>> both = List.of(
                CompletableFuture.supplyAsync(() -> new FlexibleReach().search(p)),
                CompletableFuture.supplyAsync(() -> new FlexibleReach().search(p)));
        WandReach here = new FlexibleReach().search(p);
        both.forEach(f -> assertEquals(here, f.join()));
    }

    @Test
    void moreBudgetNeverLosesAPlaceOfTheFirstVisits() {
        Cavity cavity = corner();
        double before = 0;
        for (int budget : new int[] {500, 2000, 8000}) {
            double far = new FlexibleReach()
                    .search(problem(cavity, flexible(1.2, 0.05, 6, 1e9), budget)).tips().stream()
                            .mapToDouble(t -> t.tipM().x())
                            .max()
                            .orElse(0);
            assertTrue(far >= before - 0.03, budget + " pieces reach " + far + ", fewer reached " + before);
            before = far;
        }
        assertTrue(before > 0.4);
    }

    @Test
    void aSearchSaysWhetherItsBudgetEndedIt() {
        Cavity cavity = corner();
        WandSpec shortOne = flexible(0.2, 0.05, 6, 1e9);
        assertFalse(new FlexibleReach()
                .search(problem(cavity, flexible(1.2, 0.05, 6, 1e9), 100))
                .complete());
        assertTrue(
                new FlexibleReach().search(problem(cavity, shortOne, 1_000_000)).complete());
    }

    // Euler (1769), Eytelwein (1808): F = F0 exp(mu theta). With weight: the differential equation integrated by
    // Runge-Kutta.
    @Test
    void pushFollowsTheCapstanEquation() {
        Heading start = new Heading(Vec3.ZERO, Vec3.X);
        PathPiece quarter = new PathPiece(start, Vec3.Y, 1 / 0.05, 0.05 * Math.PI / 2);
        PushForce twice = PushForce.NONE.beyond(quarter, 0.3, 0).beyond(quarter, 0.3, 0);
        assertEquals(Math.exp(0.3 * Math.PI), twice.atHandN(1), 1e-12);
        PushForce heavy = PushForce.NONE
                .beyond(PathPiece.straight(start, 0.8), 0.3, 0.5)
                .beyond(quarter, 0.3, 0.5)
                .beyond(PathPiece.straight(start, 0.2), 0.3, 0.5);
        double f = 2;
        f = integrate(f, 0.2, 0);
        f = integrate(f, quarter.lengthM(), 1 / 0.05);
        f = integrate(f, 0.8, 0);
        assertEquals(f, heavy.atHandN(2), 1e-9);
    }

    private static double integrate(double force, double lengthM, double curvature) {
        int n = 2000;
        double h = lengthM / n;
        double f = force;
        for (int i = 0; i < n; i++) {
            double k1 = 0.3 * (curvature * f + 0.5);
            double k2 = 0.3 * (curvature * (f + h / 2 * k1) + 0.5);
            double k3 = 0.3 * (curvature * (f + h / 2 * k2) + 0.5);
            double k4 = 0.3 * (curvature * (f + h * k3) + 0.5);
            f += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
        }
        return f;
    }

    @Test
    void storyNamesEntryDegreesAndStop() {
        ReachProblem p = problem(corner(), flexible(1.2, 0.05, 6, 40), 12_000);
        FlexRoutes routes = new FlexibleReach().routes(p);
        String told = RouteStory.of(p, routes.routes().get(0));
        assertTrue(told.startsWith("Feed the flex in at e"), told);
        assertTrue(told.contains("degrees") && told.contains("N to push"), told);
        String reach = RouteStory.of(p, new FlexibleReach().search(p));
        assertTrue(reach.contains("goes in at e for"), reach);
    }

    @Test
    void tooThickAWandIsRefusedInWords() {
        Cavity cavity = corner();
        WandSpec thick = new WandSpec(
                "thick",
                1,
                0.03,
                0.003,
                HookFitTest.TIP,
                List.of(new WandPiece.Straight(1)),
                WandMaterial.NYLON,
                new Flexibility(0.1, 6, 40, 0.3),
                List.of(),
                0.03,
                0);
        WandReach none = new FlexibleReach().search(problem(cavity, thick, 1000));
        assertFalse(none.feasible());
        assertTrue(
                none.stop().why().contains("'port' is too small"), none.stop().why());
    }
}
