package baymist.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Plain text of at most 100 columns, line by line. */
final class Page {
    static final int WIDTH = 100;

    private final StringBuilder text = new StringBuilder();

    /** A formatted line; too long a line is wrapped. */
    Page line(String format, Object... values) {
        return wrapped("", String.format(Locale.ROOT, format, values));
    }

    Page blank() {
        text.append('\n');
        return this;
    }

    Page heading(String words) {
        if (!text.isEmpty()) {
            blank();
        }
        text.append(words).append('\n').append("-".repeat(words.length())).append('\n');
        return this;
    }

    /** Text after a lead, wrapped at words; further lines are indented by the lead's width. */
    Page wrapped(String lead, String words) {
        String indent = " ".repeat(lead.length());
        int room = WIDTH - lead.length();
        String prefix = lead;
        for (String row : wrap(words, room)) {
            text.append((prefix + row).stripTrailing()).append('\n');
            prefix = indent;
        }
        return this;
    }

    /** Splits at blanks into rows of at most {@code room} characters; a longer word is cut. */
    static List<String> wrap(String words, int room) {
        List<String> rows = new ArrayList<>();
        StringBuilder row = new StringBuilder();
        int lead = words.length() - words.stripLeading().length();
        row.append(" ".repeat(Math.min(lead, room / 2)));
        boolean empty = true;
        // a run of blanks inside a line that fits is kept: tables are lines too
        if (words.length() <= room) {
            return List.of(words);
        }
        for (String word : words.strip().split("\\s+", -1)) {
            String rest = word;
            while (true) {
                int needed = rest.length() + (empty ? 0 : 1);
                if (row.length() + needed <= room) {
                    row.append(empty ? "" : " ").append(rest);
                    empty = false;
                    break;
                }
                if (!empty) {
                    rows.add(row.toString());
                    row.setLength(0);
                    empty = true;
                } else {
                    int cut = room - row.length();
                    rows.add(row + rest.substring(0, cut));
                    row.setLength(0);
                    rest = rest.substring(cut);
                }
            }
        }
        if (!row.isEmpty()) {
            rows.add(row.toString());
        }
        return rows;
    }

    /** Left-aligned in a column of this width, cut with a mark when longer. */
    static String cell(String words, int width) {
        String fitted = words.length() <= width ? words : words.substring(0, width - 2) + "..";
        return fitted + " ".repeat(width - fitted.length());
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
