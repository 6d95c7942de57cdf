package baymist.access;

/**
 * Force that a hand needs to push a flexible wand along a path: an increasing straight line {@code gain * tip + offset} in the
 * force at the tip.
 *
 * <p>Along a stretch ds of curvature κ the force F grows towards the hand by {@code dF/ds = μ κ F + μ w}: the capstan equation (Euler
 * 1769, Eytelwein 1808: {@code F = F0 exp(μ θ)}) with the friction of the wand's own weight w per length. On a straight that is
 * {@code F + μ w L}, on an arc of radius R through θ {@code (F + w R) exp(μ θ) - w R}.
 *
 * @param gain factor on the force at the tip, at least 1
 * @param offsetN what the wand's own weight adds, N
 */
record PushForce(double gain, double offsetN) {
    static final PushForce NONE = new PushForce(1, 0);

    /**
     * The force after a further piece at the tip's end.
     *
     * @param friction coefficient μ, at least 0
     * @param weightNPerM weight of the wand and what fills it, N/m
     */
    PushForce beyond(PathPiece piece, double friction, double weightNPerM) {
        if (piece.curvaturePerM() == 0) {
            return new PushForce(gain, offsetN + gain * friction * weightNPerM * piece.lengthM());
        }
        double grown = Math.expm1(friction * piece.bendRad());
        double weightN = weightNPerM / piece.curvaturePerM();
        return new PushForce(gain * (1 + grown), offsetN + gain * weightN * grown);
    }

    /** Force at the hand, N. */
    double atHandN(double tipN) {
        return gain * tipN + offsetN;
    }
}
