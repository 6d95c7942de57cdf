package baymist.recording;

import baymist.geom.Vec3;

/**
 * A jet as it is drawn.
 *
 * @param originM where it leaves the tip, m
 * @param direction unit vector
 * @param halfAngleRad angle between its axis and the line along which the spray is half as dense as on it, rad
 * @param reachM along the axis to the sheet that stops it, or to where the centre of the free jet has slowed to {@link #SLOW_M_PER_S}, m
 * @param flowKgPerS liquid that it carries, kg/s; 0 for a jet of air alone
 */
public record Jet(Vec3 originM, Vec3 direction, double halfAngleRad, double reachM, double flowKgPerS) {
    /** Speed of the centre below which a jet is no longer drawn, m/s: what people feel as a draught (ASSUMED, for drawing alone). */
    public static final double SLOW_M_PER_S = 1;
}
