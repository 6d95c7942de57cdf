package baymist.verify;

import java.util.List;
import java.util.Locale;

/** Outcomes of all cases in the table's order. */
public record VerificationReport(List<Outcome> outcomes) {
    public VerificationReport {
        outcomes = List.copyOf(outcomes);
    }

    /** Whether every case is within its tolerance. */
    public boolean passed() {
        return outcomes.stream().allMatch(Outcome::passed);
    }

    /** Plain text, at most 100 columns: one row a case, failures explained below it, a count at the end. */
    public String table() {
        StringBuilder text = new StringBuilder();
        String stage = "";
        for (Outcome o : outcomes) {
            VerificationCase c = o.verificationCase();
            if (!c.stage().equals(stage)) {
                stage = c.stage();
                text.append(String.format(
                        Locale.ROOT,
                        "%n%-28s %-24s %11s %11s %9s %9s%n",
                        stage,
                        "quantity",
                        "expected",
                        "found",
                        "off",
                        "allowed"));
            }
            text.append(String.format(
                    Locale.ROOT,
                    "%s %-26s %-24s %11.5g %11.5g %9s %9s%n",
                    o.passed() ? " " : "!",
                    cut(c.id(), 26),
                    cut(c.quantity(), 24),
                    c.expected(),
                    o.value(),
                    deviation(c, c.deviation(o.value())),
                    deviation(c, c.tolerance())));
            if (!o.failure().isEmpty()) {
                text.append("    ").append(o.failure()).append(System.lineSeparator());
            }
        }
        long good = outcomes.stream().filter(Outcome::passed).count();
        return text.append(
                        String.format(Locale.ROOT, "%n%d of %d values within their tolerance%n", good, outcomes.size()))
                .toString();
    }

    /** Tables in Markdown: a summary by stage, then every case of each stage. Values are SI; shares and counts are bare. */
    public String markdown() {
        return VerificationMarkdown.of(this);
    }

    static String deviation(VerificationCase c, double d) {
        return c.absolute() || c.expected() == 0
                ? String.format(Locale.ROOT, "%.2g", d)
                : String.format(Locale.ROOT, "%.3g %%", 100 * d);
    }

    private static String cut(String text, int width) {
        return text.length() <= width ? text : text.substring(0, width - 1) + "…";
    }
}
