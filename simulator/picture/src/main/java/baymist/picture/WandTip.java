package baymist.picture;

import baymist.scene.TipSpec.Jet;
import baymist.size.Candidate;
import baymist.size.Tube;
import java.util.List;

/** The tip from the side (nose to the left, pin up) and from the hand along the wand, and the tube's section, enlarged. */
final class WandTip {
    /** Distance of sideways orifices from the nose, mm: that of the stand-off that runs take. */
    static final double ROW_MM = 2;

    private static final double TOP = 98;
    private static final double SIDE_X = 36;
    private static final double SIDE_ROOM = 92;
    private static final double HIGH = 44;
    private static final double AXIS_Y = TOP + 50;
    private static final double VIEW_X = 206;
    private static final double TUBE_X = 292;
    /** From this angle to the axis on an orifice goes through the side of the tube. */
    private static final double SIDEWAYS = Math.PI / 4 - 1e-9;

    private final Sheet sheet;
    private final List<Jet> jets;
    private final double outer;
    private final double tube;
    private final double bore;
    private final double scale;

    WandTip(Sheet sheet, Candidate wand) {
        this.sheet = sheet;
        this.jets = wand.design().pattern().tip().jets();
        this.tube = 1e3 * wand.design().tube().outerM();
        this.outer = Math.max(tube, 1e3 * wand.design().pattern().tipOuterM());
        this.bore = 1e3 * wand.design().tube().boreM();
        this.scale = WandDrawing.roundDown(HIGH / outer);
    }

    String scaleText() {
        return scale >= 1 ? Tube.mm(scale / 1e3) + " : 1" : "1 : " + Tube.mm(1e-3 / scale);
    }

    void draw() {
        sheet.text(SIDE_X - 18, TOP, 3.5, Sheet.Anchor.START, "TIP from the left, pin up, nose to the left, scale " + scaleText());
        side();
        sheet.text(VIEW_X - 37, TOP, 3.5, Sheet.Anchor.START, "ORIFICES from the hand along the wand");
        view();
        sheet.text(TUBE_X - 22, TOP, 3.5, Sheet.Anchor.START, "TUBE");
        section();
    }

    private double mm(double real) {
        return real * scale;
    }

    private void side() {
        double r = mm(outer / 2);
        double end = SIDE_X + SIDE_ROOM;
        double round = Math.min(r, mm(0.15 * outer));
        double[] xy = new double[40];
        int n = 0;
        xy[n++] = end;
        xy[n++] = AXIS_Y - r;
        for (int i = 0; i <= 8; i++) {
            double a = Math.PI / 2 * i / 8;
            xy[n++] = SIDE_X + round - round * Math.sin(a);
            xy[n++] = AXIS_Y - r + round - round * Math.cos(a);
        }
        for (int i = 8; i >= 0; i--) {
            double a = Math.PI / 2 * i / 8;
            xy[n++] = SIDE_X + round - round * Math.sin(a);
            xy[n++] = AXIS_Y + r - round + round * Math.cos(a);
        }
        xy[n++] = end;
        xy[n] = AXIS_Y + r;
        sheet.path(xy, false, Sheet.THICK, Sheet.Dash.SOLID);
        breakLine(end, r);
        double b = mm(bore / 2);
        double closed = SIDE_X + mm(0.6);
        sheet.path(
                new double[] {end, AXIS_Y - b, closed, AXIS_Y - b, closed, AXIS_Y + b, end, AXIS_Y + b},
                false,
                Sheet.THIN,
                Sheet.Dash.HIDDEN);
        sheet.line(SIDE_X - 14, AXIS_Y, end + 5, AXIS_Y, Sheet.THIN, Sheet.Dash.AXIS);
        sideOrifices(r);
        sheet.up(AXIS_Y - r, AXIS_Y + r, end, end + 12, "dia " + Tube.mm(outer / 1e3));
        sheet.leader(end - 12, AXIS_Y + b, end - 6, AXIS_Y + r + 9, "bore " + Tube.mm(bore / 1e3));
    }

    private void breakLine(double x, double r) {
        sheet.path(
                new double[] {x, AXIS_Y - r, x + 1.2, AXIS_Y - r / 2, x - 1.2, AXIS_Y, x + 1.2, AXIS_Y + r / 2, x, AXIS_Y + r},
                false,
                Sheet.THIN,
                Sheet.Dash.SOLID);
    }

