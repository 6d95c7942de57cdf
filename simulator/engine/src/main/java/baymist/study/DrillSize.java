package baymist.study;

import baymist.scene.DrillingSpec;
import baymist.scene.WandSpec;
import baymist.units.Quantities;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A number drill and the rivet that closes its hole.
 *
 * @param number of the drill (ASME B94.11M)
 * @param diameterM of the hole, m
 * @param rivet that closes it, in words
 */
public record DrillSize(int number, double diameterM, String rivet) {
    /** Room between wand and hole all round that a hand needs, m (common practice, no source). */
    static final double ROOM_M = 0.04e-3;

    /**
     * Drills of the usual solid rivets, AC 43.13-1B section 4-57 and usual rivet tables (from memory): #40 for 3/32 in, #30 for
     * 1/8 in, #21 for
     * 5/32 in, #11 for 3/16 in.
     */
    private static final int[][] OF_RIVETS = {{40, 3}, {30, 4}, {21, 5}, {11, 6}};

    /** Drill of a number with the thickest usual rivet that its hole takes. */
    public static DrillSize of(int number) {
        double d = Quantities.drillDiameterM(number);
        int rivet = 0;
        for (int[] r : OF_RIVETS) {
            rivet = Quantities.drillDiameterM(r[0]) == d ? r[1] : rivet;
        }
        String words = rivet > 0
                ? "rivet MS20470AD" + rivet + " (" + inch(rivet) + " in), or an approved blind rivet of that size"
                : "a rivet or plug of the next size up after reaming, as the approved data say";
        return new DrillSize(number, d, words);
    }

    private static String inch(int thirtySeconds) {
        return switch (thirtySeconds) {
            case 4 -> "1/8";
            case 6 -> "3/16";
            default -> thirtySeconds + "/32";
        };
    }

    /** Drills that a scene allows, thinnest first; those of the usual rivets where it names none. */
    static List<DrillSize> allowed(DrillingSpec spec) {
        List<Integer> numbers = spec.drills().isEmpty()
                ? List.of(OF_RIVETS[0][0], OF_RIVETS[1][0], OF_RIVETS[2][0], OF_RIVETS[3][0])
                : spec.drills();
        return numbers.stream()
                .map(DrillSize::of)
                .sorted(Comparator.comparingDouble(DrillSize::diameterM))
                .toList();
    }

    /** Thinnest allowed drill whose hole a wand passes, or null. */
    static @Nullable DrillSize passing(DrillingSpec spec, WandSpec wand) {
        return allowed(spec).stream()
                .filter(d -> d.diameterM() >= wand.thickestM() + 2 * ROOM_M)
                .findFirst()
                .orElse(null);
    }
}
