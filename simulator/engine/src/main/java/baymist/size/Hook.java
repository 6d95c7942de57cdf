package baymist.size;

import baymist.units.Quantities;
import java.util.List;

/**
 * A bend near the tip, made once and for all.
 *
 * @param angleRad angle that the tube turns by, rad, above 0 to pi
 * @param radiusM radius of its centre line, m, above 0
 * @param legM straight tube between the tip and the bend, m, at least 0
 */
public record Hook(double angleRad, double radiusM, double legM) {
    /** Hooks that are tried where no straight wand meets the goal: half and full right angles on a short and a long leg. */
    public static final List<Hook> USUAL = List.of(
            new Hook(Math.PI / 4, 0.025, 0.04), new Hook(Math.PI / 2, 0.025, 0.02), new Hook(Math.PI / 2, 0.025, 0.06));

    public Hook {
        if (!(angleRad > 0 && angleRad <= Math.PI && radiusM > 0 && legM >= 0)) {
            throw new IllegalArgumentException(
                    "a hook of " + angleRad + " rad, radius " + radiusM + " m and leg " + legM + " m");
        }
    }

    /** Length of tube from the tip to the far end of the bend, m. */
    public double tubeM() {
        return legM + radiusM * angleRad;
    }

    /** "90 deg r 25 mm, leg 40 mm". */
    public String words() {
        return Quantities.number(Math.toDegrees(angleRad), 3) + " deg r " + Tube.mm(radiusM) + ", leg " + Tube.mm(legM)
                + " mm";
    }
}