    private void sideOrifices(double r) {
        boolean sideways = false;
        double row = SIDE_X + mm(ROW_MM);
        for (Jet j : jets) {
            double up = Math.cos(j.clockRad());
            double d = mm(j.orificeM() * 1e3);
            if (j.offAxisRad() >= SIDEWAYS) {
                sideways = true;
                // an ellipse as seen from the left; what lies on the far side is hidden
                double narrow = Math.max(0.12, Math.abs(Math.sin(j.clockRad())));
                boolean near = Math.sin(j.clockRad()) <= 1e-9;
                ellipse(row, AXIS_Y - r * up, 0.5 * d, 0.5 * d * narrow, near ? Sheet.Dash.SOLID : Sheet.Dash.HIDDEN);
            } else {
                double off = forward(j, r) * up;
                sheet.line(SIDE_X - 1, AXIS_Y - off - d / 2, SIDE_X + mm(0.6), AXIS_Y - off - d / 2, Sheet.THIN, Sheet.Dash.HIDDEN);
                sheet.line(SIDE_X - 1, AXIS_Y - off + d / 2, SIDE_X + mm(0.6), AXIS_Y - off + d / 2, Sheet.THIN, Sheet.Dash.HIDDEN);
            }
        }
        steepest(r, row);
        if (sideways) {
            sheet.across(SIDE_X, row, AXIS_Y + r, AXIS_Y + r + 8, Tube.mm(ROW_MM / 1e3));
        }
    }

    /** The axis of the jet that shows its angle best: nearest to the plane of the sheet. */
    private void steepest(double r, double row) {
        Jet best = jets.get(0);
        for (Jet j : jets) {
            best = Math.cos(j.clockRad()) > Math.cos(best.clockRad()) + 1e-9 ? j : best;
        }
        double angle = best.offAxisRad();
        boolean sideways = angle >= SIDEWAYS;
        double up = Math.cos(best.clockRad());
        double x0 = sideways ? row : SIDE_X;
        double y0 = sideways ? AXIS_Y - r * up : AXIS_Y - forward(best, r) * up;
        double dx = -Math.cos(angle);
        double dy = -Math.sin(angle) * up;
        double reach = 11;
        sheet.thin(x0, y0, x0 + reach * dx, y0 + reach * dy);
        sheet.arrow(x0 + reach * dx, y0 + reach * dy, dx, dy);
        // a jet ahead leaves by the nose: its angle is told above the tip
        sheet.text(
                sideways ? x0 + reach * dx + 2 : SIDE_X - 16,
                sideways ? y0 + reach * dy + 1 : AXIS_Y - r - 4,
                2.8,
                Sheet.Anchor.START,
                degrees(angle) + " to the axis");
    }

    private double forward(Jet j, double r) {
        return j.offAxisRad() > 1e-9 ? 0.5 * r : 0;
    }

    private void ellipse(double cx, double cy, double rx, double ry, Sheet.Dash dash) {
        double[] xy = new double[2 * 24];
        for (int i = 0; i < 24; i++) {
            xy[2 * i] = cx + rx * Math.cos(i * Math.PI / 12);
            xy[2 * i + 1] = cy + ry * Math.sin(i * Math.PI / 12);
        }
        sheet.path(xy, true, 0.25, dash);
    }

