package baymist.report;

import baymist.coverage.Fractions;
import baymist.plan.BlindBay;
import baymist.plan.HandsResult;
import baymist.plan.PlanResult;
import baymist.plan.PlanScore;
import baymist.run.RunResult;
import baymist.scene.PassSpec;
import baymist.study.HoleStudy;
import baymist.units.Quantities;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** A plan in words, in the order in which the work is done. */
public final class PlanReport {
    /** Rounds shown of many: the first and the last ones. */
    private static final int ROUNDS = 4;

    /** Regions told of many. */
    private static final int REGIONS = 6;

    private PlanReport() {}

    /** The plan as plain text. */
    public static String text(PlanResult r) {
        Page page = new Page();
        String title = r.stated().title();
        page.line("%s", title).line("%s", "=".repeat(Math.min(Page.WIDTH, title.length())));
        head(page, r);
        blind(page, r);
        before(page, r);
        passes(page, r);
        numbers(page, r);
        hands(page, r);
        about(page, r);
        return page.toString();
    }

    /** The plan as JSON: docs/formats/plan.md. */
    public static void json(PlanResult r, Writer out) throws IOException {
        PlanJson.write(r, out);
    }

    static double productMl(RunResult run) {
        return 1e6 * run.ledger().sprayedKg() / run.scene().product().densityKgPerM3();
    }

    /** Holes that the plan uses. */
    static List<HoleStudy.Chosen> holes(PlanResult r) {
        HoleStudy.Holes holes = r.holes();
        return holes == null
                ? List.of()
                : holes.chosen().stream()
                        .filter(c -> r.planned().passes().stream()
                                .anyMatch(p -> p.entry().equals(c.name())))
                        .toList();
    }

    private static void head(Page page, PlanResult r) {
        RunResult run = r.verified();
        int n = r.planned().passes().size();
        if (n == 0) {
            page.wrapped("", "No pass within the limits reaches anything: no plan.");
            return;
        }
        if (r.keptOwn()) {
            page.wrapped(
                    "",
                    "The scene's own passes did better at planning resolution than any plan that was found: keep them.");
        }
        String passes = n + (n == 1 ? " pass reaches " : " passes reach ");
        if (run == null) {
            page.wrapped(
                    "",
                    String.format(
                            Locale.ROOT,
                            "%s%.1f %% of the inside with %.1f mL in %.1f s of trigger, by a run at planning resolution. Not verified"
                                    + " in full.",
                            passes,
                            100 * r.checked().reached(),
                            1e6 * r.checked().productM3(),
                            r.checked().triggerS()));
            return;
        }
        Fractions all = run.coverage().total();
        page.wrapped(
                "",
                String.format(
                        Locale.ROOT,
                        "%s%.1f %% of the inside, %.1f %% is protected: verified by a full run with %s air. %.1f mL in %.1f s of"
                                + " trigger.",
                        passes,
                        100 * all.reached(),
                        100 * all.protectedShare(),
                        run.record().settings().getOrDefault("air", "its"),
                        productMl(run),
                        r.checked().triggerS()));
    }

    private static void blind(Page page, PlanResult r) {
        if (r.blind().isEmpty()) {
            return;
        }
        page.heading("Can't be reached with what is at hand");
        for (BlindBay b : r.blind()) {
            page.wrapped(
                    "* ",
                    String.format(
                            Locale.ROOT,
                            "%s, %.1f %% of the inside (%.3f m2). %s",
                            b.bay(),
                            100 * b.share(),
                            b.areaM2(),
                            b.why()));
            page.wrapped("  ", b.needed());
        }
    }

    private static void before(Page page, PlanResult r) {
        List<HoleStudy.Chosen> holes = holes(r);
        HoleStudy.Holes sought = r.holes();
        boolean none = r.panels().isEmpty() && r.masked().isEmpty() && sought == null;
        if (none) {
            return;
        }
        page.heading("Before spraying");
        r.panels().forEach(p -> page.wrapped("* ", "Open '" + p + "'; it is open while spraying."));
        r.masked()
                .forEach(m -> page.wrapped(
                        "* ", "Bag '" + m + "': unmasked, this plan puts more film on it than its limit allows."));
        for (HoleStudy.Chosen h : holes) {
            page.wrapped("* ", "Drill '" + h.name() + "': " + h.site().words() + ", for " + h.wand() + ".");
            page.wrapped("  ", HoleWords.keeps(h, holes));
            page.wrapped("  ", HoleWords.gains(h) + " (With the scene's own passes and one through the hole.)");
        }
        if (!holes.isEmpty() && sought != null) {
            boolean fewer = holes.size() < sought.chosen().size();
            page.wrapped(
                    "  ",
                    "No more holes: "
                            + (fewer ? "another would not lift the plan by two points" : sought.stop())
                            + ".");
            page.wrapped("  ", CompareReport.DRILLING);
        } else if (sought != null) {
            page.wrapped(
                    "* ",
                    sought.chosen().isEmpty()
                            ? "No hole is proposed: " + sought.stop() + "."
                            : "No hole is worth drilling: the plan without holes does as well.");
        }
    }

