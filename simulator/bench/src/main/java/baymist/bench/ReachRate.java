package baymist.bench;

import baymist.access.Insertion;
import baymist.access.ReachProblem;
import baymist.access.ReachSettings;
import baymist.access.RigidReach;
import baymist.access.Surroundings;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.geom.Bvh;
import baymist.geom.TriangleFilter;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.EntrySpec;
import baymist.scene.Scene;
import baymist.scene.WandAim;
import baymist.scene.WandSpec;
import baymist.scene.io.SceneReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * All entries of a scene by all of its straight wands and a needle, a thin and a thick rod of 2.4 m: time, lines tried per second, and
 * that against the rate at which this machine casts single rays in the same tree, the cheapest thing a line could cost. Run with the scene file and
 * the number of threads as arguments.
 */
public final class ReachRate {
    private static final int ROUNDS = 3;
    private static final int RAYS = 400_000;

    private ReachRate() {}

    public static void main(String[] args) {
        Scene scene = SceneReader.read(Path.of(args.length > 0 ? args[0] : "scenes/wing-box.yaml"));
        int threads = args.length > 1 ? Integer.parseInt(args[1]) : 2;
        Cavity cavity = CavityBuilder.build(scene);
        Surroundings around = Surroundings.of(cavity, scene);
        List<ReachProblem> problems = problems(scene, around);
        for (int round = 0; round < ROUNDS; round++) {
            double rays = raysPerSecond(around.bvh());
            round(problems, threads, rays, round == ROUNDS - 1);
        }
    }

    /** Lines tried a second, best of the rounds. */
    static double linesPerS(Scene scene, int threads) {
        List<ReachProblem> problems = problems(scene, Surroundings.of(CavityBuilder.build(scene), scene));
        double best = 0;
        for (int round = 0; round < ROUNDS; round++) {
            best = Math.max(best, round(problems, threads, 1, false));
        }
        return best;
    }

    private static List<ReachProblem> problems(Scene scene, Surroundings around) {
        List<WandSpec> wands = new ArrayList<>(scene.wands().values());
        wands.removeIf(w -> w.kind() != WandSpec.Kind.STRAIGHT);
        wands.sort(Comparator.comparing(WandSpec::name));
        for (double d : new double[] {3.175e-3, 6.35e-3, 12.7e-3}) {
            String name = String.format(Locale.ROOT, "rod of %.2f mm x 2.4 m", 1e3 * d);
            wands.add(new WandSpec(name, 2.4, d, d / 2, wands.get(0).tip()));
        }
        List<ReachProblem> problems = new ArrayList<>();
        for (EntrySpec entry : scene.entries()) {
            wands.forEach(w -> problems.add(new ReachProblem(around, entry, w, ReachSettings.DEFAULT)));
        }
        return problems;
    }

    private static double round(List<ReachProblem> problems, int threads, double raysPerSecond, boolean tell) {
        RigidReach.Choice[] found = new RigidReach.Choice[problems.size()];
        long begin = System.nanoTime();
        try (Workers workers = new Workers(threads)) {
            workers.forEach(
                    found.length,
                    i -> found[i] =
                            new RigidReach().best(problems.get(i), new WandAim.Deepest(), Double.POSITIVE_INFINITY));
        }
        double seconds = 1e-9 * (System.nanoTime() - begin);
        long lines = 0;
        for (RigidReach.Choice c : found) {
            lines += c.linesTried();
            Insertion in = c.insertion();
            if (tell) {
                System.out.printf(
                        Locale.ROOT,
                        "%-24s %-28s %7.1f mm  %-22s %6d lines, resolved to %.1f mm%n",
                        in.entry(),
                        in.wand(),
                        1e3 * in.maxDepthM(),
                        in.stoppedBy(),
                        c.linesTried(),
                        1e3 * c.resolutionM());
            }
        }
        if (!tell) {
            return lines / seconds;
        }
        System.out.printf(
                Locale.ROOT,
                "%d searches on %d threads: %.2f s, %.0f lines/s, %.2f of the rate of single rays (%.0f rays/s on one thread)%n",
                found.length,
                threads,
                seconds,
                lines / seconds,
                lines / seconds / (raysPerSecond * threads),
                raysPerSecond);
        return lines / seconds;
    }

    /** Rays from the middle of the mesh in all directions, closest hit, one thread. */
    private static double raysPerSecond(Bvh bvh) {
        Random random = new Random(1);
        Vec3 centre = bvh.mesh().bounds().centre();
        Vec3[] ways = new Vec3[1024];
        for (int i = 0; i < ways.length; i++) {
            ways[i] = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
        }
        long begin = System.nanoTime();
        int hits = 0;
        for (int i = 0; i < RAYS; i++) {
            hits += bvh.closestHit(centre, ways[i % ways.length], 0, 10, TriangleFilter.ALL) != null ? 1 : 0;
        }
        double seconds = 1e-9 * (System.nanoTime() - begin);
        if (hits == 0) {
            System.out.println("no ray met anything");
        }
        return RAYS / seconds;
    }
}
