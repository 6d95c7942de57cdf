package baymist.scene;

import baymist.problem.SourcePlace;
import java.util.List;

/**
 * Limits that a plan of passes keeps.
 *
 * @param slowestMPerS slowest draw-back, m/s; not a number = 50 mm/s, or that of the scene's own passes if one is slower
 * @param fastestMPerS fastest draw-back, m/s; not a number = 500 mm/s, or that of the scene's own passes if one is faster
 * @param triggerS most time with the trigger held, s; not a number = that of the scene's own passes
 * @param productM3 most liquid, m³; not a number = that of the scene's own passes
 * @param passes most passes
 * @param panels closed openings that may be opened as a way in
 */
public record PlanSpec(
        double slowestMPerS,
        double fastestMPerS,
        double triggerS,
        double productM3,
        int passes,
        List<String> panels,
        SourcePlace place) {
    /** Passes that a work card still holds (ASSUMED). */
    public static final int PASSES = 12;

    public PlanSpec {
        panels = List.copyOf(panels);
    }

    /** What holds where a scene states nothing. */
    public static PlanSpec usual(SourcePlace place) {
        return new PlanSpec(Double.NaN, Double.NaN, Double.NaN, Double.NaN, PASSES, List.of(), place);
    }
}
