package baymist.inspect;

import baymist.card.CardSource;
import baymist.card.WorkCard;
import baymist.scene.Inspection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Findings held against a run.
 *
 * @param filmM predicted film of each place, m, [places]
 * @param where each place in structure words, [places]
 * @param table predicted against seen
 * @param brier score of the forecast probabilities (Brier 1950): 0 to 2, less is better
 * @param brierOfFrequencies the score of who knows only how often each sort was seen
 * @param refit the setting that the findings speak for, or null where it was not asked for
 * @param touchUp passes for what was found thin or dry, or null where nothing was or it was not asked for
 * @param touchUpSource run of the touch-up, or null
 * @param touchUpPlaces places of the touch-up with the film expected after it
 */
public record InspectionResult(
        CardSource source,
        Inspection inspection,
        double[] filmM,
        List<String> where,
        HitTable table,
        double brier,
        double brierOfFrequencies,
        Refit.@Nullable Result refit,
        TouchUp.@Nullable Result touchUp,
        @Nullable CardSource touchUpSource,
        List<WorkCard.Point> touchUpPlaces) {
    public InspectionResult {
        where = List.copyOf(where);
        touchUpPlaces = List.copyOf(touchUpPlaces);
    }

    /** How much better the forecast is than the bare frequencies: 1 = perfect, 0 = no better; NaN where only one sort was seen. */
    public double brierSkill() {
        return brierOfFrequencies > 0 ? 1 - brier / brierOfFrequencies : Double.NaN;
    }
}