    private static void passes(Page page, PlanResult r) {
        if (r.planned().passes().isEmpty()) {
            return;
        }
        page.heading("Passes, low before high");
        page.line(
                "    %-21s%-26s%8s%8s%11s%7s%9s%6s",
                "entry", "wand", "from mm", "to mm", "draw back", "takes", "pin", "wait");
        int n = 1;
        PassSpec last = null;
        for (PassSpec p : r.planned().passes()) {
            boolean on = last != null && goesOn(last, p);
            page.line(
                    "%3d %s%s%8s%8s%11s%7s%9s%6s",
                    n++,
                    Page.cell(on ? "  goes on, trigger on" : p.entry(), on ? 22 : 21),
                    Page.cell(on ? "" : p.wand(), on ? 25 : 26),
                    Double.isInfinite(p.fromDepthM()) ? "deepest" : mm(p.fromDepthM()),
                    mm(p.toDepthM()),
                    Quantities.number(1e3 * p.drawBackMPerS(), 3) + " mm/s",
                    takes(p),
                    String.format(Locale.ROOT, "%.0f deg", Math.toDegrees(p.clockRad())),
                    p.hangS() > 0 ? Quantities.number(p.hangS(), 3) + " s" : "-");
            last = p;
        }
        page.wrapped(
                "",
                "Depths are those of the tip from the entry. Pin: clock angle of the direction pin, 0 = up, seen from outside along the wand."
                        + " Trigger off before the wand is put in again and while it waits.");
        page.wrapped(
                "",
                "After the last pass the fog hangs "
                        + Quantities.number(r.planned().hangS(), 3) + " s.");
    }

    /** Whether a pass is the draw-back of the one before, at another rate. */
    private static boolean goesOn(PassSpec a, PassSpec b) {
        return a.entry().equals(b.entry())
                && a.wand().equals(b.wand())
                && a.clockRad() == b.clockRad()
                && a.hangS() == 0
                && Math.abs(a.toDepthM() - b.fromDepthM()) < 1.5e-3;
    }

    private static String takes(PassSpec p) {
        double seconds = p.holdS() + (p.fromDepthM() - p.toDepthM()) / p.drawBackMPerS();
        return Double.isFinite(seconds) ? String.format(Locale.ROOT, "%.1f s", seconds) : "";
    }

    private static String mm(double m) {
        return String.format(Locale.ROOT, "%.0f", 1e3 * m);
    }

    private static void numbers(Page page, PlanResult r) {
        page.heading("Promised and found");
        page.line("%-46s%10s%12s%11s%10s", "", "reached", "protected", "product", "trigger");
        if (r.own() != null) {
            row(page, "the scene's own passes, planning run", r.own());
        }
        List<PlanResult.Round> rounds = r.rounds();
        for (int i = 0; i < rounds.size(); i++) {
            if (i == 0 || i > rounds.size() - ROUNDS) {
                String plan = i == rounds.size() - 1 ? "the plan" : "plan " + (i + 1) + " on the way";
                row(page, plan + ", dose matrix", rounds.get(i).predicted());
                row(page, plan + ", planning run", rounds.get(i).found());
            }
        }
        PlanFullWords.rows(r).forEach(f -> row(page, f.what(), f.score()));
        String agreement = PlanFullWords.agreement(r);
        if (!agreement.isEmpty()) {
            page.wrapped("", agreement);
        }
    }

