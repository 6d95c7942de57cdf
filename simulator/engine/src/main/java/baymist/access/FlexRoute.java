package baymist.access;

import java.util.List;

/**
 * One way of a flexible wand into a cavity.
 *
 * @param path body and tip at each depth
 * @param depthM length of wand inside, m
 * @param bendRad sum of all bends, rad
 * @param pushN force at the hand at full depth, N ({@link PushForce})
 * @param through names of the openings between bays that it passes, in order
 * @param clearanceM least distance of the body from a sheet beyond the entry, m
 * @param tightAt name of that sheet
 * @param stop what ends it
 */
public record FlexRoute(
        WandPath path,
        double depthM,
        double bendRad,
        double pushN,
        List<String> through,
        double clearanceM,
        String tightAt,
        WandStop stop) {
    public FlexRoute {
        through = List.copyOf(through);
    }
}
