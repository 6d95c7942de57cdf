package baymist.size;

import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The job of a scene with another wand: the same entries, rates, waits and aims. Each pass begins with the whole wand in, or as deep as it goes.
 *
 * <p>A straight wand ends where the scene's pass ends, yet at half of its own depth at the latest, so that a short one sprays too. A hooked one
 * ends while its bend is still inside, and each pass is made twice, the second with the pin turned half round, unless the scene turns it
 * itself: it looks to one side only.
 */
final class Trial {
    /** A hooked wand is drawn back over at least this share of its depth. */
    private static final double HOOK_STROKE = 0.1;

    private Trial() {}

    static Scene job(Scene scene, Design design, double lengthM) {
        WandSpec wand = design.wand(lengthM);
        List<PassSpec> passes = new ArrayList<>();
        for (PassSpec p : scene.passes()) {
            double to = design.hook() == null
                    ? Math.min(p.toDepthM(), 0.5 * lengthM)
                    : Math.min(
                            Math.max(p.toDepthM(), design.hook().tubeM()), (1 - HOOK_STROKE) * lengthM);
            PassSpec own = p.withWand(wand.name()).withDepthsM(lengthM, to);
            passes.add(own);
            if (design.hook() != null && !turnedAlready(scene, p)) {
                passes.add(renamed(own.withClockRad(p.clockRad() + Math.PI)));
            }
        }
        return SceneEdit.of(scene).wands(Map.of(wand.name(), wand)).passes(passes).done();
    }

    private static boolean turnedAlready(Scene scene, PassSpec p) {
        return scene.passes().stream()
                .anyMatch(q -> q.entry().equals(p.entry()) && Math.cos(q.clockRad() - p.clockRad()) < -0.5);
    }

    private static PassSpec renamed(PassSpec p) {
        return new PassSpec(
                p.name() + ", turned",
                p.entry(),
                p.wand(),
                p.fromDepthM(),
                p.toDepthM(),
                p.drawBackMPerS(),
                p.clockRad(),
                p.holdS(),
                p.hangS(),
                p.aim(),
                p.sag(),
                p.place());
    }
}
