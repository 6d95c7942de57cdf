package baymist.field;

import baymist.scene.PassSpec;

/**
 * What forward runs say: the scene's passes alone, and with one more after them.
 *
 * @param pass the one more
 * @param predictedKg what the field promises the region, kg; not a number for a draw-back, for which it promises area
 * @param gainedKg film that the region holds more than before, kg: what ran off it is missing, what ran onto it is in it
 * @param filmBeforeM,filmAfterM mean film build on the region, m
 * @param reachedBefore,reachedAfter share of its area at haze or above, 0..1
 * @param allReachedBefore,allReachedAfter the same for the whole inside
 */
public record Confirmation(
        PassSpec pass,
        double predictedKg,
        double gainedKg,
        double filmBeforeM,
        double filmAfterM,
        double reachedBefore,
        double reachedAfter,
        double allReachedBefore,
        double allReachedAfter) {}
