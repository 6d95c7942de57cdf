package baymist.scene;

import baymist.problem.SourcePlace;
import java.util.List;

/**
 * What a comparison tries: every entry with every wand at every clock angle.
 *
 * @param entries names; empty = all entries of the scene
 * @param wands names; empty = all wands at hand
 * @param clocksRad clock angles of the direction pin, rad; empty = eight of them
 * @param holes openings that might be cut; each is tried as a way in of its own
 * @param fromDepthM insertion depth at the start, m; infinite = as deep as the wand goes
 * @param toDepthM insertion depth at the end, m
 * @param drawBackMPerS draw-back rate, m/s
 * @param holdS trigger time at the start depth, s
 */
public record CompareSpec(
        List<String> entries,
        List<String> wands,
        List<Double> clocksRad,
        List<OpeningSpec> holes,
        double fromDepthM,
        double toDepthM,
        double drawBackMPerS,
        double holdS,
        SourcePlace place) {
    /** Clock angles where none are stated. */
    public static final int CLOCKS = 8;

    public CompareSpec {
        entries = List.copyOf(entries);
        wands = List.copyOf(wands);
        clocksRad = List.copyOf(clocksRad);
        holes = List.copyOf(holes);
    }

    /** All ways in, drawn back from as deep as the wand goes to 50 mm at 75 mm/s. */
    public static CompareSpec usual(SourcePlace place) {
        return new CompareSpec(
                List.of(), List.of(), List.of(), List.of(), Double.POSITIVE_INFINITY, 0.05, 0.075, 0, place);
    }
}