    /** Clock angles clockwise from the pin, as the hand sees them. */
    private void view() {
        double r = mm(outer / 2);
        double b = mm(bore / 2);
        sheet.circle(VIEW_X, AXIS_Y, r, Sheet.THICK, Sheet.Dash.SOLID);
        sheet.circle(VIEW_X, AXIS_Y, b, Sheet.THIN, Sheet.Dash.HIDDEN);
        sheet.line(VIEW_X - r - 3, AXIS_Y, VIEW_X + r + 3, AXIS_Y, Sheet.THIN, Sheet.Dash.AXIS);
        sheet.line(VIEW_X, AXIS_Y - r - 3, VIEW_X, AXIS_Y + r + 3, Sheet.THIN, Sheet.Dash.AXIS);
        boolean many = jets.size() > 18;
        for (int i = 0; i < jets.size(); i++) {
            Jet j = jets.get(i);
            double sin = Math.sin(j.clockRad());
            double cos = Math.cos(j.clockRad());
            double half = mm(0.5e3 * j.orificeM());
            if (j.offAxisRad() < SIDEWAYS) {
                double f = forward(j, r);
                sheet.circle(VIEW_X + f * sin, AXIS_Y - f * cos, half, 0.25, Sheet.Dash.HIDDEN);
            } else {
                for (int s = -1; s <= 1; s += 2) {
                    double ox = s * half * cos;
                    double oy = s * half * sin;
                    double outerEnd = Math.sqrt(Math.max(0, r * r - half * half));
                    sheet.thin(
                            VIEW_X + b * sin + ox, AXIS_Y - b * cos + oy, VIEW_X + outerEnd * sin + ox, AXIS_Y - outerEnd * cos + oy);
                }
            }
            if (!many || i % 2 == 0) {
                label(j, r, sin, cos);
            }
        }
        sheet.area(
                VIEW_X - 1.2, AXIS_Y - r - 12, VIEW_X + 1.2, AXIS_Y - r - 12, VIEW_X, AXIS_Y - r - 9.5);
        sheet.text(VIEW_X + 2, AXIS_Y - r - 10, 2.6, Sheet.Anchor.START, "pin");
    }

    private void label(Jet j, double r, double sin, double cos) {
        if (j.offAxisRad() < 1e-9) {
            return;
        }
        double away = Math.abs(sin) < 0.2 ? r + 5.5 : r + 6;
        Sheet.Anchor anchor = Math.abs(sin) < 0.2 ? Sheet.Anchor.MIDDLE : sin > 0 ? Sheet.Anchor.START : Sheet.Anchor.END;
        sheet.text(VIEW_X + (away - (Math.abs(sin) < 0.2 ? 0 : 1.5)) * sin, AXIS_Y - away * cos + 0.9, 2.5, anchor, degrees(turned(j.clockRad())));
    }

    private void section() {
        double r = mm(tube / 2);
        double b = mm(bore / 2);
        sheet.circle(TUBE_X, AXIS_Y, r, Sheet.THICK, Sheet.Dash.SOLID);
        sheet.circle(TUBE_X, AXIS_Y, b, Sheet.THICK, Sheet.Dash.SOLID);
        hatch(r, b);
        sheet.leader(TUBE_X + r * 0.7071, AXIS_Y + r * 0.7071, TUBE_X + r * 0.7071 - 5, AXIS_Y + r + 7, "outside " + Tube.mm(tube / 1e3));
        sheet.leader(TUBE_X + b * 0.7071, AXIS_Y - b * 0.7071, TUBE_X - r * 0.4, AXIS_Y - r - 7, "bore " + Tube.mm(bore / 1e3));
        sheet.text(
                TUBE_X, AXIS_Y + r + 13, 2.5, Sheet.Anchor.MIDDLE, "metal " + Tube.mm((tube - bore) / 2e3) + " a side,");
        sheet.text(TUBE_X, AXIS_Y + r + 16.5, 2.5, Sheet.Anchor.MIDDLE, "less the air's way");
    }

    /** Lines at 45 degrees in the ring. */
    private void hatch(double r, double b) {
        for (double c = -r * 1.4; c <= r * 1.4; c += 2) {
            double h = Math.sqrt(Math.max(0, r * r - c * c / 2));
            double i = Math.sqrt(Math.max(0, b * b - c * c / 2));
            if (h <= 0) {
                continue;
            }
            // along (1, -1)/sqrt 2 through the point (c/2, c/2)
            double k = 1 / Math.sqrt(2);
            if (i > 0) {
                stroke(c, -h * k, -i * k);
                stroke(c, i * k, h * k);
            } else {
                stroke(c, -h * k, h * k);
            }
        }
    }

    private void stroke(double c, double from, double to) {
        sheet.thin(TUBE_X + c / 2 + from, AXIS_Y + c / 2 - from, TUBE_X + c / 2 + to, AXIS_Y + c / 2 - to);
    }

    static String degrees(double rad) {
        double tenths = Math.round(10 * Math.toDegrees(rad));
        return (tenths % 10 == 0 ? String.valueOf((long) (tenths / 10)) : String.valueOf(tenths / 10)) + " deg";
    }

    static double turned(double rad) {
        double t = rad % (2 * Math.PI);
        return t < -1e-9 ? t + 2 * Math.PI : Math.max(0, t);
    }
}
