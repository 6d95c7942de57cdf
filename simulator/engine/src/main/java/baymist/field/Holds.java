package baymist.field;

import baymist.problem.SourcePlace;
import baymist.scene.EntrySpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.WandAim;
import baymist.scene.WandSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Passes that hold the tip still: one for each way that a wand may take through an entry. */
final class Holds {
    /** Holding time of a candidate, s; what a pose is worth does not depend on it. */
    private static final double HOLD_S = 1;

    private Holds() {}

    /**
     * Every entry with every wand: along the entry's direction, and on the line or way that comes nearest to the region (not for hooks, which have
     * one way).
     */
    static List<PassSpec> candidates(Scene scene, FieldRegion region) {
        List<WandSpec> wands = new ArrayList<>(scene.wands().values());
        wands.sort(Comparator.comparing(WandSpec::name));
        List<PassSpec> all = new ArrayList<>();
        for (EntrySpec entry : scene.entries()) {
            for (WandSpec wand : wands) {
                all.add(hold(scene, entry, wand, null));
                if (wand.kind() != WandSpec.Kind.BENT) {
                    all.add(hold(scene, entry, wand, new WandAim.Near(region.boxM())));
                }
            }
        }
        return all;
    }

    private static PassSpec hold(
            Scene scene, EntrySpec entry, WandSpec wand, @org.jspecify.annotations.Nullable WandAim aim) {
        double deepest = Double.POSITIVE_INFINITY;
        return new PassSpec(
                "reach field",
                entry.name(),
                wand.name(),
                deepest,
                deepest,
                0,
                0,
                HOLD_S,
                0,
                aim,
                SourcePlace.of(scene.file()));
    }

    /** The same hold at another depth, clock angle and time. */
    static PassSpec with(PassSpec p, double depthM, double clockRad, double holdS) {
        return new PassSpec(
                p.name(), p.entry(), p.wand(), depthM, depthM, 0, clockRad, holdS, p.hangS(), p.aim(), p.sag(),
                p.place());
    }

    /** Draw-back rate of the scene's first pass that has one, else 50 mm/s (ASSUMED: a calm hand), m/s. */
    static double drawBackMPerS(Scene scene) {
        return scene.passes().stream()
                .filter(p -> p.drawBackMPerS() > 0)
                .mapToDouble(PassSpec::drawBackMPerS)
                .findFirst()
                .orElse(0.05);
    }

    /** A draw-back in place of a hold. */
    static PassSpec drawn(PassSpec p, double fromM, double toM, double rateMPerS, double clockRad) {
        return new PassSpec(
                p.name(), p.entry(), p.wand(), fromM, toM, rateMPerS, clockRad, 0, p.hangS(), p.aim(), p.sag(),
                p.place());
    }
}
