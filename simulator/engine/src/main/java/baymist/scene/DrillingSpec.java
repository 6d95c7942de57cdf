package baymist.scene;

import baymist.problem.SourcePlace;
import java.util.List;

/**
 * Where access holes may be thought of. Nothing may be drilled that is not named here; drilling itself needs approved data and a licensed
 * person.
 *
 * @param parts names of parts that may be drilled
 * @param primary names of parts that are primary structure: never drilled
 * @param pressurised names of parts that hold cabin pressure: never drilled
 * @param doublers names of parts that lie on others as doublers or stiffeners; a hole stays clear of them
 * @param drills number drills to choose from (ASME B94.11M), 1 to 80; empty = those of the usual rivets
 * @param gridM spacing of the places looked at, m
 * @param most holes at most
 * @param leastGain share of the surface that the next hole must add, 0..1
 */
public record DrillingSpec(
        List<String> parts,
        List<String> primary,
        List<String> pressurised,
        List<String> doublers,
        List<Integer> drills,
        double gridM,
        int most,
        double leastGain,
        SourcePlace place) {
    public DrillingSpec {
        parts = List.copyOf(parts);
        primary = List.copyOf(primary);
        pressurised = List.copyOf(pressurised);
        doublers = List.copyOf(doublers);
        drills = List.copyOf(drills);
    }
}
