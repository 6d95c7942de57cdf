package baymist.verify;

import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.report.AtomicFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Writes the computed part of the validation: tables and plots of one folder (docs/validation). */
public final class ValidationFolder {
    private ValidationFolder() {}

    /**
     * Writes {@code cases.md}, {@code errors.svg}, {@code order.md} and {@code order.svg}, each whole or not at all.
     *
     * @throws SceneException VER-006 if one can't be written
     */
    public static void write(Path folder, VerificationReport report, List<OrderStudy.Row> orders) {
        write(folder.resolve("cases.md"), cases(report));
        write(folder.resolve("errors.svg"), ErrorPlot.cases(report));
        write(folder.resolve("order.md"), orders(orders));
        write(folder.resolve("order.svg"), ErrorPlot.orders(orders));
    }

    /** Writes one page of the folder. */
    public static void write(Path page, String text) {
        try {
            AtomicFile.writeText(page, out -> out.write(text));
        } catch (IOException e) {
            throw new SceneException(
                    "VER-006", SourcePlace.of(page.toString()), "the page can't be written: " + e.getMessage());
        }
    }

    static String cases(VerificationReport report) {
        return "# Cases\n\nWritten by `baymist verify --write`; do not edit. How to read it, and what it does not show:"
                + " [validation](../validation.md).\n\n![Error of every case as a share of what is allowed, by stage](errors.svg)\n\n"
                + report.markdown();
    }

    static String orders(List<OrderStudy.Row> orders) {
        StringBuilder text = new StringBuilder(
                "# Order of accuracy\n\nWritten by `baymist verify --write`; do not edit. Each operator on ever"
                        + " finer grids against an exact solution. The order is the slope between the two finest.\n\n"
                        + "![Errors over cells](order.svg)\n\n"
                        + "| operator and solution | cells | relative error | order | claimed |\n|---|---|---|---|---|\n");
        for (OrderStudy.Row r : orders) {
            StringBuilder cells = new StringBuilder();
            StringBuilder errors = new StringBuilder();
            for (int i = 0; i < r.cells().length; i++) {
                cells.append(i == 0 ? "" : ", ").append(r.cells()[i]);
                errors.append(i == 0 ? "" : ", ").append(String.format(Locale.ROOT, "%.2e", r.error()[i]));
            }
            text.append(String.format(
                    Locale.ROOT,
                    "| %s | %s | %s | %s%.2f%s | %.0f |\n",
                    r.name(),
                    cells,
                    errors,
                    r.asClaimed() ? "" : "**",
                    r.order(),
                    r.asClaimed() ? "" : "**",
                    r.claimed()));
        }
        return text.append(
                        "\nDrifting fog is of second order in space and time where it is smooth, with donor cells (a choice) of first;"
                                + " eddies and settling against eddies are of second order in space and of first in time.\n")
                .toString();
    }
}
