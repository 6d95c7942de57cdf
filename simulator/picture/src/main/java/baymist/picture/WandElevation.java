package baymist.picture;

import baymist.size.Candidate;
import baymist.size.Hook;
import baymist.size.SizeResult;
import baymist.size.Tube;
import org.jspecify.annotations.Nullable;

/** The whole wand, nose to the left, with insertion marks and their numbers. */
final class WandElevation {
    private static final double LEFT = 28;
    private static final double ROOM_MM = 352;
    private static final double ROOM_HIGH_MM = 36;
    private static final double TOP = 24;
    private static final double NUMBER_MM = 2.6;

    private final Sheet sheet;
    private final Candidate wand;
    private final double markMm;
    private final double lengthMm;
    private final double outerMm;
    private final double tipMm;
    private final @Nullable Hook hook;
    private final double scale;
    /** Where the straight part's axis lies on the sheet. */
    private final double axisY;
    /** Where the nose's end of the straight part lies on the sheet. */
    private final double startX;

    WandElevation(Sheet sheet, SizeResult r, Candidate wand) {
        this.sheet = sheet;
        this.wand = wand;
        this.markMm = 1e3 * r.request().markM();
        this.lengthMm = 1e3 * wand.lengthM();
        this.outerMm = 1e3 * wand.design().tube().outerM();
        this.tipMm = 1e3 * wand.design().pattern().tipOuterM();
        this.hook = wand.design().hook();
        double straight = lengthMm - (hook == null ? 0 : 1e3 * hook.tubeM());
        double[] low = hook == null ? new double[2] : extent();
        double wide = straight - low[0];
        double high = low[1] + outerMm;
        this.scale = WandDrawing.roundUp(Math.max(Math.max(wide / ROOM_MM, high / ROOM_HIGH_MM), 1));
        this.startX = LEFT - low[0] / scale;
        // a hook hangs below its straight part
        this.axisY = hook == null ? TOP + 26 : TOP + 16;
    }

    String scaleText() {
        return scale == 1 ? "1 : 1" : "1 : " + Tube.mm(scale / 1e3);
    }

    /** Least x and largest y of the hook's centre line from the end of the straight part, mm; y down on the sheet. */
    private double[] extent() {
        double x = 0;
        double y = 0;
        double tube = hook == null ? 0 : 1e3 * hook.tubeM();
        for (int i = 0; i <= 60; i++) {
            double[] p = bent(tube * i / 60);
            x = Math.min(x, p[0]);
            y = Math.max(y, p[1]);
        }
        return new double[] {x - outerMm, y};
    }

    /** Place and direction of the centre line so far beyond the straight part, mm: {x, y, dx, dy}. */
    private double[] bent(double s) {
        Hook h = hook;
        if (h == null) {
            return new double[] {-s, 0, -1, 0};
        }
        double radius = 1e3 * h.radiusM();
        double arc = radius * h.angleRad();
        double turn = Math.min(s, arc) / radius;
        double x = -radius * Math.sin(turn);
        double y = radius * (1 - Math.cos(turn));
        double rest = Math.max(0, s - arc);
        double dx = -Math.cos(turn);
        double dy = Math.sin(turn);
        return new double[] {x + rest * dx, y + rest * dy, dx, dy};
    }

    /** Sheet place and direction towards the nose at a distance from the nose along the tube, mm. */
    private double[] at(double fromNose) {
        double bend = hook == null ? 0 : 1e3 * hook.tubeM();
        double[] p = fromNose < bend
                ? bent(bend - fromNose)
                : new double[] {fromNose - bend, 0, -1, 0};
        return new double[] {startX + p[0] / scale, axisY + p[1] / scale, p[2], p[3]};
    }

    void draw() {
        sheet.text(LEFT - 10, TOP - 5, 3.5, Sheet.Anchor.START, "WAND, scale " + scaleText() + ", lengths along the tube from the nose");
        outline(0, lengthMm, outerMm);
        double tipLength = 1e3 * wand.design().pattern().tipLengthM();
        if (tipMm > outerMm) {
            outline(0, tipLength, tipMm);
        }
        axis();
        marks();
        dimensions();
        handEnd();
    }

    private void outline(double from, double to, double outer) {
        int n = hook == null ? 1 : 160;
        double half = 0.5 * Math.max(outer / scale, 0.6);
        double[] xy = new double[4 * (n + 1)];
        for (int i = 0; i <= n; i++) {
            double[] p = at(from + (to - from) * i / n);
            xy[2 * i] = p[0] - half * p[3];
            xy[2 * i + 1] = p[1] + half * p[2];
            xy[4 * n + 2 - 2 * i] = p[0] + half * p[3];
            xy[4 * n + 3 - 2 * i] = p[1] - half * p[2];
        }
        sheet.path(xy, true, 0.35, Sheet.Dash.SOLID);
    }

