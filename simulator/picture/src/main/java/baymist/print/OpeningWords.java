package baymist.print;

import baymist.card.WorkCard;
import baymist.picture.CardPictures;
import baymist.scene.OpeningState;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;

/** What is done with each opening, and when, in words. */
final class OpeningWords {
    private final WorkCard card;
    private final CardUnits units;

    OpeningWords(WorkCard card, CardUnits units) {
        this.card = card;
        this.units = units;
    }

    List<Map<String, Object>> table() {
        List<Map<String, Object>> all = new ArrayList<>();
        for (WorkCard.Opening o : card.openings()) {
            String size = o.round()
                    ? "\u00d8 " + units.length(o.lengthM())
                    : units.length(o.lengthM()) + " \u00d7 " + units.length(o.widthM());
            all.add(Map.of(
                    "letter",
                    CardPictures.letter(all.size()),
                    "name",
                    o.name(),
                    "part",
                    o.part(),
                    "size",
                    size,
                    "use",
                    o.use().name().toLowerCase(Locale.ROOT),
                    "pass",
                    o.use() == WorkCard.Use.ENTRY && o.pass() == OpeningState.OPEN ? "open: wand" : word(o.pass()),
                    "hang",
                    word(o.hang()),
                    "after",
                    word(o.after()),
                    "todo",
                    todo(o)));
        }
        return all;
    }

    /** Before the first pass: the masks and covers that are moved. */
    List<String> now() {
        return changes(WorkCard.Opening::before, WorkCard.Opening::pass);
    }

    /** Between the last pass and the hang time. */
    List<String> then() {
        return changes(WorkCard.Opening::pass, WorkCard.Opening::hang);
    }

    /** At close-up. */
    List<String> last() {
        return changes(WorkCard.Opening::hang, WorkCard.Opening::after);
    }

    private List<String> changes(
            Function<WorkCard.Opening, OpeningState> from, Function<WorkCard.Opening, OpeningState> to) {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < card.openings().size(); i++) {
            WorkCard.Opening o = card.openings().get(i);
            String what = change(from.apply(o), to.apply(o));
            if (!what.isEmpty()) {
                all.add(o.name() + " (" + CardPictures.letter(i) + "): " + what + ".");
            }
        }
        return all;
    }

    private static String change(OpeningState from, OpeningState to) {
        if (from == to) {
            return "";
        }
        String off = switch (from) {
            case OPEN -> "";
            case CLOSED -> "cover off";
            case TAPED -> "tape off";
            case PLUGGED -> "plug out";
        };
        String on = switch (to) {
            case OPEN -> "";
            case CLOSED -> "cover on";
            case TAPED -> "tape on";
            case PLUGGED -> "plug in";
        };
        return off + (off.isEmpty() || on.isEmpty() ? "" : ", then ") + on;
    }

    private static String word(OpeningState s) {
        return s.name().toLowerCase(Locale.ROOT);
    }

    private static String todo(WorkCard.Opening o) {
        if (o.use() == WorkCard.Use.PANEL) {
            return "stays shut";
        }
        if (o.use() == WorkCard.Use.DRAIN && !o.handled()) {
            return "keep clear";
        }
        String change = change(o.before(), o.pass());
        if (!change.isEmpty()) {
            return change;
        }
        return o.use() == WorkCard.Use.ENTRY
                ? "wand goes in"
                : o.pass() == OpeningState.OPEN ? "leave open" : "leave shut";
    }

    /** "1 taped opening, 2 masked items"; empty where there are none. */
    String masks() {
        WorkCard.Masks m = card.masks();
        List<String> all = new ArrayList<>();
        count(all, m.tapes(), "taped opening");
        count(all, m.plugs(), "plug");
        count(all, m.bags(), "masked item");
        return String.join(", ", all);
    }

    private static void count(List<String> all, int n, String what) {
        if (n > 0) {
            all.add(n + " " + what + (n == 1 ? "" : "s"));
        }
    }
}
