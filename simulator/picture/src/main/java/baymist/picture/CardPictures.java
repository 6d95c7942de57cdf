package baymist.picture;

import baymist.card.CardSource;
import baymist.card.WorkCard;
import baymist.card.WorkCard.Step;
import baymist.geom.Vec3;
import baymist.run.CheckResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The drawings of a work card: overview, passes, dials, rods with their marks, items to mask. */
public final class CardPictures {
    /** Width of what is printed beside the margins of both papers, mm. */
    public static final double WIDE_MM = 182;

    /** Height of a pass's picture, mm: two passes go on a page of either paper. */
    private static final double PASS_MM = 43;

    private static final double TOP = 4.6;
    private static final double GAP = 5;
    /** Width kept for the words above a view, mm. */
    private static final double TITLE_MM = 60;

    /** A wand that takes up less of the structure's width than this is drawn with a part of it only. */
    private static final double PART = 0.55;

    /** What is shown round such a wand, share of its length inside. */
    private static final double PART_MARGIN = 0.5;

    /** The least that is shown on either side of it, share of the structure's width, so that it is seen where in the structure it is. */
    private static final double LEAST = 0.18;

    /** Room for marks round a view, mm. */
    private static final double ROOM = 7;

    private final CheckResult check;
    private final List<Vec3[]> edges;
    private final SectionFinder finder;

    public CardPictures(CardSource source) {
        check = new CheckResult(source.scene(), source.cavity(), source.grid(), source.insertions(), List.of());
        edges = FeatureEdges.of(source.cavity());
        finder = new SectionFinder(check);
    }

    /** The whole structure with letters at its openings, crosses at protected items and numbers where to look. */
    public CardPicture overview(WorkCard card) {
        Laid laid = lay("overview", "Where openings, items and inspection points lie", whole(), 88);
        for (CardView v : laid.views) {
            v.structure(check.cavity(), edges);
            int letter = 0;
            for (WorkCard.Opening o : card.openings()) {
                mark(v, o.centreM(), letter(letter++), true);
            }
            card.items().forEach(i -> mark(v, i.centreM(), "x " + i.name(), false));
        }
        return laid.picture();
    }

    /** Views of the whole structure; two through its middle where the finder has fewer. */
    private List<SectionView> whole() {
        List<SectionView> views = new ArrayList<>();
        for (SectionView v : finder.find()) {
            if (v.whole()) {
                views.add(v);
            }
        }
        return views.size() < 2
                ? finder.through(check.cavity().sheets().bounds().centre()).subList(0, 2)
                : views;
    }

    /** Where to look afterwards: the numbers of the inspection points. */
    public CardPicture points(WorkCard card) {
        Laid laid = lay("points", "Where to look afterwards", whole(), 74);
        for (CardView v : laid.views) {
            v.structure(check.cavity(), edges);
            for (WorkCard.Point p : card.points()) {
                v.dot(p.atM(), 0.6);
                v.keepClear(p.atM(), 1);
            }
            for (WorkCard.Point p : card.points()) {
                mark(v, p.atM(), Integer.toString(p.number()), true);
            }
        }
        return laid.picture();
    }

    private static void mark(CardView v, Vec3 at, String word, boolean boxed) {
        if (v.holds(at)) {
            v.mark(at, word, boxed);
        }
    }

    /** Letter of an opening: A to Z, then AA and on. */
    public static String letter(int index) {
        return index < 26 ? String.valueOf((char) ('A' + index)) : letter(index / 26 - 1) + letter(index % 26);
    }

    /** A pass: structure cut beside the wand, the wand where the trigger goes on, the stretch that is sprayed. */
    public CardPicture pass(Step step) {
        Vec3 middle = step.tipsM().get(step.tipsM().size() / 2);
        Vec3 along = step.axis();
        Vec3 chord = step.wayM().get(step.wayM().size() - 1).minus(step.wayM().get(0));
        Vec3 way = chord.length() > 1e-3 ? chord.unit() : along;
        List<SectionView> views = new ArrayList<>();
        for (SectionView v : finder.through(middle)) {
            if (Math.abs(way.get(v.axis())) < 0.75) {
                double margin = Math.max(PART_MARGIN * length(step.wayM()), LEAST * (v.highU() - v.lowU()));
                views.add(v.round(places(step), margin, PART));
            }
        }
        Laid laid = lay("pass-" + step.number(), "Pass " + step.number() + ", " + step.name(), views, PASS_MM);
        for (CardView v : laid.views) {
            wand(v, step);
        }
        return laid.picture();
    }

    private static List<Vec3> places(Step step) {
        List<Vec3> all = new ArrayList<>(step.wayM());
        all.addAll(step.tipsM());
        all.add(step.entryM());
        return all;
    }

    private static double length(List<Vec3> way) {
        double sum = 0;
        for (int i = 1; i < way.size(); i++) {
            sum += way.get(i).distance(way.get(i - 1));
        }
        return sum;
    }

