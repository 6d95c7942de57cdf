package baymist.card;

import java.time.LocalDate;
import java.time.Period;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a card is told beside the scene.
 *
 * @param interval time until the treatment is due again, instead of the scene's; null = the scene's
 * @param workDate day of the work; null = a blank to fill in
 * @param reasons why a bare region is missed, a sentence by its label; regions without one have none
 */
public record CardOptions(
        @Nullable Period interval, @Nullable LocalDate workDate, Map<String, String> reasons) {
    /** Nothing beside the scene. */
    public static final CardOptions NONE = new CardOptions(null, null, Map.of());

    public CardOptions {
        reasons = Map.copyOf(reasons);
    }
}
