package baymist.scene;

import baymist.problem.SourcePlace;
import org.jspecify.annotations.Nullable;

/**
 * One draw-back pass with the trigger held.
 *
 * @param fromDepthM insertion depth at the start; infinite = as deep as the wand goes
 * @param toDepthM insertion depth at the end, not above the start
 * @param drawBackMPerS draw-back rate; ignored when both depths are equal, then {@code holdS} counts
 * @param clockRad clock angle of the direction pin: 0 = up, seen from outside looking in along the wand
 * @param holdS trigger time at the start depth before drawing back, s
 * @param hangS time that the fog hangs after this pass before the next one, s
 * @param aim what a straight wand is aimed at; null = along the entry's direction through the roomiest place of the opening
 * @param sag whether a straight wand's tip stands where it hangs; null = if the wand states its material
 */
public record PassSpec(
        String name,
        String entry,
        String wand,
        double fromDepthM,
        double toDepthM,
        double drawBackMPerS,
        double clockRad,
        double holdS,
        double hangS,
        @Nullable WandAim aim,
        @Nullable Boolean sag,
        SourcePlace place) {
    /** A pass of a wand that sags if it states its material. */
    public PassSpec(
            String name,
            String entry,
            String wand,
            double fromDepthM,
            double toDepthM,
            double drawBackMPerS,
            double clockRad,
            double holdS,
            double hangS,
            @Nullable WandAim aim,
            SourcePlace place) {
        this(name, entry, wand, fromDepthM, toDepthM, drawBackMPerS, clockRad, holdS, hangS, aim, null, place);
    }

    /** A pass along the entry's direction. */
    public PassSpec(
            String name,
            String entry,
            String wand,
            double fromDepthM,
            double toDepthM,
            double drawBackMPerS,
            double clockRad,
            double holdS,
            double hangS,
            SourcePlace place) {
        this(name, entry, wand, fromDepthM, toDepthM, drawBackMPerS, clockRad, holdS, hangS, null, null, place);
    }

    /** The same pass with the direction pin at another clock angle, rad. */
    public PassSpec withClockRad(double other) {
        return copy(entry, wand, fromDepthM, toDepthM, drawBackMPerS, other, holdS, hangS);
    }

    /** The same pass over another stretch, insertion depths in m; an infinite start is as deep as the wand goes. */
    public PassSpec withDepthsM(double otherFromM, double otherToM) {
        return copy(entry, wand, otherFromM, otherToM, drawBackMPerS, clockRad, holdS, hangS);
    }

    /** The same pass drawn back at another rate, m/s. */
    public PassSpec withDrawBackMPerS(double other) {
        return copy(entry, wand, fromDepthM, toDepthM, other, clockRad, holdS, hangS);
    }

    /** The same pass with another trigger time at the start depth, s. */
    public PassSpec withHoldS(double other) {
        return copy(entry, wand, fromDepthM, toDepthM, drawBackMPerS, clockRad, other, hangS);
    }

    /** The same pass with another wait after it, s. */
    public PassSpec withHangS(double other) {
        return copy(entry, wand, fromDepthM, toDepthM, drawBackMPerS, clockRad, holdS, other);
    }

    /** The same pass with another wand. */
    public PassSpec withWand(String other) {
        return copy(entry, other, fromDepthM, toDepthM, drawBackMPerS, clockRad, holdS, hangS);
    }

    /** The same pass through another entry. */
    public PassSpec withEntry(String other) {
        return copy(other, wand, fromDepthM, toDepthM, drawBackMPerS, clockRad, holdS, hangS);
    }

    /** The same pass by another name. */
    public PassSpec withName(String other) {
        return new PassSpec(
                other, entry, wand, fromDepthM, toDepthM, drawBackMPerS, clockRad, holdS, hangS, aim, sag, place);
    }

    private PassSpec copy(
            String newEntry,
            String newWand,
            double newFromM,
            double newToM,
            double newDrawBack,
            double newClock,
            double newHoldS,
            double newHangS) {
        return new PassSpec(
                name, newEntry, newWand, newFromM, newToM, newDrawBack, newClock, newHoldS, newHangS, aim, sag, place);
    }
}
