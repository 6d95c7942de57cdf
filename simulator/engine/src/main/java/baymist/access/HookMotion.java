package baymist.access;

import baymist.geom.Vec3;
import java.util.List;

/**
 * What a hook tube can do in an entry.
 *
 * @param steps the threading motion to the deepest place, from outside in; empty if it does not go in
 * @param path body and tip at each depth
 * @param depthM length of tube inside at the end, m
 * @param clocksRad clock angles of the pin that it can be turned to at that depth, rad, ascending
 * @param leastClearanceM least distance left along the motion, in the hole or to a sheet, m
 * @param leastWhere name of what is nearest then
 * @param leastSlideM length of tube inside then, m
 * @param stop what ends it, or keeps it out
 * @param tried bodies tried
 * @param exhausted whether the whole grid was seen; false = the budget ended the search
 */
public record HookMotion(
        List<Step> steps,
        WandPath path,
        double depthM,
        List<Double> clocksRad,
        double leastClearanceM,
        String leastWhere,
        double leastSlideM,
        WandStop stop,
        int tried,
        boolean exhausted) {
    public HookMotion {
        steps = List.copyOf(steps);
        clocksRad = List.copyOf(clocksRad);
    }

    /**
     * One place of the motion.
     *
     * @param slideM length of tube inside, m
     * @param clockRad clock angle of the pin at the hole, rad
     * @param tiltRad tilt of the tube in the hole towards the centre of its bend, rad
     * @param holeClearanceM distance left in the hole, m
     * @param sheetClearanceM distance to the nearest sheet beyond it, m
     * @param nearest name of that sheet
     */
    public record Step(
            double slideM,
            double clockRad,
            double tiltRad,
            double holeClearanceM,
            double sheetClearanceM,
            String nearest,
            Vec3 tipM) {}
}