    private void wand(CardView v, Step step) {
        v.structure(check.cavity(), edges);
        List<Vec3> tips = step.tipsM();
        Vec3 on = tips.get(0);
        Vec3 off = tips.get(tips.size() - 1);
        // what sticks out stays within the room round the view
        double stub = Math.min(WandLayer.OUTSIDE_M, v.metres(ROOM - 1.5));
        Vec3 outside = step.entryM().plus(-stub, step.axis());
        if (tips.size() > 1) {
            v.line(tips, 2.2, 0.72);
        }
        v.line(List.of(outside, step.entryM()), 0.9, 0);
        v.line(step.wayM(), 0.9, 0);
        v.keepClear(step.wayM(), 0.7);
        v.dot(on, 1.0);
        v.keepClear(on, 1.4);
        boolean still = on.distance(off) < 1e-3;
        if (!still) {
            v.ring(off, 1.0);
            v.keepClear(off, 1.4);
            Vec3 a = tips.get(tips.size() / 2);
            Vec3 b = tips.get(Math.min(tips.size() - 1, tips.size() / 2 + 1));
            v.arrow(a, tips.get(Math.max(0, tips.size() / 2 - 1)), b);
        }
        v.mark(on, "ON", true);
        if (!still) {
            v.mark(off, "OFF", true);
        }
        v.mark(step.entryM(), "in", true);
    }

    /** An item to be masked: the structure cut through it, a cross on it. */
    public CardPicture item(WorkCard.Item item, int number) {
        List<SectionView> views = finder.through(item.centreM());
        Laid laid = lay("item-" + number, "Item " + item.name(), views.subList(0, 2), 60);
        for (CardView v : laid.views) {
            v.structure(check.cavity(), edges);
            v.ring(item.centreM(), 1.6);
            v.dot(item.centreM(), 0.7);
            v.keepClear(item.centreM(), 2);
            mark(v, item.centreM(), item.name(), true);
        }
        return laid.picture();
    }

    /** Views on a sheet. */
    private static final class Laid {
        private final String id;
        private final Sheet sheet;
        private final List<CardView> views = new ArrayList<>();

        Laid(String id, Sheet sheet) {
            this.id = id;
            this.sheet = sheet;
        }

        CardPicture picture() {
            return new CardPicture(id, sheet);
        }
    }

    /** Width that a view takes with its marks and words, mm. */
    private static double roomMm(SectionView v, double scale) {
        return Math.max(TITLE_MM, (v.highU() - v.lowU()) * scale + 2 * ROOM);
    }

    private static double wideMm(List<SectionView> views, double scale) {
        return GAP * (views.size() - 1)
                + views.stream().mapToDouble(v -> roomMm(v, scale)).sum();
    }

    /** Views to one scale, beside each other or one above the other, whichever is larger within the height. */
    private static Laid lay(String id, String title, List<SectionView> views, double mostHighMm) {
        int n = views.size();
        double sumU = 0;
        double sumV = 0;
        double mostU = 0;
        double mostV = 0;
        for (SectionView v : views) {
            double u = v.highU() - v.lowU();
            double w = v.highV() - v.lowV();
            sumU += u;
            sumV += w;
            mostU = Math.max(mostU, u);
            mostV = Math.max(mostV, w);
        }
        double beside =
                Math.min((WIDE_MM - 2 * ROOM * n - GAP * (n - 1)) / sumU, (mostHighMm - TOP - 2 * ROOM) / mostV);
        double above = Math.min((WIDE_MM - 2 * ROOM) / mostU, (mostHighMm - n * (TOP + 2 * ROOM)) / sumV);
        // a narrow view still needs room for the words above it
        double scale = beside;
        double low = 0;
        for (int i = 0; i < 40 && wideMm(views, scale) > WIDE_MM; i++) {
            double middle = 0.5 * (low + beside);
            low = wideMm(views, middle) > WIDE_MM ? low : middle;
            beside = wideMm(views, middle) > WIDE_MM ? middle : beside;
            scale = low;
        }
        boolean row = scale >= above;
        scale = Math.max(scale, above);
        double height = row ? TOP + 2 * ROOM + mostV * scale : n * (TOP + 2 * ROOM) + sumV * scale;
        Laid laid = new Laid(id, new Sheet(WIDE_MM, height, title));
        List<double[]> titles = new ArrayList<>();
        double x = 0;
        double y = 0;
        for (SectionView v : views) {
            laid.sheet.text(x + 1, y + 3.2, 2.7, Sheet.Anchor.START, v.title());
            double at = y + TOP;
            laid.sheet.text(x + 1, at + 2.6, 2.3, Sheet.Anchor.START, v.view());
            CardView view = new CardView(laid.sheet, v, x + ROOM, at + ROOM, scale);
            laid.views.add(view);
            titles.add(new double[] {x, y});
            if (row) {
                x += roomMm(v, scale) + GAP;
            } else {
                y += TOP + 2 * ROOM + (v.highV() - v.lowV()) * scale;
            }
        }
        for (CardView v : laid.views) {
            // no mark over the words above any view
            titles.forEach(t -> v.keepOut(t[0], t[1], TITLE_MM, TOP + 3.4));
        }
        return laid;
    }

