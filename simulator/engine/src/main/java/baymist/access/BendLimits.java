package baymist.access;

/**
 * What a flexible wand can do.
 *
 * @param radiusM radius of its body, m
 * @param lengthM length that can go in, m
 * @param minBendM least radius of its centreline, m
 * @param maxBendRad largest sum of bends, rad
 * @param pushLimitN largest force at the hand, N; may be infinite
 * @param friction coefficient of friction against sheet
 * @param weightNPerM weight of wand and oil, N/m
 * @param tipDragN force that the nose needs, N
 */
record BendLimits(
        double radiusM,
        double lengthM,
        double minBendM,
        double maxBendRad,
        double pushLimitN,
        double friction,
        double weightNPerM,
        double tipDragN) {
    /** A wand that is limited by its bend radius alone. */
    static BendLimits radiusOnly(double radiusM, double minBendM) {
        double none = Double.POSITIVE_INFINITY;
        return new BendLimits(radiusM, none, minBendM, none, none, 0, 0, 0);
    }
}
