package baymist.access;

import baymist.geom.Vec3;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How a straight rod hangs at one depth.
 *
 * @param depthM length of the rod inside, m
 * @param straightTipM where the tip would be without weight, m
 * @param tipM where it is, m
 * @param tipAxis unit vector along the rod at the tip
 * @param dropM how far the tip hangs below the straight line, square to it, m; negative if its supports lift it
 * @param dropClockRad clock angle at which the tip lies from the straight line, seen along the rod from outside, rad
 * @param centrelineM the bent rod from the entry to the tip, m
 * @param rests where it rests, from the entry to the tip
 * @param stressPa largest bending stress, Pa
 * @param stressAtM where along the rod it acts, m
 * @param yieldPa stress from which the rod stays bent, Pa
 * @param catchesOn what the nose would hang on below or above its way when it is pushed in to this depth, or null
 */
public record SagResult(
        double depthM,
        Vec3 straightTipM,
        Vec3 tipM,
        Vec3 tipAxis,
        double dropM,
        double dropClockRad,
        List<Vec3> centrelineM,
        List<Rest> rests,
        double stressPa,
        double stressAtM,
        double yieldPa,
        @Nullable Catch catchesOn) {
    public SagResult {
        centrelineM = List.copyOf(centrelineM);
        rests = List.copyOf(rests);
    }

    /**
     * A place where the rod rests.
     *
     * @param on what it rests on, in words
     * @param depthM how far in, m
     * @param placeM the point of contact, m
     * @param forceN how hard it presses, N
     */
    public record Rest(String on, double depthM, Vec3 placeM, double forceN) {}

    /**
     * What a sagging nose runs into on its way in, where the straight line is free.
     *
     * @param on the obstacle in words
     * @param depthM at which depth, m
     * @param liftM how far the nose must be lifted there to pass, m
     */
    public record Catch(String on, double depthM, double liftM) {}

    /** Whether the rod is bent for good. */
    public boolean yields() {
        return stressPa >= yieldPa;
    }
}
