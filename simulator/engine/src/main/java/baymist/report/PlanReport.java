package baymist.report;

import baymist.coverage.Fractions;
import baymist.plan.HandsResult;
import baymist.plan.PlanResult;
import baymist.plan.PlanScore;
import baymist.run.RunResult;
import baymist.scene.PassSpec;
import baymist.units.Quantities;
import java.io.IOException;
import java.io.Writer;
import java.util.Locale;
import java.util.stream.Collectors;

/** A plan in words. */
public final class PlanReport {
    private PlanReport() {}

    /** The plan as plain text. */
    public static String text(PlanResult r) {
        Page page = new Page();
        String title = r.stated().title();
        page.line("%s", title).line("%s", "=".repeat(Math.min(Page.WIDTH, title.length())));
        head(page, r);
        passes(page, r);
        numbers(page, r);
        hands(page, r);
        page.heading("What this is");
        page.wrapped(
                "* ",
                "Found with a dose matrix of "
                        + r.matrix().lines().stream()
                                .mapToInt(l -> l.stations())
                                .sum() + " stations on "
                        + r.matrix().lines().size() + " lines, at "
                        + r.matrix().scene().sizeBins()
                        + " size bins. The matrix adds up what single stations give; it is an estimate. What counts is the run.");
        page.wrapped(
                "* ",
                "Within: draw-back " + mm(r.limits().slowestMPerS()) + " to "
                        + mm(r.limits().fastestMPerS())
                        + " mm/s, at most " + Quantities.number(r.limits().triggerS(), 3) + " s of trigger and "
                        + r.limits().passes() + " passes.");
        page.wrapped(
                "* ",
                "Spraying oil mist can hurt people and start fires: masks, ventilation and ignition sources as your own rules and the"
                        + " product's data sheet say.");
        return page.toString();
    }

    private static void head(Page page, PlanResult r) {
        RunResult run = r.verified();
        if (r.planned().passes().isEmpty()) {
            page.wrapped("", "No pass within the limits reaches anything: no plan.");
            return;
        }
        if (r.keptOwn()) {
            page.wrapped(
                    "",
                    "The scene's own passes did better at planning resolution than any plan that was found: keep them.");
        }
        if (run == null) {
            page.wrapped(
                    "",
                    String.format(
                            Locale.ROOT,
                            "%d passes reach %.1f %% of the inside in a run at planning resolution. Not verified in full.",
                            r.planned().passes().size(),
                            100 * r.checked().reached()));
            return;
        }
        Fractions all = run.coverage().total();
        page.wrapped(
                "",
                String.format(
                        Locale.ROOT,
                        "%d passes reach %.1f %% of the inside, %.1f %% is protected: verified by a full run. %.1f mL in %.1f s of trigger.",
                        r.planned().passes().size(),
                        100 * all.reached(),
                        100 * all.protectedShare(),
                        productMl(run),
                        r.checked().triggerS()));
    }

    static double productMl(RunResult run) {
        return 1e6 * run.ledger().sprayedKg() / run.scene().product().densityKgPerM3();
    }

    private static void passes(Page page, PlanResult r) {
        if (r.planned().passes().isEmpty()) {
            return;
        }
        page.heading("Passes, low before high");
        page.line("    %-22s%-26s%10s%10s%11s%9s%8s", "entry", "wand", "from", "to", "draw back", "clock", "hang");
        int n = 1;
        for (PassSpec p : r.planned().passes()) {
            page.line(
                    "%3d %s%s%10s%10s%11s%9s%8s",
                    n++,
                    Page.cell(p.entry(), 22),
                    Page.cell(p.wand(), 26),
                    Double.isInfinite(p.fromDepthM()) ? "deepest" : mm(p.fromDepthM()) + " mm",
                    mm(p.toDepthM()) + " mm",
                    mm(p.drawBackMPerS()) + " mm/s",
                    String.format(Locale.ROOT, "%.0f deg", Math.toDegrees(p.clockRad())),
                    Quantities.number(p.hangS(), 3) + " s");
        }
    }

    private static String mm(double m) {
        return String.format(Locale.ROOT, "%.0f", 1e3 * m);
    }

    private static void numbers(Page page, PlanResult r) {
        page.heading("Promised and found");
        page.line("%-46s%10s%12s%10s", "", "reached", "protected", "trigger");
        if (r.own() != null) {
            row(page, "the scene's own passes, planning run", r.own());
        }
        int n = 1;
        for (PlanResult.Round round : r.rounds()) {
            row(page, "round " + n + ", dose matrix", round.predicted());
            row(page, "round " + n++ + ", planning run", round.found());
        }
        RunResult run = r.verified();
        if (run != null) {
            Fractions all = run.coverage().total();
            row(
                    page,
                    "full run of the plan, air: " + run.record().settings().getOrDefault("air", "as stated"),
                    new PlanScore(
                            all.reached(), all.protectedShare(), r.checked().triggerS(), r.checked().productM3()));
        }
    }

    private static void row(Page page, String what, PlanScore s) {
        page.line(
                "%s%8.1f %%%10.1f %%%8.1f s",
                Page.cell(what, 46), 100 * s.reached(), 100 * s.protectedShare(), s.triggerS());
    }

    private static void hands(Page page, PlanResult r) {
        HandsResult h = r.hands();
        if (h == null) {
            return;
        }
        page.heading("If a hand is not a machine");
        page.wrapped(
                "",
                String.format(
                        Locale.ROOT,
                        "%d jobs with other rates, depths, angles, stops and droplets, by the dose matrix: %.1f %% reached on the average,"
                                + " at least %.1f %% in 19 of 20; %.1f %% of the area is reached in nearly every one.",
                        h.samples(),
                        100 * h.meanReached(),
                        100 * h.nineteenOfTwenty(),
                        100 * h.surely()));
        page.wrapped(
                "",
                "Be careful about: "
                        + h.habits().stream()
                                .limit(2)
                                .map(x -> String.format(
                                        Locale.ROOT, "%s (costs up to %.1f points)", x.name(), 100 * x.lostReached()))
                                .collect(Collectors.joining(", "))
                        + ".");
        for (HandsResult.BayChance b : h.byBay()) {
            page.line("  %s%6.1f %% chance of a spot to be reached", Page.cell(b.bay(), 24), 100 * b.chance());
        }
    }

    /** The plan as JSON: docs/formats/plan.md. */
    public static void json(PlanResult r, Writer out) throws IOException {
        PlanJson.write(r, out);
    }
}
