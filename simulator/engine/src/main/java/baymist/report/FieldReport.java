package baymist.report;

import baymist.field.Confirmation;
import baymist.field.PoseShare;
import baymist.field.ReachField;
import baymist.geom.Vec3;
import baymist.scene.PassSpec;
import baymist.scene.WandAim;
import baymist.units.Quantities;
import java.io.IOException;
import java.io.Writer;
import java.util.Locale;

/** A reach field in words. */
public final class FieldReport {
    /** A share below which a pose is told to be no good (ASSUMED). */
    private static final double NEXT_TO_NOTHING = 0.02;

    private FieldReport() {}

    /** The field as plain text. */
    public static String text(ReachField f) {
        Page page = new Page();
        page.line("%s", f.scene().title())
                .line("%s", "=".repeat(Math.min(Page.WIDTH, f.scene().title().length())));
        Vec3 c = f.region().centroidM();
        page.wrapped(
                "",
                String.format(
                        Locale.ROOT,
                        "Where would the tip have to be for oil to end on: %s? (%s, centred at [%.0f, %.0f, %.0f] mm)",
                        f.region().where(),
                        TextReport.area(f.region().areaM2()),
                        1e3 * c.x(),
                        1e3 * c.y(),
                        1e3 * c.z()));
        places(page, f);
        poses(page, f);
        confirmed(page, f);
        page.heading("What this is");
        page.wrapped(
                "* ",
                "The jet's share is that of one free jet of '" + f.jet().wand()
                        + "' turned where it lands most. It does not know where a wand can get to; the poses do.");
        page.wrapped("* ", "Computed with " + f.planning().words() + ".");
        page.wrapped("* ", "The fog's share holds in " + ReachField.FROZEN + ". The forward run has it.");
        return page.toString();
    }

    private static void places(Page page, ReachField f) {
        page.heading("Best places, wherever they are");
        int jet = best(f.jet().share());
        int fog = best(f.fog().share());
        page.wrapped("jet  ", "%s".formatted(place(f, jet, f.jet().share()[jet]) + aim(f, jet)));
        String within = Double.isInfinite(f.fog().hangS())
                ? "until all has settled or left"
                : "within " + seconds(f.fog().hangS()) + " of hang time";
        page.wrapped("fog  ", place(f, fog, f.fog().share()[fog]) + " " + within);
        double seen = 0;
        double all = 0;
        for (int i = 0; i < f.jet().seen().length; i++) {
            double v = f.grid().volumeM3(i);
            all += v;
            seen += f.jet().seen()[i] > 0 ? v : 0;
        }
        page.wrapped(
                "     ",
                String.format(Locale.ROOT, "%.1f %% of the air has some of the region in sight.", 100 * seen / all));
    }

    private static String place(ReachField f, int cell, double share) {
        Vec3 p = f.grid().centre(cell);
        return String.format(
                Locale.ROOT,
                "%s %% of it ends there from [%.0f, %.0f, %.0f] mm in %s",
                percent(share),
                1e3 * p.x(),
                1e3 * p.y(),
                1e3 * p.z(),
                f.grid().bays().get(f.grid().bayOfCell(cell)).name());
    }

    private static String aim(ReachField f, int cell) {
        double[] a = f.jet().aim();
        return String.format(
                Locale.ROOT, ", aimed along (%.2f, %.2f, %.2f)", a[3 * cell], a[3 * cell + 1], a[3 * cell + 2]);
    }

    static int best(double[] share) {
        int best = 0;
        for (int c = 1; c < share.length; c++) {
            best = share[c] > share[best] ? c : best;
        }
        return best;
    }