    private void axis() {
        int n = 160;
        double[] xy = new double[2 * (n + 1)];
        for (int i = 0; i <= n; i++) {
            double[] p = at(lengthMm * i / n);
            xy[2 * i] = p[0];
            xy[2 * i + 1] = p[1];
        }
        sheet.path(xy, false, 0.13, Sheet.Dash.AXIS);
    }

    private void marks() {
        double bend = hook == null ? 0 : 1e3 * hook.tubeM();
        int every = numbersEvery();
        double half = 0.5 * Math.max(outerMm / scale, 0.6) + 1.2;
        int count = (int) Math.floor(lengthMm / markMm + 1e-9);
        for (int k = 1; k <= count; k++) {
            double a = k * markMm;
            if (a > lengthMm - 1e-6) {
                continue;
            }
            double[] p = at(a);
            sheet.line(p[0] - half * p[3], p[1] + half * p[2], p[0] + half * p[3], p[1] - half * p[2], 0.3, Sheet.Dash.SOLID);
            if (k % every == 0 && a > bend && Math.abs(a - 1e3 * wand.stopM()) > 1e-6) {
                sheet.text(p[0], axisY - half - 1, NUMBER_MM, Sheet.Anchor.MIDDLE, Tube.mm(a / 1e3));
            }
        }
        stop(half);
    }

    /** Marks from number to number, so that numbers keep apart. */
    private int numbersEvery() {
        double needed = 9.5;
        for (int every : new int[] {1, 2, 4, 5, 10, 20, 40, 50, 100}) {
            if (every * markMm / scale >= needed) {
                return every;
            }
        }
        return 200;
    }

    /** Where the hand stops: the depth of the best pass. */
    private void stop(double half) {
        double stop = 1e3 * wand.stopM();
        double[] p = at(stop);
        String words = stop > lengthMm - 1e-6 ? "STOP: the whole wand is in" : "STOP " + Tube.mm(stop / 1e3);
        sheet.line(p[0], axisY - half - 6, p[0], axisY + half, 0.7, Sheet.Dash.SOLID);
        boolean late = p[0] > LEFT + ROOM_MM - 40;
        sheet.text(p[0] + (late ? -1.2 : 1.2), axisY - half - 5, 3, late ? Sheet.Anchor.END : Sheet.Anchor.START, words);
    }

    private void dimensions() {
        double half = 0.5 * Math.max(outerMm / scale, 0.6);
        if (hook == null) {
            double first = startX + markMm / scale;
            double below = axisY + half + 1;
            sheet.across(startX, first, below, axisY + half + 9, Tube.mm(markMm / 1e3) + " from mark to mark");
            sheet.across(startX, startX + lengthMm / scale, below, axisY + half + 20, Tube.mm(lengthMm / 1e3));
        } else {
            Hook h = hook;
            double straight = lengthMm - 1e3 * h.tubeM();
            double right = startX + straight / scale;
            sheet.across(startX, right, axisY + half + 1, axisY + half + 14, Tube.mm(straight / 1e3) + " straight");
            double[] mid = bent(0.5e3 * h.radiusM() * h.angleRad());
            sheet.leader(
                    startX + mid[0] / scale,
                    axisY + mid[1] / scale,
                    startX + 14,
                    axisY + half + 24,
                    "R " + Tube.mm(h.radiusM()) + " of the axis, " + Math.round(Math.toDegrees(h.angleRad())) + " deg");
            double[] leg = at(0.5e3 * h.legM());
            if (h.legM() > 0) {
                sheet.leader(leg[0], leg[1], startX + 14, axisY + half + 33, "straight leg " + Tube.mm(h.legM()));
            }
        }
    }

    private void handEnd() {
        double[] end = at(lengthMm);
        double half = 0.5 * Math.max(outerMm / scale, 0.6);
        // the hand's end carries the pin, on the side that a hook turns to
        double side = hook == null ? -1 : 1;
        double foot = axisY + side * half;
        double head = foot + side * 2.2;
        sheet.area(end[0] - 2.5, foot, end[0] - 1.2, foot, end[0] - 1.2, head, end[0] - 2.5, head);
        note(
                TOP + 57,
                "Direction pin, clock 0: black, " + (hook == null ? "above" : "below, the bend turns towards it")
                        + ". Grip and fitting beyond the hand's end as agreed.");
        note(
                TOP + 61.5,
                "Length from nose to hand's end along the axis " + Tube.mm(lengthMm / 1e3) + "; marks every "
                        + Tube.mm(markMm / 1e3) + (outerMm / scale < 0.6 ? ". Tube drawn thicker than it is." : "."));
        note(
                TOP + 66,
                "Marks go round the whole tube, painted or etched, not cut; each number is the length of tube inside when the mark"
                        + " stands in the plane of the hole.");
    }

    private void note(double y, String words) {
        sheet.text(LEFT - 10, y, 2.6, Sheet.Anchor.START, words);
    }
}
