package baymist.picture;

import baymist.report.AtomicFile;
import baymist.size.Candidate;
import baymist.size.SizeResult;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;

/**
 * A workshop drawing of a sized wand on an A3 sheet: the whole wand with its insertion marks, the tip with its orifices from the side and from the
 * hand, the tube's section, a table of orifices, notes and a title block. As SVG or PDF, in true size, from the same lines.
 */
public final class WandDrawing {
    private static final double WIDTH = 420;
    private static final double HEIGHT = 297;

    private WandDrawing() {}

    /**
     * Draws the chosen wand.
     *
     * @param file ends with .svg or .pdf
     * @throws IllegalArgumentException if no wand was chosen, or the file ends otherwise
     */
    public static void write(SizeResult r, Path file) throws IOException {
        Candidate c = r.shortest();
        if (c == null) {
            throw new IllegalArgumentException("no wand to draw");
        }
        Sheet sheet = sheet(r, c);
        String name = file.toString().toLowerCase(Locale.ROOT);
        if (name.endsWith(".svg")) {
            AtomicFile.writeText(file, out -> SheetSvg.write(sheet, out));
        } else if (name.endsWith(".pdf")) {
            AtomicFile.writeBytes(file, out -> SheetPdf.write(sheet, out));
        } else {
            throw new IllegalArgumentException(file + ": .svg or .pdf expected");
        }
    }

    /** The sheet itself. */
    static Sheet sheet(SizeResult r, Candidate c) throws IOException {
        Sheet sheet = new Sheet(WIDTH, HEIGHT, "Wand " + c.design().words());
        sheet.box(10, 10, WIDTH - 20, HEIGHT - 20, 0.7);
        WandElevation whole = new WandElevation(sheet, r, c);
        whole.draw();
        WandTip tip = new WandTip(sheet, c);
        tip.draw();
        new WandSheetText(sheet, r, c, whole.scaleText(), tip.scaleText()).draw();
        return sheet;
    }

    /** The first of 1, 2, 2.5, 5 times powers of ten that is at least this. */
    static double roundUp(double value) {
        double power = Math.pow(10, Math.floor(Math.log10(value)));
        for (double step : new double[] {1, 2, 2.5, 5, 10}) {
            if (step * power >= value * (1 - 1e-9)) {
                return step * power;
            }
        }
        return 10 * power;
    }

    /** The last of 1, 2, 5 times powers of ten that is at most this. */
    static double roundDown(double value) {
        double power = Math.pow(10, Math.floor(Math.log10(value)));
        double best = power;
        for (double step : new double[] {2, 5, 10}) {
            best = step * power <= value * (1 + 1e-9) ? step * power : best;
        }
        return best;
    }
}
