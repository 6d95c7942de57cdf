package baymist.picture;

import baymist.report.Cautions;
import baymist.run.EngineVersion;
import baymist.scene.TipSpec.Jet;
import baymist.size.Candidate;
import baymist.size.SizeResult;
import baymist.size.Tube;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Table of orifices, notes and title block. */
final class WandSheetText {
    private static final double TABLE_X = 322;
    private static final double TABLE_W = 84;
    private static final double TABLE_Y = 96;
    private static final double BOTTOM_Y = 206;
    private static final double TITLE_X = 244;
    private static final double TITLE_W = 166;
    private static final double SIZE = 2.6;
    private static final double ROW = 3.7;

    private final Sheet sheet;
    private final SizeResult result;
    private final Candidate wand;
    private final String scale;
    private final String tipScale;
    private final Lettering letters;

    WandSheetText(Sheet sheet, SizeResult result, Candidate wand, String scale, String tipScale) throws IOException {
        this.sheet = sheet;
        this.result = result;
        this.wand = wand;
        this.scale = scale;
        this.tipScale = tipScale;
        this.letters = Lettering.load();
    }

    void draw() throws IOException {
        orifices();
        notes();
        title();
    }

    private void orifices() throws IOException {
        Map<String, List<String>> groups = new LinkedHashMap<>();
        for (Jet j : wand.design().pattern().tip().jets()) {
            String kind = String.format(
                    Locale.ROOT, "dia %s at %s to the axis", Tube.mm(j.orificeM()), WandTip.degrees(j.offAxisRad()));
            groups.computeIfAbsent(kind, k -> new ArrayList<>())
                    .add(WandTip.degrees(WandTip.turned(j.clockRad())).replace(" deg", ""));
        }
        sheet.text(TABLE_X, TABLE_Y + 2, 3.5, Sheet.Anchor.START, "ORIFICES (drill sizes, mm)");
        double y = TABLE_Y + 8;
        int shown = 0;
        for (Map.Entry<String, List<String>> e : groups.entrySet()) {
            if (y > BOTTOM_Y - 14) {
                sheet.text(TABLE_X, y, SIZE, Sheet.Anchor.START, "and " + (groups.size() - shown) + " more kinds: see the wand file");
                break;
            }
            String text = e.getValue().size() + " x " + e.getKey() + "; clock "
                    + String.join(", ", e.getValue()) + " deg from the pin, clockwise from the hand";
            y = wrapped(TABLE_X, y, TABLE_W, text) + 1;
            shown++;
        }
        wrapped(
                TABLE_X,
                y + 2,
                TABLE_W,
                "Orifices to the side lie " + Tube.mm(WandTip.ROW_MM / 1e3) + " from the nose, those ahead on a circle of half of"
                        + " the nose's diameter. Each is the air's orifice; the liquid meets the air there. How both ways are led inside is the maker's.");
    }

    private double wrapped(double x, double y, double width, String words) throws IOException {
        double at = y;
        for (String row : letters.wrap(words, SIZE, width)) {
            sheet.text(x, at, SIZE, Sheet.Anchor.START, row);
            at += ROW;
        }
        return at;
    }

    private void notes() throws IOException {
        sheet.thin(10, BOTTOM_Y, 410, BOTTOM_Y);
        sheet.text(15, BOTTOM_Y + 6, 3.5, Sheet.Anchor.START, "BEFORE YOU MAKE IT");
        double y = BOTTOM_Y + 12;
        for (String caution : Cautions.wandMaking()) {
            sheet.dot(16, y - 0.9, 0.5);
            y = wrapped(18.5, y, TITLE_X - 25, caution) + 0.9;
        }
    }

    private void title() throws IOException {
        double y = BOTTOM_Y;
        sheet.box(TITLE_X, y, TITLE_W, 287 - y, 0.5);
        sheet.text(TITLE_X + 3, y + 7.5, 4.6, Sheet.Anchor.START, fitted("Wand " + wand.design().words() + ", " + Tube.mm(wand.lengthM()) + " mm", 4.6));
        List<String[]> rows = new ArrayList<>();
        rows.add(row("Length", Tube.mm(wand.lengthM()) + " mm from the nose", "Tube", wand.design().tube().words()));
        rows.add(row(
                "Material",
                wand.design().material().name() + " tube, pressure-rated",
                "Mass",
                String.format(Locale.ROOT, "%.0f g, with oil %.0f g", 1e3 * wand.tubeKg(), 1e3 * wand.filledKg())));
        rows.add(row(
                "Passes",
                "a hole of " + Tube.mm(wand.holeM()) + " mm, without play",
                "Liquid",
                String.format(
                        Locale.ROOT,
                        "%.0f mL/min, loses %.0f kPa",
                        60e6 * wand.bore().liquidM3PerS(),
                        1e-3 * wand.bore().liquidLossPa())));
        rows.add(row("Tolerances", "as agreed", "Finish", "deburred, nose rounded"));
        rows.add(row("Scale", scale + ", tip " + tipScale, "Units", "mm, degrees"));
        double at = y + 12;
        for (String[] r : rows) {
            sheet.thin(TITLE_X, at, TITLE_X + TITLE_W, at);
            cell(TITLE_X, at, r[0], r[1]);
            cell(TITLE_X + 94, at, r[2], r[3]);
            at += 9;
        }
        sheet.thin(TITLE_X + 94, y + 12, TITLE_X + 94, at);
        sheet.thin(TITLE_X, at, TITLE_X + TITLE_W, at);
        String hash = result.scene().hash();
        cell(TITLE_X, at, "Sized for", fitted(result.scene().title(), 2.8));
        sheet.thin(TITLE_X, at + 9, TITLE_X + TITLE_W, at + 9);
        cell(
                TITLE_X,
                at + 9,
                "Computed by",
                "Baymist " + EngineVersion.VERSION + ", scene " + hash.substring(0, Math.min(12, hash.length())));
        sheet.thin(TITLE_X + 94, at + 9, TITLE_X + 94, 287);
        cell(TITLE_X + 94, at + 9, "Checked, released", "");
    }

    private static String[] row(String... cells) {
        return cells;
    }

    private void cell(double x, double y, String name, String value) {
        sheet.text(x + 2, y + 3.1, 2, Sheet.Anchor.START, name);
        sheet.text(x + 2, y + 7.4, 3, Sheet.Anchor.START, value);
    }

    /** Cut with a mark where it would not fit into the title block. */
    private String fitted(String words, double size) throws IOException {
        String text = words;
        while (text.length() > 4 && letters.width(text, size) > TITLE_W - 8) {
            text = text.substring(0, text.length() - 4).stripTrailing() + "...";
        }
        return text;
    }
}
