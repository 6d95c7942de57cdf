package baymist.report;

import baymist.card.WorkCard;
import java.util.Locale;

/** What the terminal says of a card that was written: its passes and sums in a few lines. */
public final class CardText {
    private CardText() {}

    /** The text. */
    public static String of(WorkCard card) {
        StringBuilder t = new StringBuilder();
        add(
                t,
                "%s: %s",
                card.touchUp() ? "Touch-up card" : "Work card",
                card.origin().title());
        add(
                t,
                "%d pass%s in %.0f s of trigger and %.0f s of waiting and hanging; %.0f mL of %s with %.0f %% allowance, %d refill%s.",
                card.steps().size(),
                card.steps().size() == 1 ? "" : "es",
                card.times().triggerS(),
                card.times().totalS() - card.times().triggerS(),
                1e6 * card.product().neededM3(),
                card.product().name(),
                100 * card.product().allowance(),
                card.product().refills(),
                card.product().refills() == 1 ? "" : "s");
        for (WorkCard.Step s : card.steps()) {
            add(
                    t,
                    "  %d  %s: %s, trigger on at %.0f mm, off at %.0f mm%s",
                    s.number(),
                    s.name(),
                    s.entry(),
                    1e3 * s.fromM(),
                    1e3 * s.toM(),
                    s.drawBackMPerS() > 0
                            ? String.format(Locale.ROOT, ", %.1f s for half a metre", s.secondsPerHalfMetre())
                            : "");
        }
        if (card.orderChanged()) {
            add(t, "The passes stand low before high; the scene has another order.");
        }
        add(
                t,
                "%d place%s to inspect. Local rules and approved data come before the card.",
                card.points().size(),
                card.points().size() == 1 ? "" : "s");
        return t.toString();
    }

    private static void add(StringBuilder t, String format, Object... values) {
        t.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
