package baymist.plan;

import baymist.scene.PassSpec;
import baymist.scene.PlanSpec;
import baymist.scene.Scene;
import baymist.voxel.SurfelSet;

/** The limits that a scene sets a plan: what was asked, else what its `plan` states, else what its own passes take. */
final class LimitsOfScene {
    /** Where nothing is stated and there are no passes: so many times the film that the target build takes (ASSUMED: half of it goes astray). */
    private static final double TIMES_TARGET = 2;

    private LimitsOfScene() {}

    /** @param own what the scene's own passes take */
    static PlanLimits of(Scene scene, DoseMatrix matrix, PlanOptions options, PlanScore own) {
        PlanSpec stated = scene.studies().plan();
        double trigger = first(options.triggerS(), stated.triggerS());
        double product = first(options.productM3(), stated.productM3());
        if (Double.isNaN(trigger) && Double.isNaN(product)) {
            trigger = own.triggerS() > 0 ? own.triggerS() : Double.POSITIVE_INFINITY;
            product = own.productM3() > 0 ? own.productM3() : byArea(matrix);
        }
        return new PlanLimits(
                slowest(scene),
                fastest(scene),
                Double.isNaN(trigger) ? Double.POSITIVE_INFINITY : trigger,
                Double.isNaN(product) ? Double.POSITIVE_INFINITY : product,
                options.passes() > 0 ? options.passes() : stated.passes());
    }

    /** Slowest draw-back, m/s: stated, or what a hand draws evenly, or slower if the scene's own passes are. */
    static double slowest(Scene scene) {
        double usual = scene.passes().stream()
                .filter(p -> p.fromDepthM() > p.toDepthM())
                .mapToDouble(PassSpec::drawBackMPerS)
                .reduce(PlanLimits.SLOWEST_M_PER_S, Math::min);
        return first(scene.studies().plan().slowestMPerS(), Math.min(usual, fastestStated(scene)));
    }

    /** Fastest draw-back, m/s, likewise. */
    static double fastest(Scene scene) {
        double usual = scene.passes().stream()
                .filter(p -> p.fromDepthM() > p.toDepthM())
                .mapToDouble(PassSpec::drawBackMPerS)
                .reduce(PlanLimits.FASTEST_M_PER_S, Math::max);
        return first(scene.studies().plan().fastestMPerS(), Math.max(usual, slowest(scene)));
    }

    private static double fastestStated(Scene scene) {
        return first(scene.studies().plan().fastestMPerS(), Double.POSITIVE_INFINITY);
    }

    private static double first(double value, double other) {
        return Double.isNaN(value) ? other : value;
    }

    private static double byArea(DoseMatrix matrix) {
        SurfelSet s = matrix.grid().surfels();
        double area = 0;
        for (int i = 0; i < s.count(); i++) {
            area += s.isStructure(i) ? s.areaM2()[i] : 0;
        }
        return TIMES_TARGET * area * matrix.scene().targets().buildM();
    }
}