    private static void poses(Page page, ReachField f) {
        page.heading("Best poses that the scene's wands reach");
        if (f.poses().isEmpty()) {
            page.wrapped(
                    "",
                    "None: no wand of the scene goes in at one of its entries. 'baymist reach' says what keeps them out.");
            return;
        }
        page.line("%-22s%-26s%8s%8s%10s%8s%8s", "entry", "wand", "depth", "clock", "direct", "as fog", "both");
        for (PoseShare p : f.poses()) {
            page.line(
                    "%s%s%8s%8s%9s%%%7s%%%7s%%",
                    Page.cell(p.hold().entry(), 22),
                    Page.cell(p.hold().wand(), 26),
                    String.format(Locale.ROOT, "%.0f mm", 1e3 * p.hold().fromDepthM()),
                    String.format(
                            Locale.ROOT, "%.0f deg", Math.toDegrees(p.hold().clockRad())),
                    percent(p.direct()),
                    percent(p.fog()),
                    percent(p.share()));
        }
        if (f.poses().get(0).share() < NEXT_TO_NOTHING) {
            page.wrapped(
                    "",
                    "No place that a wand gets to sends more than next to nothing there: another way in is needed, not another aim.");
        }
        page.wrapped(
                "",
                "Shares of what is sprayed while the tip is held there. Clock 0 = structure up, seen along the wand from outside.");
    }

    private static void confirmed(Page page, ReachField f) {
        if (f.confirmed() == null && f.confirmedPass() == null) {
            return;
        }
        page.heading("Tried in forward runs, after the scene's own passes");
        if (f.confirmed() != null) {
            tried(page, f.confirmed());
            page.wrapped(
                    "  ",
                    String.format(
                            Locale.ROOT,
                            "The field promised the region %.3f g; it holds %.3f g more.",
                            1e3 * f.confirmed().predictedKg(),
                            1e3 * f.confirmed().gainedKg()));
        }
        if (f.confirmedPass() != null) {
            if (f.confirmed() != null) {
                page.blank();
            }
            tried(page, f.confirmedPass());
            if (f.pass() != null) {
                page.wrapped(
                        "  ",
                        String.format(
                                Locale.ROOT,
                                "The field promised jets on %.1f %% of the region, and %.2f um of fog on the average.",
                                100 * f.pass().wetted(),
                                1e6 * f.pass().fogM()));
            }
        }
    }

    private static void tried(Page page, Confirmation k) {
        PassSpec p = k.pass();
        boolean hold = p.fromDepthM() == p.toDepthM();
        String depth = hold
                ? String.format(Locale.ROOT, "held for %s at %.0f mm", seconds(p.holdS()), 1e3 * p.fromDepthM())
                : String.format(
                        Locale.ROOT,
                        "drawn back from %.0f mm to %.0f mm at %.0f mm/s",
                        1e3 * p.fromDepthM(),
                        1e3 * p.toDepthM(),
                        1e3 * p.drawBackMPerS());
        page.wrapped(
                hold ? "Best pose: " : "Best pass: ",
                String.format(
                        Locale.ROOT,
                        "'%s' at '%s'%s %s, clock %.0f deg",
                        p.wand(),
                        p.entry(),
                        aim(p),
                        depth,
                        Math.toDegrees(p.clockRad())));
        page.line("  film on the region   %8.2f um  ->  %8.2f um", 1e6 * k.filmBeforeM(), 1e6 * k.filmAfterM());
        page.line("  reached of it        %8.1f %%   ->  %8.1f %%", 100 * k.reachedBefore(), 100 * k.reachedAfter());
        page.line(
                "  reached of all       %8.1f %%   ->  %8.1f %%",
                100 * k.allReachedBefore(), 100 * k.allReachedAfter());
    }

    static String aim(PassSpec p) {
        return p.aim() instanceof WandAim.Near ? ", aimed at the region," : "";
    }

    private static String seconds(double s) {
        return Quantities.number(s, 3) + " s";
    }

    private static String percent(double share) {
        return share > 0 && share < 0.0005 ? "<0.1" : String.format(Locale.ROOT, "%.1f", 100 * share);
    }

    /** The field as JSON: docs/formats/field.md. */
    public static void json(ReachField f, Writer out) throws IOException {
        FieldJson.write(f, out);
    }
}