    private static void row(Page page, String what, PlanScore s) {
        page.line(
                "%s%8.1f %%%10.1f %%%8.1f mL%8.1f s",
                Page.cell(what, 46), 100 * s.reached(), 100 * s.protectedShare(), 1e6 * s.productM3(), s.triggerS());
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
                        "Tried %d times with other rates, depths, angles, stops and droplets (by the dose matrix): 19 of 20 jobs reach"
                                + " at least %.1f %% of the inside, the average one %.1f %%; %.1f %% is reached in nearly every job.",
                        h.samples(),
                        100 * h.nineteenOfTwenty(),
                        100 * h.meanReached(),
                        100 * h.surely()));
        page.wrapped(
                "",
                "Mind most: "
                        + h.habits().stream()
                                .limit(2)
                                .map(x -> String.format(
                                        Locale.ROOT,
                                        "%s (alone it can cost %.1f points)",
                                        x.name(),
                                        100 * x.lostReached()))
                                .collect(Collectors.joining(", then "))
                        + ".");
        checks(page, h);
        page.blank();
        page.line("Chance that a place is reached:");
        for (HandsResult.BayChance b : h.byBay()) {
            page.line("%6.0f %%  in %s on the average", 100 * b.chance(), b.bay());
        }
        regions(page, h);
    }

    private static void checks(Page page, HandsResult h) {
        List<HandsResult.Check> coarse =
                h.checks().stream().filter(c -> !c.full()).toList();
        if (!coarse.isEmpty()) {
            page.wrapped(
                    "",
                    "Of these jobs, a poor, a middling and a good one were run as they were done, at planning resolution: "
                            + coarse.stream()
                                    .map(c -> String.format(Locale.ROOT, "%.1f %%", 100 * c.byRun()))
                                    .collect(Collectors.joining(", "))
                            + " (the matrix had said "
                            + coarse.stream()
                                    .map(c -> String.format(Locale.ROOT, "%.1f %%", 100 * c.byMatrix()))
                                    .collect(Collectors.joining(", "))
                            + ").");
        }
        h.checks().stream()
                .filter(HandsResult.Check::full)
                .forEach(c -> page.wrapped(
                        "",
                        String.format(
                                Locale.ROOT,
                                "The poor one (19 of 20 do better by the matrix) reached %.1f %% in a full run.",
                                100 * c.byRun())));
    }

    private static void regions(Page page, HandsResult h) {
        if (h.regions().isEmpty()) {
            page.line("Every region is reached in at least 19 of 20 jobs.");
            return;
        }
        page.line("Regions that fewer than 19 of 20 jobs reach, the largest first:");
        for (HandsResult.RegionChance c :
                h.regions().subList(0, Math.min(REGIONS, h.regions().size()))) {
            page.wrapped(
                    String.format(Locale.ROOT, "%6.0f %%  ", 100 * c.chance()),
                    String.format(Locale.ROOT, "%s: %s, %.0f cm2", c.label(), c.where(), 1e4 * c.areaM2()));
        }
        int more = h.regions().size() - REGIONS;
        if (more > 0) {
            page.line("         and %d smaller ones (all in --json).", more);
        }
    }

    private static void about(Page page, PlanResult r) {
        page.heading("What this is");
        int stations = r.matrix().lines().stream().mapToInt(l -> l.stations()).sum();
        page.wrapped(
                "* ",
                "Found with a dose matrix of " + stations + " stations on "
                        + r.matrix().lines().size() + " lines and " + r.runs()
                        + " runs at planning resolution: " + r.resolution()
                        + ". The matrix adds up what single stations give and only proposes; runs decide. Projected air is quick and"
                        + " leaves eddies out: go by the full run.");
        page.wrapped("* ", "Within: " + limits(r) + ".");
        page.wrapped(
                "* ",
                "Spraying oil mist can hurt people and start fires: masks, ventilation and ignition sources as your own rules and the"
                        + " product's data sheet say.");
    }

    private static String limits(PlanResult r) {
        List<String> all = new ArrayList<>();
        all.add("draw-back " + Quantities.number(1e3 * r.limits().slowestMPerS(), 3) + " to "
                + Quantities.number(1e3 * r.limits().fastestMPerS(), 3) + " mm/s");
        if (Double.isFinite(r.limits().productM3())) {
            all.add("at most " + Quantities.number(1e6 * r.limits().productM3(), 3) + " mL");
        }
        if (Double.isFinite(r.limits().triggerS())) {
            all.add("at most " + Quantities.number(r.limits().triggerS(), 3) + " s of trigger");
        }
        all.add("at most " + r.limits().passes() + " passes");
        return String.join(", ", all);
    }
}
