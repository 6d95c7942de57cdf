package baymist.export;

import baymist.coverage.Fractions;
import baymist.coverage.SeamCoverage;
import baymist.coverage.UnreachedRegion;
import baymist.ledger.MassLedger;
import baymist.run.RunResult;
import baymist.run.TimePoint;
import baymist.voxel.SurfelSet;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Tables as comma-separated text (RFC 4180, with line feeds), units in the heads. Columns: docs/formats/csv.md. */
final class CsvFiles {
    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setRecordSeparator('\n').get();

    private CsvFiles() {}

    static void surfels(RunResult r, Origins origins, Writer out) throws IOException {
        SurfelSet q = r.grid().surfels();
        List<String> parts = Labels.partNames(r);
        List<String> bays = Labels.bayNames(r);
        int[] bay = Labels.bays(r);
        int[] place = Labels.barePlaces(r);
        CSVPrinter csv = table(
                out,
                "surfel",
                "part",
                "bay",
                "surface",
                "x_m",
                "y_m",
                "z_m",
                "normal_x",
                "normal_y",
                "normal_z",
                "area_m2",
                "film_um",
                "verdict",
                "jets_share",
                "fog_share",
                "ran_in_share",
                "bare_place");
        for (int s = 0; s < q.count(); s++) {
            csv.printRecord(
                    s,
                    parts.get(q.part()[s]),
                    bays.get(bay[s]),
                    q.isStructure(s)
                            ? "structure"
                            : q.isProtected(s)
                                    ? "protected item"
                                    : r.cavity().openings().get(q.closure()[s]).name(),
                    q.centreX()[s],
                    q.centreY()[s],
                    q.centreZ()[s],
                    (float) q.normalX()[s],
                    (float) q.normalY()[s],
                    (float) q.normalZ()[s],
                    q.areaM2()[s],
                    1e6 * r.filmM()[s],
                    Labels.word(r.coverage().verdict()[s]),
                    origins.jets()[s],
                    origins.fog()[s],
                    origins.ranIn()[s],
                    place[s] == 0 ? "" : place[s]);
        }
        csv.flush();
    }

    static void regions(RunResult r, Writer out) throws IOException {
        CSVPrinter csv = table(
                out,
                "bare_place",
                "label",
                "area_m2",
                "bare_seam_m",
                "x_m",
                "y_m",
                "z_m",
                "min_x_m",
                "min_y_m",
                "min_z_m",
                "max_x_m",
                "max_y_m",
                "max_z_m",
                "parts",
                "bays",
                "entry",
                "way_from_entry_m",
                "where");
        for (UnreachedRegion u : r.coverage().unreached()) {
            csv.printRecord(
                    u.id(),
                    u.label(),
                    u.areaM2(),
                    u.seamM(),
                    u.centroidM().x(),
                    u.centroidM().y(),
                    u.centroidM().z(),
                    u.extentM().min().x(),
                    u.extentM().min().y(),
                    u.extentM().min().z(),
                    u.extentM().max().x(),
                    u.extentM().max().y(),
                    u.extentM().max().z(),
                    String.join("; ", u.parts()),
                    String.join("; ", u.bays()),
                    u.entry(),
                    Double.isFinite(u.depthM()) ? u.depthM() : "",
                    u.where());
        }
        csv.flush();
    }

    static void seams(RunResult r, Writer out) throws IOException {
        CSVPrinter csv = table(
                out,
                "seam",
                "kind",
                "bay",
                "length_m",
                "reached_share",
                "protected_share",
                "unresolved_m",
                "bare_m",
                "longest_bare_m",
                "barest_x_m",
                "barest_y_m",
                "barest_z_m");
        for (SeamCoverage.Seam s : r.coverage().seams().bySeam()) {
            csv.printRecord(
                    s.parts(),
                    s.kind().word(),
                    s.bay(),
                    s.lengthM(),
                    s.reached(),
                    s.protectedShare(),
                    s.unresolvedM(),
                    s.bareM(),
                    s.barestRunM(),
                    s.barestM().x(),
                    s.barestM().y(),
                    s.barestM().z());
        }
        csv.flush();
    }

    static void ledger(RunResult r, Writer out) throws IOException {
        MassLedger m = r.ledger();
        CSVPrinter csv = table(out, "where", "mass_kg", "share_of_sprayed");
        row(csv, m, "sprayed", m.sprayedKg());
        row(csv, m, "film", m.filmKg());
        row(csv, m, "airborne", m.airborneKg());
        row(csv, m, "overspray", m.oversprayKg());
        row(csv, m, "dripped", m.drippedKg());
        row(csv, m, "masked", m.maskedKg());
        if (r.grid().part() != null) {
            row(csv, m, "not_computed", m.beyondKg());
        }
        csv.flush();
    }

    private static void row(CSVPrinter csv, MassLedger m, String where, double kg) throws IOException {
        csv.printRecord(where, kg, m.sprayedKg() > 0 ? kg / m.sprayedKg() : "");
    }

    static void coverage(RunResult r, Writer out) throws IOException {
        CSVPrinter csv = table(
                out,
                "by",
                "name",
                "area_m2",
                "reached_share",
                "protected_share",
                "thin_share",
                "excess_share",
                "mean_film_um");
        rows(csv, "all", List.of(r.coverage().total()));
        rows(csv, "part", r.coverage().byPart());
        rows(csv, "bay", r.coverage().byBay());
        rows(csv, "facing", r.coverage().byFacing());
        csv.flush();
    }

    private static void rows(CSVPrinter csv, String by, List<Fractions> rows) throws IOException {
        for (Fractions f : rows) {
            csv.printRecord(
                    by,
                    f.name(),
                    f.areaM2(),
                    f.reached(),
                    f.protectedShare(),
                    f.thin(),
                    f.excess(),
                    1e6 * f.meanFilmM());
        }
    }

    static void history(RunResult r, Writer out) throws IOException {
        CSVPrinter csv =
                table(out, "time_s", "airborne_kg", "film_kg", "overspray_kg", "reached_share", "peak_gauge_pa");
        for (TimePoint p : r.history()) {
            csv.printRecord(p.timeS(), p.airborneKg(), p.filmKg(), p.oversprayKg(), p.reached(), p.peakGaugePa());
        }
        csv.flush();
    }

    private static CSVPrinter table(Writer out, String... head) throws IOException {
        CSVPrinter csv = new CSVPrinter(out, FORMAT);
        csv.printRecord((Object[]) head);
        return csv;
    }
}
