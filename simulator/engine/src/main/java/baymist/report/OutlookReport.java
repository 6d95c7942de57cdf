package baymist.report;

import baymist.coverage.Fractions;
import baymist.coverage.SeamCoverage;
import baymist.film.FilmFormulas;
import baymist.fog.Coagulation;
import baymist.fog.Exposure;
import baymist.run.Outlook;
import baymist.run.RunResult;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/** The outlook of a run: film later on, dots, seams, what stays in the wand, droplets that meet, mist outside. */
final class OutlookReport {
    private OutlookReport() {}

    static void text(Page page, RunResult r) {
        Outlook o = r.outlook();
        page.heading("Film later on");
        page.line("%s %18s %18s %9s", Page.cell("", 26), "wet: reached, prot.", "dry: reached, prot.", "wet mean");
        for (Outlook.FilmAge age : o.ages()) {
            page.line(
                    "%s %9s %9s %9s %9s %6.1f um",
                    Page.cell("  " + age.when(), 26),
                    TextReport.percent(age.wet().reached()),
                    TextReport.percent(age.wet().protectedShare()),
                    TextReport.percent(age.dry().reached()),
                    TextReport.percent(age.dry().protectedShare()),
                    1e6 * age.wet().meanFilmM());
        }
        page.line(
                "Targets are wet build; dry is what stays when volatiles have left (%s of the mass).",
                TextReport.percent(r.scene().product().nonVolatile()));
        page.line(
                "Closed film on %s of the surface; elsewhere dots or nothing (%s is wet under a lens).",
                TextReport.percent(o.closedShare()), TextReport.percent(o.wettedShare()));
        if (o.drippedLaterKg() > 0) {
            page.line("Another %.2f g drips and drains within 24 h of close-up.", 1e3 * o.drippedLaterKg());
        }
        double step = FilmFormulas.notchGaugeStepM(r.coverage().total().meanFilmM());
        page.line("A notched gauge (ASTM D4414) tells such films to %.0f um at best.", 1e6 * step);
        product(page, r, o);
        outside(page, r, o);
    }

    private static void product(Page page, RunResult r, Outlook o) {
        page.heading("Product");
        double density = r.scene().product().densityKgPerM3();
        page.line(
                "%s on every surface would take %.1f mL; %.1f mL left the tip.",
                TextReport.film(r.scene().targets().buildM()),
                1e6 * o.neededKg() / density,
                1e6 * RunFigures.productM3(r));
        for (Outlook.WandFill w : o.wands()) {
            page.line("%.1f mL stay in the bore of %s and were never sprayed.", 1e6 * w.volumeM3(), w.wand());
        }
        Outlook.Coagulating c = o.coagulating();
        page.line(
                "Droplets that meet: mean diameter x %.3f in %s (estimate; sizes are held constant).",
                c.growth(), c.bay());
    }

    private static void outside(Page page, RunResult r, Outlook o) {
        if (o.releases().isEmpty() && o.escapedSprayKg() == 0) {
            return;
        }
        page.heading("Mist outside");
        for (Outlook.Release release : o.releases()) {
            page.line(
                    "  %s %9.3f g in %8.1f L of air%s",
                    Page.cell(release.opening(), 34),
                    1e3 * release.fogKg(),
                    1e3 * release.airM3(),
                    release.airM3() > 0
                            ? String.format(
                                    java.util.Locale.ROOT, ", %.3g mg/m3", 1e6 * release.fogKg() / release.airM3())
                            : "");
        }
        if (o.escapedSprayKg() > 0) {
            page.line("  %s %9.3f g", Page.cell("spray straight out", 34), 1e3 * o.escapedSprayKg());
        }
        page.line(
                "Within %.0f m in room air of %.1f m/s the mean over the job is %.2g mg/m3: %.2g of a day's limit of 5 mg/m3"
                        + " over 8 h, for somebody without a respirator (two-zone estimate).",
                Exposure.NEAR_FIELD_M,
                Exposure.ROOM_SPEED_M_PER_S,
                1e6 * nearFieldKgPerM3(r),
                Exposure.shareOfDay(o.escapedKg()));
    }

    /** Mean mist in the near field over the job, kg/m³. */
    private static double nearFieldKgPerM3(RunResult r) {
        double time = r.history().isEmpty()
                ? 0
                : r.history().get(r.history().size() - 1).timeS();
        return time > 0 ? Exposure.nearFieldKgPerM3(r.outlook().escapedKg() / time) : 0;
    }

    static ObjectNode json(RunResult r) {
        Outlook o = r.outlook();
        ObjectNode root = Json.object();
        ArrayNode ages = root.putArray("film");
        for (Outlook.FilmAge age : o.ages()) {
            ObjectNode a = ages.addObject();
            a.put("when", age.when());
            Json.number(a, "afterS", age.afterS());
            a.set("wet", shares(age.wet()));
            a.set("dry", shares(age.dry()));
        }
        Json.number(root, "drippedLaterKg", o.drippedLaterKg());
        Json.number(root, "closedShare", o.closedShare());
        Json.number(root, "wettedShare", o.wettedShare());
        root.set("seams", seams(o));
        ArrayNode wands = root.putArray("wands");
        for (Outlook.WandFill w : o.wands()) {
            ObjectNode a = wands.addObject();
            a.put("wand", w.wand());
            Json.number(a, "leftInBoreMl", 1e6 * w.volumeM3());
        }
        Json.number(root, "neededKg", o.neededKg());
        ObjectNode c = root.putObject("coagulation");
        c.put("bay", o.coagulating().bay());
        Json.number(c, "growth", o.coagulating().growth());
        Json.number(c, "numberLeft", Coagulation.numberLeft(o.coagulating().meetings()));
        ArrayNode releases = root.putArray("releases");
        for (Outlook.Release release : o.releases()) {
            ObjectNode a = releases.addObject();
            a.put("opening", release.opening());
            Json.number(a, "fogKg", release.fogKg());
            Json.number(a, "airM3", release.airM3());
        }
        Json.number(root, "escapedSprayKg", o.escapedSprayKg());
        Json.number(root, "nearFieldKgPerM3", nearFieldKgPerM3(r));
        Json.number(root, "shareOfDayLimit", Exposure.shareOfDay(o.escapedKg()));
        Json.number(root, "wallForceOverThrust", o.wallForceOverThrust());
        return root;
    }

    private static ObjectNode seams(Outlook o) {
        ObjectNode s = Json.object();
        Json.number(s, "lengthM", o.seams().lengthM());
        Json.number(s, "reached", o.seams().reached());
        Json.number(s, "protected", o.seams().protectedShare());
        Json.number(s, "lapDepthM", o.seamDepthM());
        ArrayNode list = s.putArray("bySeam");
        List<SeamCoverage.Seam> seams = o.seams().bySeam();
        for (SeamCoverage.Seam seam : seams) {
            ObjectNode a = list.addObject();
            a.put("parts", seam.parts());
            Json.number(a, "lengthM", seam.lengthM());
            Json.number(a, "reached", seam.reached());
            Json.number(a, "protected", seam.protectedShare());
        }
        return s;
    }

    private static ObjectNode shares(Fractions f) {
        ObjectNode o = Json.object();
        Json.number(o, "reached", f.reached());
        Json.number(o, "protected", f.protectedShare());
        Json.number(o, "excess", f.excess());
        Json.number(o, "meanFilmUm", 1e6 * f.meanFilmM());
        return o;
    }
}
