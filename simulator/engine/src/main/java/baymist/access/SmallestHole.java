package baymist.access;

import baymist.scene.WandSpec;

/** The smallest round hole that a wand goes through, as a body; no play for the hand is added. */
public final class SmallestHole {
    /** Places along a bent tube at which its stand in the hole is looked at. */
    private static final int PLACES = 160;

    private SmallestHole() {}

    /**
     * Diameter of the smallest round hole in a flat plate that the whole wand passes.
     *
     * <p>A straight rod of diameter d tilted by θ in a plate of gauge t needs {@code D = d / cosθ + t tanθ} ({@link
     * PlateHole#largestOffsetM} at offset 0). A bent tube slides along its own centre line and stands in the hole as freely as it can
     * ({@link HookFit}); the tightest place counts. A flexible wand is taken as straight.
     *
     * @param gaugeM thickness of the plate, m, at least 0
     * @param tiltRad angle between the wand and the hole's normal, rad, 0 to below pi/2; only straight wands are tilted
     * @return m; infinite where the bends lie in different planes within the hole
     */
    public static double diameterM(WandSpec wand, double gaugeM, double tiltRad) {
        if (!(gaugeM >= 0) || !(tiltRad >= 0 && tiltRad < Math.PI / 2)) {
            throw new IllegalArgumentException("a gauge of " + gaugeM + " m and a tilt of " + tiltRad + " rad");
        }
        if (wand.kind() != WandSpec.Kind.BENT) {
            return wand.thickestM() / Math.cos(tiltRad) + gaugeM * Math.tan(tiltRad);
        }
        HookShape shape = new HookShape(wand);
        double wide = 2 * wand.thickestM();
        double most = wand.thickestM();
        for (int i = 0; i <= PLACES; i++) {
            double a = shape.lengthM() * i / PLACES;
            most = Math.max(most, 2 * (wide - HookFit.of(shape, a, wide, gaugeM).clearanceM()));
        }
        return most;
    }
}
