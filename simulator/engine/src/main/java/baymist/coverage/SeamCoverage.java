package baymist.coverage;

import baymist.geom.Vec3;
import baymist.seam.SeamKind;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Coverage by length of seam: the lines where sheets of different parts meet, where corrosion starts. Lengths are those of the structure's
 * own edges, at any voxel size. A web that stands on a skin has a seam on either side, and each side counts. Every table but {@code lines} adds
 * up to the whole; by part, each part has half of its seams.
 *
 * @param lengthM all sides of all seams, m
 * @param lineM the lines themselves, each counted once, m
 * @param reached share of {@code lengthM} with at least haze within the creep distance on one sheet, 0..1
 * @param protectedShare share with the target build within it on both sheets
 * @param unresolvedM length beside which the voxels hold no surface, m: never reached, part of {@code lengthM}
 * @param filmNearM2 loose film within the creep distance over the length of seam, volume on a length, mean over reached seams, m²
 * @param bySeam by pair of parts, kind and bay, longest bare length first
 */
public record SeamCoverage(
        double lengthM,
        double lineM,
        double reached,
        double protectedShare,
        double unresolvedM,
        double filmNearM2,
        List<Seam> bySeam,
        List<Share> byPart,
        List<Share> byBay,
        List<Share> byKind,
        List<Line> lines) {
    public SeamCoverage {
        bySeam = List.copyOf(bySeam);
        byPart = List.copyOf(byPart);
        byBay = List.copyOf(byBay);
        byKind = List.copyOf(byKind);
        lines = List.copyOf(lines);
    }

    /** Bay of lengths that the voxels do not hold. */
    public static final String NO_BAY = "in no voxel";

    /**
     * Seams of two parts in one bay.
     *
     * @param parts as in "rib 2 - upper skin"
     * @param bay its name, or {@link #NO_BAY}
     * @param barestM middle of the longest bare run, m; of the seam itself where nothing is bare
     * @param barestRunM length of that run, m
     */
    public record Seam(
            String parts,
            SeamKind kind,
            String bay,
            double lengthM,
            double reached,
            double protectedShare,
            double unresolvedM,
            Vec3 barestM,
            double barestRunM) {
        /** Length without any film, m; what the voxels do not hold is not known to be bare. */
        public double bareM() {
            return Math.max(0, lengthM * (1 - reached) - unresolvedM);
        }
    }

    /** Length and shares of a part, bay or kind. */
    public record Share(String name, double lengthM, double reached, double protectedShare, double unresolvedM) {}

    /**
     * A seam as it runs through the structure, once, whatever the number of its sides.
     *
     * @param bays the bay of each of its sides
     * @param pointsM its corners, m; the first again at the end of a closed line
     * @param lengthM along the line, m
     * @param reached share of its sides
     */
    public record Line(
            String parts,
            SeamKind kind,
            List<String> bays,
            List<Vec3> pointsM,
            double lengthM,
            double reached,
            double protectedShare) {
        public Line {
            bays = List.copyOf(bays);
            pointsM = List.copyOf(pointsM);
        }
    }

    /** The share of a part by name, or null where it has no seam. */
    public static @Nullable Share find(List<Share> table, String name) {
        return table.stream().filter(s -> s.name().equals(name)).findFirst().orElse(null);
    }
}
