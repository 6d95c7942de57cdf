package baymist.scene.io;

import java.util.Collection;
import org.jspecify.annotations.Nullable;

/** The nearest known word to one that is misspelt. */
final class Suggestion {
    private Suggestion() {}

    /** " , did you mean `wand`?" where a word lies near enough, else "; known: ...". */
    static String of(String word, Collection<String> known) {
        String near = nearest(word, known);
        if (near != null) {
            return ", did you mean `" + near + "`?";
        }
        return known.isEmpty() ? "; none is known here" : "; known here: " + String.join(", ", known);
    }

    /** The nearest word within a third of its length (at least 1, at most 3 edits), or null. */
    static @Nullable String nearest(String word, Collection<String> known) {
        String best = null;
        int bestDistance = Integer.MAX_VALUE;
        if (word.length() > 100) {
            return null;
        }
        for (String candidate : known) {
            int allowed = Math.min(3, Math.max(1, Math.max(candidate.length(), word.length()) / 3));
            int d = distance(word, candidate);
            if (d <= allowed && d < bestDistance) {
                best = candidate;
                bestDistance = d;
            }
        }
        return best;
    }

    /**
     * Edits that turn one word into the other: insert, delete, replace a letter, swap two neighbours (Damerau 1964; the restricted form
     * that edits no letter twice).
     */
    static int distance(String a, String b) {
        int[] beforeLast = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replace = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(replace, Math.min(last[j], row[j - 1]) + 1);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
                }
            }
            beforeLast = last;
            last = row;
        }
        return last[b.length()];
    }
}
