package baymist.size;

import baymist.access.AccessFinder;
import baymist.access.Insertion;
import baymist.access.ReachProblem;
import baymist.access.ReachSettings;
import baymist.access.Sag;
import baymist.access.SagResult;
import baymist.access.SmallestHole;
import baymist.access.Surroundings;
import baymist.access.TubeSection;
import baymist.access.WandPath;
import baymist.scene.EntrySpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How far a design goes in by the entries of a job's passes, mark by mark.
 *
 * @param refusal why it does not go in by one of them, or null
 * @param depthM greatest depth of a wand of so many marks over all passes, m, [marks], index = marks - 1; it ends where a longer wand goes no deeper
 * @param endedBy what ends the deepest insertion: name of a part, or {@link AccessFinder#WAND_LENGTH}
 * @param holeM smallest round hole in the sheets of these entries that the wand passes, m
 * @param insertions of the longest wand, one for each pass
 */
record Way(@Nullable String refusal, double[] depthM, String endedBy, double holeM, List<Insertion> insertions) {
    Way {
        insertions = List.copyOf(insertions);
    }

    static Way of(Scene scene, Surroundings around, Design design, SizeRequest request) {
        int most = (int) Math.floor(request.mostM() / request.markM() + 1e-9);
        int least = Math.max(1, (int) Math.ceil(design.leastM() / request.markM() - 1e-9));
        if (least > most) {
            return refused("its bend alone takes " + Tube.mm(design.leastM()) + " mm of tube", design, around, scene);
        }
        List<Insertion> longest = insertions(scene, around, design.wand(most * request.markM()));
        for (Insertion in : longest) {
            if (!in.feasible() && (scene.obstacles().isEmpty() || most == least)) {
                return refused(in.stoppedBy(), design, around, scene);
            }
        }
        List<Double> depths = new ArrayList<>();
        double deepest = deepest(longest);
        for (int k = 1; k <= most; k++) {
            double length = k * request.markM();
            double depth = Math.min(length, deepest);
            if (!scene.obstacles().isEmpty()) {
                // what stands outside may let a short wand in and keep a long one out
                longest = k < least ? longest : insertions(scene, around, design.wand(length));
                depth = longest.stream().allMatch(Insertion::feasible) ? deepest(longest) : 0;
            }
            depths.add(k < least ? 0 : depth);
            if (scene.obstacles().isEmpty() && length >= deepest) {
                break;
            }
        }
        double[] all = depths.stream().mapToDouble(d -> d).toArray();
        return new Way(null, all, endedBy(longest), hole(scene, around, design), longest);
    }

    private static Way refused(String why, Design design, Surroundings around, Scene scene) {
        return new Way(why, new double[0], "", hole(scene, around, design), List.of());
    }

    private static double deepest(List<Insertion> all) {
        return all.stream().mapToDouble(Insertion::maxDepthM).max().orElse(0);
    }

    private static String endedBy(List<Insertion> all) {
        Insertion best = all.get(0);
        for (Insertion in : all) {
            best = in.maxDepthM() > best.maxDepthM() ? in : best;
        }
        return best.stoppedBy();
    }

    private static List<Insertion> insertions(Scene scene, Surroundings around, WandSpec wand) {
        List<Insertion> all = new ArrayList<>();
        for (PassSpec pass : scene.passes()) {
            all.add(AccessFinder.find(problem(scene, around, pass, wand), pass.aim(), Double.POSITIVE_INFINITY));
        }
        return all;
    }

    private static ReachProblem problem(Scene scene, Surroundings around, PassSpec pass, WandSpec wand) {
        EntrySpec entry = scene.entries().stream()
                .filter(e -> e.name().equals(pass.entry()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no entry '" + pass.entry() + "'"));
        return new ReachProblem(around, entry, wand, ReachSettings.DEFAULT);
    }

    /** Largest of the smallest holes over the entries: each has its own gauge, direction and lining. */
    private static double hole(Scene scene, Surroundings around, Design design) {
        double most = 0;
        WandSpec wand = design.wand(Math.max(0.1, 2 * design.leastM()));
        for (PassSpec pass : scene.passes()) {
            ReachProblem p = problem(scene, around, pass, wand);
            EntrySpec.Grommet lining = p.entry().grommet();
            double gauge = lining == null ? p.gaugeM() : Math.max(p.gaugeM(), lining.thicknessM());
            double cos = Math.min(1, p.axis().dot(p.opening().place().normal()));
            most = Math.max(most, SmallestHole.diameterM(wand, gauge, Math.acos(cos)));
        }
        return most;
    }

    /** How the straight wand hangs when it is in to this depth, the pass that hangs most; null for a bent one. */
    @Nullable
    SagResult sag(Scene scene, Surroundings around, Design design, double atM) {
        SagResult most = null;
        for (Insertion in : insertions) {
            if (in.path() instanceof WandPath.Straight line && in.maxDepthM() > 0) {
                TubeSection tube = TubeSection.of(design.wand(in.maxDepthM()), scene.product().densityKgPerM3());
                Sag sag = new Sag(around, in.openingIndex(), line, tube, scene.gravity(), scene.gravityMPerS2());
                SagResult r = sag.at(Math.min(atM, in.maxDepthM()));
                most = most == null || Math.abs(r.dropM()) > Math.abs(most.dropM()) ? r : most;
            }
        }
        return most;
    }
}
