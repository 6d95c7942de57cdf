package baymist.report;

import baymist.coverage.Coverage;
import baymist.coverage.Fractions;
import baymist.coverage.SeamCoverage;
import baymist.geom.Vec3;
import baymist.ledger.MassLedger;
import baymist.problem.Finding;
import baymist.run.RunResult;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Summary of a run in plain text that reads well in 100 columns. ASCII only, so that any terminal shows it. */
public final class TextReport {
    private static final int NAME = 26;
    private static final int BAR = 14;
    private static final double UM = 1e-6;
    /** 1 mil = 25.4 µm exactly (international inch, 1959). */
    private static final double MIL = 25.4e-6;

    private TextReport() {}

    /** The whole report, lines of at most 100 characters, each ended by a line feed. */
    public static String of(RunResult r) {
        Page page = new Page();
        headline(page, r);
        coverage(page, r.coverage());
        RegionReport.text(page, r);
        SeamReport.text(page, r);
        ItemReport.text(page, r);
        ledger(page, r);
        OutlookReport.text(page, r);
        ConsequenceReport.text(page, r);
        if (r.convergence() != null) {
            ConvergenceReport.text(page, r.convergence());
        }
        findings(page, r.findings());
        page.heading("Cautions");
        for (String caution : Cautions.of(r)) {
            page.wrapped("* ", caution);
        }
        record(page, r);
        return page.toString();
    }

    private static void headline(Page page, RunResult r) {
        Fractions all = r.coverage().total();
        page.line("%s", r.scene().title());
        page.line(
                "%s",
                "=".repeat(Math.min(Page.WIDTH, Math.max(1, r.scene().title().length()))));
        page.line(
                "Film reaches %s of the inside, %s is protected; %s stays bare.",
                percent(all.reached()), percent(all.protectedShare()), percent(1 - all.reached()));
        ComputedReport.text(page, r);
        page.line(
                "%.1f mL of %s in %.1f s of trigger, then %.0f s of hang time. Mean film %s.",
                1e6 * RunFigures.productM3(r),
                r.scene().product().name(),
                RunFigures.triggerS(r),
                r.scene().hangS(),
                film(all.meanFilmM()));
        page.line(
                "Film: reached from %s, protected from %s, excess above %s.",
                film(r.scene().targets().hazeM()),
                film(r.scene().targets().buildM()),
                film(r.scene().targets().excessM()));
        ConfidenceReport.text(page, r.confidence());
    }

    private static void coverage(Page page, Coverage c) {
        page.heading("Coverage by area");
        page.line(
                "%s %9s  %s %7s %7s %6s %7s %15s",
                Page.cell("", NAME),
                "area",
                Page.cell("", BAR),
                "reached",
                "protect",
                "excess",
                "mean",
                "seams  reached");
        row(page, c.total(), SeamReport.total(c.seams()));
        group(page, "by part", c.byPart(), c.seams().byPart());
        if (c.byBay().size() > 1) {
            group(page, "by bay", c.byBay(), c.seams().byBay());
        }
        group(page, "by facing", c.byFacing(), List.of());
        page.line("Bars: # protected, + thin, . bare. Protected includes excess; reached = protected + thin.");
        if (c.seams().lengthM() > 0) {
            page.line(
                    "Seams: metres of line where parts meet, half with either part, and the share with film beside it.");
        }
    }

    private static void group(Page page, String name, List<Fractions> rows, List<SeamCoverage.Share> seams) {
        page.line("%s", name);
        for (Fractions f : rows) {
            row(page, f, SeamCoverage.find(seams, f.name()));
        }
    }

    private static void row(Page page, Fractions f, SeamCoverage.@Nullable Share seams) {
        page.line(
                "%s %9s  %s %7s %7s %6s %4.1f um %s",
                Page.cell("  " + f.name(), NAME),
                area(f.areaM2()),
                bar(f),
                percent(f.reached()),
                percent(f.protectedShare()),
                percent(f.excess()),
                f.meanFilmM() / UM,
                SeamReport.columns(seams));
    }

    /** Protected, thin and bare shares as a bar; a share that is not zero shows at least one mark where there is room. */
    static String bar(Fractions f) {
        int covered = marks(f.protectedShare());
        int reached = Math.max(marks(f.reached()), f.thin() > 0 ? Math.min(BAR, covered + 1) : covered);
        return "#".repeat(covered) + "+".repeat(reached - covered) + ".".repeat(BAR - reached);
    }

    private static int marks(double share) {
        int marks = (int) Math.round(share * BAR);
        return share > 0 && marks == 0 ? 1 : share < 1 && marks == BAR ? BAR - 1 : marks;
    }

