package baymist.bench;

import baymist.access.FlexRoutes;
import baymist.access.FlexibleReach;
import baymist.access.HookMotion;
import baymist.access.HookReach;
import baymist.access.ReachProblem;
import baymist.access.ReachSettings;
import baymist.access.Surroundings;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.geom.Box3;
import baymist.geom.Bvh;
import baymist.geom.Vec3;
import baymist.scene.EntrySpec;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import baymist.scene.io.SceneReader;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;

/**
 * Flexible wands and hooks of a scene in each of its entries: time, places gone on from and distance searches per second, and the latter against the rate at which this
 * machine searches single bounded distances at random points of the same tree. Run with a scene file as argument (left out = the sill); three rounds, the last counts most.
 */
public final class FlexibleReachBenchmark {
    private static final int POINTS = 300_000;
    private static final double NEAR_M = 0.03;

    private FlexibleReachBenchmark() {}

    public static void main(String[] args) {
        Scene scene = SceneReader.read(Path.of(args.length > 0 ? args[0] : "scenes/sill-flexible.yaml"));
        Cavity cavity = CavityBuilder.build(scene);
        Surroundings around = Surroundings.of(cavity, scene);
        for (int round = 0; round < 3; round++) {
            double best = distancesPerSecond(around.bvh());
            System.out.printf(
                    Locale.ROOT,
                    "%d triangles: %.0f thousand distances a second at random points%n",
                    around.mesh().triangleCount(),
                    best / 1e3);
            for (EntrySpec entry : scene.entries()) {
                for (WandSpec wand : scene.wands().values()) {
                    one(new ReachProblem(around, entry, wand, ReachSettings.DEFAULT), best);
                }
            }
        }
    }

    private static double distancesPerSecond(Bvh bvh) {
        Random random = new Random(1);
        Box3 box = bvh.mesh().bounds();
        Vec3 size = box.max().minus(box.min());
        double[] at = new double[3 * POINTS];
        for (int i = 0; i < at.length; i++) {
            at[i] = box.min().get(i % 3) + size.get(i % 3) * random.nextDouble();
        }
        double sum = 0;
        long start = System.nanoTime();
        for (int i = 0; i < POINTS; i++) {
            sum += bvh.distanceBelow(at[3 * i], at[3 * i + 1], at[3 * i + 2], NEAR_M);
        }
        double seconds = (System.nanoTime() - start) * 1e-9;
        return sum >= 0 ? POINTS / seconds : 0;
    }

    private static void one(ReachProblem p, double best) {
        long start = System.nanoTime();
        if (p.wand().kind() == WandSpec.Kind.FLEXIBLE) {
            FlexRoutes found = new FlexibleReach().routes(p);
            double s = (System.nanoTime() - start) * 1e-9;
            System.out.printf(
                    Locale.ROOT,
                    "%s, %s: %.2f s, %d ways, %.0f thousand pieces/s, %.1f thousand places/s, %.0f thousand distances/s (%.2f of"
                            + " random points'), %.0f thousand look-ups/s%n",
                    p.entry().name(),
                    p.wand().name(),
                    s,
                    found.routes().size(),
                    found.tried() / s / 1e3,
                    found.expanded() / s / 1e3,
                    found.distances() / s / 1e3,
                    found.distances() / s / best,
                    found.lookUps() / s / 1e3);
        } else if (p.wand().kind() == WandSpec.Kind.BENT) {
            HookMotion motion = new HookReach().motion(p, 0);
            double s = (System.nanoTime() - start) * 1e-9;
            System.out.printf(
                    Locale.ROOT,
                    "%s, %s: %.2f s, %.1f thousand bodies/s, depth %.0f mm%n",
                    p.entry().name(),
                    p.wand().name(),
                    s,
                    motion.tried() / s / 1e3,
                    1e3 * motion.depthM());
        }
    }
}
