package baymist.inspect;

import baymist.scene.Inspection.Seen;
import java.util.List;

/**
 * Prediction against finding.
 *
 * @param counts places, [predicted][seen] in the order of {@link Seen}
 */
public record HitTable(int[][] counts) {
    /** Counts places of equal index. */
    public static HitTable of(List<Seen> predicted, List<Seen> seen) {
        int n = Seen.values().length;
        int[][] counts = new int[n][n];
        for (int i = 0; i < seen.size(); i++) {
            counts[predicted.get(i).index()][seen.get(i).index()]++;
        }
        return new HitTable(counts);
    }

    public int count(Seen predicted, Seen seen) {
        return counts[predicted.index()][seen.index()];
    }

    public int all() {
        int sum = 0;
        for (int[] row : counts) {
            for (int c : row) {
                sum += c;
            }
        }
        return sum;
    }

    /** Places seen as predicted. */
    public int hits() {
        int sum = 0;
        for (int i = 0; i < counts.length; i++) {
            sum += counts[i][i];
        }
        return sum;
    }

    /** Dry places that were predicted dry, share of all dry places; NaN where none is dry. */
    public double dryFound() {
        int dry = count(Seen.WET, Seen.DRY) + count(Seen.THIN, Seen.DRY) + count(Seen.DRY, Seen.DRY);
        return dry == 0 ? Double.NaN : (double) count(Seen.DRY, Seen.DRY) / dry;
    }

    /** Places predicted dry that were not, share of all predicted dry; NaN where none is predicted. */
    public double falseAlarms() {
        int predicted = count(Seen.DRY, Seen.WET) + count(Seen.DRY, Seen.THIN) + count(Seen.DRY, Seen.DRY);
        return predicted == 0 ? Double.NaN : 1 - (double) count(Seen.DRY, Seen.DRY) / predicted;
    }
}
