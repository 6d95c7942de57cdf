package baymist.scene;

/**
 * What a flexible wand allows.
 *
 * @param minBendRadiusM smallest radius of the centre line that it takes without kinking, m
 * @param maxTotalBendRad largest sum of all bends along it, rad
 * @param pushLimitN force at the outside end at which it buckles or the hand gives up, N; infinite = not stated
 * @param friction coefficient of friction against sheet, at least 0
 */
public record Flexibility(double minBendRadiusM, double maxTotalBendRad, double pushLimitN, double friction) {
    public Flexibility {
        if (!(minBendRadiusM > 0 && maxTotalBendRad >= 0 && pushLimitN > 0 && friction >= 0)) {
            throw new IllegalArgumentException("a flexible wand wants a positive bend radius and push limit");
        }
    }
}
