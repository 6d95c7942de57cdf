package baymist.cavity;

import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;

/**
 * Joins the lines of bulk data to entries. Forms: small fixed (ten fields of 8 characters), large fixed (name ends in *,
 * four fields of 16 characters a line), free (commas). An entry goes on on the next line if that begins with +, *, a comma or
 * eight blanks.
 */
final class BulkCards {
    private static final int MOST_FIELDS = 4000;

    private final Consumer<BulkCard> sink;
    private String name = "";
    private final List<String> fields = new ArrayList<>();
    private SourcePlace place = SourcePlace.of("");

    BulkCards(Consumer<BulkCard> sink) {
        this.sink = sink;
    }

    /** Takes one line without comment. */
    void line(String raw, SourcePlace where) {
        String line = raw.indexOf('\t') >= 0 && raw.indexOf(',') < 0 ? expandTabs(raw) : raw;
        if (line.isBlank()) {
            return;
        }
        boolean free = line.indexOf(',') >= 0;
        char first = line.charAt(0);
        boolean goesOn = first == '+' || first == '*' || first == ',' || line.startsWith("        ");
        if (free && !goesOn) {
            goesOn = line.substring(0, line.indexOf(',')).isBlank();
        }
        if (goesOn && name.isEmpty()) {
            return;
        }
        String head = free ? line.substring(0, line.indexOf(',')).strip() : cut(line, 0, 8);
        if (!goesOn) {
            finish();
            name = head.replace("*", "").toUpperCase(Locale.ROOT);
            place = where;
        }
        boolean large = head.endsWith("*") || head.startsWith("*");
        if (free) {
            freeFields(line, large);
        } else {
            fixedFields(line, large);
        }
        if (fields.size() > MOST_FIELDS) {
            // loads and sets may be long; of what we read only a laminate is, up to a thousand plies
            fields.subList(8, fields.size()).clear();
        }
    }

    /** Hands the last entry over. */
    void finish() {
        if (!name.isEmpty()) {
            sink.accept(new BulkCard(name, List.copyOf(fields), place));
        }
        name = "";
        fields.clear();
    }

    private void freeFields(String line, boolean large) {
        String[] words = line.split(",", -1);
        int most = large ? 4 : 8;
        if (words.length > 2 + most) {
            throw new SceneException(
                    "MSH-010",
                    place,
                    "a line of free-form bulk data has " + words.length + " fields; at most " + (most + 2)
                            + " expected");
        }
        for (int k = 1; k <= most; k++) {
            fields.add(k < words.length ? words[k].strip() : "");
        }
    }

    private void fixedFields(String line, boolean large) {
        int width = large ? 16 : 8;
        for (int from = 8; from < 72; from += width) {
            fields.add(cut(line, from, from + width));
        }
    }

    private static String cut(String line, int from, int to) {
        return from >= line.length()
                ? ""
                : line.substring(from, Math.min(to, line.length())).strip();
    }

    private static String expandTabs(String line) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < line.length(); i++) {
            if (line.charAt(i) == '\t') {
                do {
                    out.append(' ');
                } while (out.length() % 8 != 0);
            } else {
                out.append(line.charAt(i));
            }
        }
        return out.toString();
    }
}
