package baymist.verify;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Writes a report as Markdown tables. */
final class VerificationMarkdown {
    private VerificationMarkdown() {}

    static String of(VerificationReport report) {
        Map<String, List<Outcome>> stages = new LinkedHashMap<>();
        for (Outcome o : report.outcomes()) {
            stages.computeIfAbsent(o.verificationCase().stage(), s -> new ArrayList<>())
                    .add(o);
        }
        StringBuilder text = new StringBuilder(
                        "| stage | values | quantities | of these published or exact | passed |\n")
                .append("|---|---|---|---|---|\n");
        stages.forEach((stage, outcomes) -> text.append(summary(stage, outcomes)));
        stages.forEach((stage, outcomes) -> {
            text.append("\n### ").append(stage).append("\n\n");
            text.append("| case | quantity | inputs | expected | found | off | allowed | kind | known | source |\n");
            text.append("|---|---|---|---|---|---|---|---|---|---|\n");
            outcomes.forEach(o -> text.append(row(o)));
        });
        return text.toString();
    }

    private static String summary(String stage, List<Outcome> outcomes) {
        long passed = outcomes.stream().filter(Outcome::passed).count();
        return String.format(
                Locale.ROOT,
                "| %s | %d | %d | %d | %d |\n",
                stage,
                outcomes.size(),
                quantities(outcomes, true),
                quantities(outcomes, false),
                passed);
    }

    private static long quantities(List<Outcome> outcomes, boolean practiceToo) {
        return outcomes.stream()
                .map(Outcome::verificationCase)
                .filter(c -> practiceToo || !c.kind().equals("practice"))
                .map(VerificationCase::quantity)
                .distinct()
                .count();
    }

    private static String row(Outcome o) {
        VerificationCase c = o.verificationCase();
        String off = VerificationReport.deviation(c, c.deviation(o.value()));
        List<String> cells = List.of(
                c.id(),
                c.quantity(),
                c.inputs().toString(),
                number(c.expected()),
                o.failure().isEmpty() ? number(o.value()) : "none: " + o.failure(),
                o.passed() ? off : "**" + off + "**",
                VerificationReport.deviation(c, c.tolerance()),
                c.kind(),
                c.known(),
                c.source());
        return "| "
                + String.join(
                        " | ", cells.stream().map(t -> t.replace("|", "\\|")).toList()) + " |\n";
    }

    /** Six significant digits without trailing zeros; with an exponent below 0.001 and from a million on. */
    static String number(double value) {
        if (!Double.isFinite(value) || value == 0) {
            return value == 0 ? "0" : Double.toString(value);
        }
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(6)).stripTrailingZeros();
        int exponent = rounded.precision() - rounded.scale() - 1;
        if (exponent >= -3 && exponent < 6) {
            return rounded.toPlainString();
        }
        return rounded.movePointLeft(exponent).stripTrailingZeros().toPlainString() + "e" + exponent;
    }
}
