package baymist.access;

import java.util.List;

/**
 * One of the ways that a flexible wand can take, told apart from others by the openings between bays that it passes.
 *
 * @param through names of these openings, in order; empty = it stays in the first bay
 * @param depthM length of wand inside, m
 * @param bendRad sum of all bends, rad
 * @param pushN force at the hand at full depth, N ({@link PushForce})
 */
public record WandWay(List<String> through, double depthM, double bendRad, double pushN) {
    public WandWay {
        through = List.copyOf(through);
    }
}
