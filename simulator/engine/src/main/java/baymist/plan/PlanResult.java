package baymist.plan;

import baymist.run.RunResult;
import baymist.scene.Scene;
import baymist.study.HoleStudy;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A plan, what the matrix promised, and what runs found.
 *
 * @param stated the scene as it was asked
 * @param planned the same with the plan's passes, masks, panels and holes: a scene that can be run and written
 * @param matrix what the plan was found with
 * @param strokes the plan by lines and stations of the matrix; empty where the scene's own passes were kept
 * @param limits what it had to keep
 * @param predicted by the matrix
 * @param rounds each better plan that was found: predicted, and found by a run at planning resolution
 * @param checked the plan in a run at planning resolution
 * @param own the scene's own passes in a run at planning resolution; null if it has none
 * @param keptOwn whether the scene's own passes were better than any plan and were kept
 * @param resolution planning resolution in words
 * @param runs runs made at planning resolution
 * @param panels closed openings that the plan opens while spraying
 * @param holes holes that it wants drilled, or null where none were looked for
 * @param masked protected items that the plan covers because it would spray them
 * @param blind bays that no wand at hand can spray
 * @param verified run at the scene's own resolution; null if none was asked for
 * @param fullRounds plans run in full, in their order: what was promised (by planning run, then by the matrix set right by full runs) and what the full run
 *     found; empty if none was asked for
 * @param hands what hands and droplets make of it, by the matrix; null without strokes
 */
public record PlanResult(
        Scene stated,
        Scene planned,
        DoseMatrix matrix,
        List<Stroke> strokes,
        PlanLimits limits,
        PlanScore predicted,
        List<Round> rounds,
        PlanScore checked,
        @Nullable PlanScore own,
        boolean keptOwn,
        String resolution,
        int runs,
        List<String> panels,
        HoleStudy.@Nullable Holes holes,
        List<String> masked,
        List<BlindBay> blind,
        @Nullable RunResult verified,
        List<Round> fullRounds,
        @Nullable HandsResult hands) {
    /** A plan and what came of it at planning resolution. */
    public record Round(PlanScore predicted, PlanScore found) {}

    public PlanResult {
        strokes = List.copyOf(strokes);
        rounds = List.copyOf(rounds);
        panels = List.copyOf(panels);
        masked = List.copyOf(masked);
        blind = List.copyOf(blind);
        fullRounds = List.copyOf(fullRounds);
    }

    /** Share of the inside that is reached: by the full run, or by that at planning resolution where there is none. */
    public double reached() {
        return verified == null
                ? checked.reached()
                : verified.coverage().total().reached();
    }
}