    private static void ledger(Page page, RunResult r) {
        MassLedger m = r.ledger();
        page.heading("Where the product went");
        ledgerRow(page, r, "sprayed", m.sprayedKg());
        ledgerRow(page, r, "film on the structure", m.filmKg());
        ledgerRow(page, r, "still in the air", m.airborneKg());
        ledgerRow(page, r, "overspray through openings", m.oversprayKg());
        ledgerRow(page, r, "dripped and drained", m.drippedKg());
        ledgerRow(page, r, "on tape, plugs, covers", m.maskedKg());
        if (r.grid().part() != null) {
            ledgerRow(page, r, "into bays not computed", m.beyondKg());
        }
        page.line("  The account closes to %.1e of what was sprayed.", Math.abs(m.closure()));
        page.line("  Rounding of the fog's steps that audits put right: %.1e of it.", m.audited());
        if (RunFigures.initialFogKg(r) > 0) {
            page.line("  Sprayed includes %.3f g of fog that the scene starts with.", 1e3 * RunFigures.initialFogKg(r));
        }
    }

    private static void ledgerRow(Page page, RunResult r, String name, double massKg) {
        double density = r.scene().product().densityKgPerM3();
        double share = r.ledger().sprayedKg() > 0 ? massKg / r.ledger().sprayedKg() : 0;
        page.line(
                "%s %9.3f mL %9.3f g %8s",
                Page.cell("  " + name, NAME + 4), 1e6 * massKg / density, 1e3 * massKg, percent(share));
    }

    static void findings(Page page, List<Finding> findings) {
        if (findings.isEmpty()) {
            return;
        }
        page.heading("Findings");
        for (Finding f : findings) {
            String lead = String.format(Locale.ROOT, "%-8s", f.severity().name().toLowerCase(Locale.ROOT));
            page.wrapped(lead + " ", f.text() + " [" + f.id() + "] (" + f.place() + ")");
        }
    }

    private static void record(Page page, RunResult r) {
        page.heading("Run");
        double seconds = r.record().secondsByStage().values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
        page.line("Scene %s", r.scene().file());
        page.line("sha256 %s", r.record().sceneHash());
        page.line(
                "Baymist %s, %d cells of %s, %d threads, %.1f s. State %s",
                r.record().engineVersion(),
                r.grid().cellCount(),
                voxel(r.grid().sizeM()),
                r.record().threads(),
                seconds,
                r.record().stateHash());
    }

    static String voxel(Vec3 size) {
        return significant(1e3 * size.x(), 3) + " x " + significant(1e3 * size.y(), 3) + " x "
                + significant(1e3 * size.z(), 3) + " mm";
    }

    /** A share as a percentage with one digit; 100.0 % and 0.0 % are kept for exactly all and exactly nothing. */
    static String percent(double share) {
        double shown = Math.round(1000 * share) / 10.0;
        if (shown >= 100 && share < 1) {
            shown = 99.9;
        }
        if (shown <= 0 && share > 0) {
            return "<0.1 %";
        }
        return String.format(Locale.ROOT, "%.1f %%", shown);
    }

    /** Areas from 0.1 m² in m², from 1 cm² in cm², smaller ones in mm². */
    /** Litres up to a cubic metre, m3 from there. */
    static String volume(double m3) {
        return m3 < 1 ? String.format(Locale.ROOT, "%.3f L", 1e3 * m3) : String.format(Locale.ROOT, "%.3f m3", m3);
    }

    static String area(double areaM2) {
        if (areaM2 >= 0.1) {
            return String.format(Locale.ROOT, "%.3f m2", areaM2);
        }
        return areaM2 >= 1e-4
                ? String.format(Locale.ROOT, "%.1f cm2", 1e4 * areaM2)
                : String.format(Locale.ROOT, "%.1f mm2", 1e6 * areaM2);
    }

    /** A film build in both trade units: "10 um (0.39 mil)". */
    static String film(double filmM) {
        return significant(filmM / UM, 3) + " um (" + significant(filmM / MIL, 2) + " mil)";
    }

    /** A length in millimetres to four significant digits, never above the length. */
    static String millimetresDown(double lengthM) {
        return BigDecimal.valueOf(1e3 * lengthM)
                .round(new MathContext(9, RoundingMode.HALF_UP))
                .round(new MathContext(4, RoundingMode.DOWN))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** A number to so many significant digits, without trailing zeros or an exponent. */
    static String significant(double value, int digits) {
        return BigDecimal.valueOf(value)
                .round(new MathContext(digits, RoundingMode.HALF_UP))
                .stripTrailingZeros()
                .toPlainString();
    }
}