    /** The clock angle as a dial, seen from outside along the wand. */
    public CardPicture dial(Step step) {
        double size = 31;
        Sheet s = new Sheet(
                size,
                size + 4,
                String.format(Locale.ROOT, "Dial, pin at %.0f degrees", Math.toDegrees(step.clockRad())));
        double c = size / 2;
        double cy = c + 4;
        double r = 11;
        s.circle(c, cy, r, 0.5, Sheet.Dash.SOLID);
        for (int h = 0; h < 12; h++) {
            double a = h * Math.PI / 6;
            double inner = r - (h % 3 == 0 ? 2.2 : 1.2);
            s.line(
                    c + inner * Math.sin(a),
                    cy - inner * Math.cos(a),
                    c + r * Math.sin(a),
                    cy - r * Math.cos(a),
                    h % 3 == 0 ? 0.5 : 0.25,
                    Sheet.Dash.SOLID);
            if (h % 3 == 0) {
                String hour = h == 0 ? "12" : Integer.toString(h);
                s.text(c + (r + 2.2) * Math.sin(a), cy - (r + 2.2) * Math.cos(a) + 1, 2.8, Sheet.Anchor.MIDDLE, hour);
            }
        }
        s.text(c, 2.6, 2.6, Sheet.Anchor.MIDDLE, step.up() ? "up" : "forward");
        double a = step.clockRad();
        double x = c + (r - 3) * Math.sin(a);
        double y = cy - (r - 3) * Math.cos(a);
        if (step.turned()) {
            s.line(c, cy, x, y, 1.2, Sheet.Dash.SOLID);
            double ux = Math.sin(a);
            double uy = -Math.cos(a);
            s.area(x + 2.6 * ux, y + 2.6 * uy, x - 1.9 * uy, y + 1.9 * ux, x + 1.9 * uy, y - 1.9 * ux);
        } else {
            s.circle(c, cy, r - 5, 0.3, Sheet.Dash.HIDDEN);
        }
        s.dot(c, cy, 1.1);
        return new CardPicture("dial-" + step.number(), s);
    }

    /**
     * The wand with the marks that show at the entry's edge, and the seconds since the trigger went on at every half metre.
     *
     * @param words writes a length, m
     */
    public CardPicture rod(Step step, java.util.function.DoubleFunction<String> words) {
        double width = 146;
        Sheet s = new Sheet(width, 20.5, "Wand with its marks, pass " + step.number());
        double left = 8;
        double right = width - 26;
        double y = 9.4;
        double scale = (right - left) / Math.max(1e-6, step.fromM());
        s.shade(0, left, y - 0.8, width - 3, y - 0.8, width - 3, y + 0.8, left, y + 0.8);
        s.dot(left, y, 1.6);
        s.text(left, y + 5.5, 2.5, Sheet.Anchor.MIDDLE, "tip");
        if (step.fromM() - step.toM() > 1e-9) {
            double to = left + scale * step.toM();
            s.shade(0.72, to, y - 0.45, right, y - 0.45, right, y + 0.45, to, y + 0.45);
        }
        double offAt = left + scale * step.toM();
        boolean near = right - offAt < 34;
        flag(s, right, y, "ON " + words.apply(step.fromM()), near ? Sheet.Anchor.START : Sheet.Anchor.MIDDLE);
        if (step.fromM() - step.toM() > 1e-9) {
            double to = left + scale * step.toM();
            Sheet.Anchor off = near ? Sheet.Anchor.END : to - left < 14 ? Sheet.Anchor.START : Sheet.Anchor.MIDDLE;
            flag(s, to, y, "OFF " + words.apply(step.toM()), off);
            halves(s, step, left, scale, y);
        }
        return new CardPicture("rod-" + step.number(), s);
    }

    private static void flag(Sheet s, double x, double y, String words, Sheet.Anchor anchor) {
        s.line(x, y - 4.2, x, y + 2.2, 0.6, Sheet.Dash.SOLID);
        s.text(x, y - 5.4, 2.9, anchor, words);
    }

    private static void halves(Sheet s, Step step, double left, double scale, double y) {
        for (double out = 0.5; out < step.fromM() - step.toM() - 0.02; out += 0.5) {
            double x = left + scale * (step.fromM() - out);
            s.line(x, y, x, y + 3, 0.25, Sheet.Dash.SOLID);
            String seconds =
                    String.format(Locale.ROOT, "%.1f s", step.holdS() + out / Math.max(1e-9, step.drawBackMPerS()));
            s.text(x, y + 5.8, 2.5, Sheet.Anchor.MIDDLE, seconds);
        }
        double end = left + scale * step.toM();
        double off = step.triggerS();
        s.text(end, y + 9.4, 2.5, Sheet.Anchor.START, String.format(Locale.ROOT, "OFF at %.1f s", off));
        s.text(
                left + scale * step.fromM(),
                y + 5.8,
                2.5,
                Sheet.Anchor.MIDDLE,
                String.format(Locale.ROOT, "%.1f s", step.holdS()));
    }
}
