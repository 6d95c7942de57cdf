package baymist.access;

import baymist.geom.Vec3;
import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.scene.BodySpec;
import baymist.scene.Obstacle;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Whether the part of a straight wand that stays outside clears what stands there. The wand runs straight back from the
 * opening along its axis; it is a rod with a round end. Two things are asked: whether it clears at the start depth of each
 * pass, and whether it can be fed in at all, for which its whole length must first stand outside.
 */
public final class OutsideCheck {
    private OutsideCheck() {}

    /** Findings for the passes whose wand meets an obstacle; each is told once. */
    public static List<Finding> findings(Scene scene, List<Insertion> perPass) {
        Set<Finding> found = new LinkedHashSet<>();
        for (int p = 0; p < perPass.size() && !scene.obstacles().isEmpty(); p++) {
            PassSpec pass = scene.passes().get(p);
            WandSpec wand = scene.wands().get(pass.wand());
            if (wand != null && perPass.get(p).feasible()) {
                for (Obstacle obstacle : scene.obstacles()) {
                    add(found, pass, wand, perPass.get(p), obstacle);
                }
            }
        }
        return new ArrayList<>(found);
    }

    private static void add(Set<Finding> found, PassSpec pass, WandSpec wand, Insertion in, Obstacle obstacle) {
        double free = freeLengthM(in.originM(), in.axis(), wand, obstacle.body());
        double depth = Math.min(pass.fromDepthM(), in.maxDepthM());
        double outside = wand.lengthM() - depth;
        if (free < outside) {
            found.add(new Finding(
                    "ACC-006",
                    Severity.WARNING,
                    pass.place(),
                    String.format(
                            Locale.ROOT,
                            "pass '%s' begins %.0f mm deep with %.0f mm of the wand '%s' outside, but '%s' leaves only %.0f mm"
                                    + " behind '%s'; a shorter or hooked wand, or another entry, would go",
                            pass.name(),
                            1e3 * depth,
                            1e3 * outside,
                            wand.name(),
                            obstacle.name(),
                            1e3 * free,
                            in.entry())));
        } else if (free < wand.lengthM()) {
            found.add(new Finding(
                    "ACC-007",
                    Severity.WARNING,
                    pass.place(),
                    String.format(
                            Locale.ROOT,
                            "the wand '%s' is %.0f mm long and '%s' leaves only %.0f mm behind '%s': a straight wand can't be"
                                    + " fed in there, though it clears once it is in",
                            wand.name(),
                            1e3 * wand.lengthM(),
                            obstacle.name(),
                            1e3 * free,
                            in.entry())));
        }
    }

    /** Length of the rod that may stand outside before it meets the body, m; the wand's length if it never does. */
    static double freeLengthM(Vec3 originM, Vec3 axis, WandSpec wand, BodySpec body) {
        double radius = wand.outerM() / 2;
        double low = 0;
        double high = wand.lengthM();
        if (body.distanceM(originM, originM.plus(-high, axis)) >= radius) {
            return high;
        }
        for (int i = 0; i < 40; i++) {
            double middle = 0.5 * (low + high);
            if (body.distanceM(originM, originM.plus(-middle, axis)) >= radius) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
