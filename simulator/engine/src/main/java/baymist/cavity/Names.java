package baymist.cavity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Names of parts and openings: how they are shown, and which one the user may have meant. */
final class Names {
    private static final int LONGEST = 60;
    private static final int LISTED = 20;

    private Names() {}

    /** Control and replacement signs removed, shortened to 60 characters. */
    static String printable(String raw) {
        String clean = raw.replaceAll("[\\p{Cntrl}\\uFFFD]", "?");
        return clean.length() <= LONGEST ? clean : clean.substring(0, LONGEST - 3) + "...";
    }

    /** A file's name for a part as we say it: lower case, spaces for underscores. */
    static String friendly(String raw) {
        return printable(raw)
                .toLowerCase(Locale.ROOT)
                .replaceAll("[_\\s]+", " ")
                .strip();
    }

    /** Index of a name as given or, failing that, as we would say it; -1 if it is not there. */
    static int find(String given, List<String> known) {
        int exact = known.indexOf(given);
        return exact >= 0 ? exact : known.indexOf(friendly(given));
    }

    /** What a part most likely is, by its name. */
    static PartKind kind(String friendlyName) {
        if (friendlyName.contains("skin")) {
            return PartKind.SKIN;
        }
        if (friendlyName.contains("stringer") || friendlyName.contains("longeron")) {
            return PartKind.STRINGER;
        }
        if (friendlyName.contains("spar")) {
            return PartKind.SPAR;
        }
        if (friendlyName.contains("rib") || friendlyName.contains("frame") || friendlyName.contains("bulkhead")) {
            return PartKind.RIB;
        }
        if (friendlyName.contains("wall") || friendlyName.contains("floor")) {
            return PartKind.WALL;
        }
        return PartKind.OTHER;
    }

    /** "there is no part 'uper skin'; did you mean 'upper skin'? The parts are: ..." */
    static String unknown(String what, String given, List<String> known) {
        List<String> byDistance = new ArrayList<>(known);
        byDistance.sort(Comparator.comparingInt((String s) -> distance(given, s)));
        StringBuilder text = new StringBuilder("there is no " + what + " '" + printable(given) + "'");
        if (known.isEmpty()) {
            return text.append("; this cavity has none").toString();
        }
        String nearest = byDistance.get(0);
        if (distance(given, nearest) <= Math.max(2, nearest.length() / 3)) {
            text.append("; did you mean '").append(nearest).append("'?");
        } else {
            text.append(';');
        }
        List<String> shown = known.size() <= LISTED ? known : byDistance.subList(0, LISTED);
        text.append(" The ").append(what).append("s are: ").append(String.join(", ", shown));
        if (known.size() > LISTED) {
            text.append(" and ").append(known.size() - LISTED).append(" more");
        }
        return text.toString();
    }

    /** Edit distance (Levenshtein 1966), letter case ignored. */
    static int distance(String a, String b) {
        String s = a.toLowerCase(Locale.ROOT);
        String t = b.toLowerCase(Locale.ROOT);
        int[] row = new int[t.length() + 1];
        for (int j = 0; j <= t.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= s.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= t.length(); j++) {
                int change = diagonal + (s.charAt(i - 1) == t.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[t.length()];
    }
}
