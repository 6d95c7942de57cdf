package baymist.picture;

import baymist.access.Insertion;
import baymist.geom.Vec3;
import baymist.picture.SectionPainter.Place;
import baymist.run.CheckResult;
import baymist.scene.PassSpec;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The wands of a scene's passes: from the entry to the tip at its deepest, with an arrow at the shallow end. */
final class WandLayer implements SectionLayer {
    /** How much of the wand is shown outside, m. */
    static final double OUTSIDE_M = 0.05;

    private final CheckResult check;

    WandLayer(CheckResult check) {
        this.check = check;
    }

    @Override
    public void ground(Canvas c, Place p) {}

    @Override
    public void label(Place p, LeaderLabels labels) throws IOException {
        for (Pass pass : passes()) {
            Vec3 tip = pass.from;
            boolean along = Math.abs(pass.insertion.axis().get(p.view().axis())) > SectionPainter.FACES;
            if (along && !p.view().whole()) {
                tip = pierce(pass, p.view());
            }
            if (tip != null && p.view().holds(tip)) {
                String words = p.view().whole() || !along
                        ? pass.words
                        : pass.words.substring(0, pass.words.lastIndexOf(": tip"));
                labels.add(words, p.x(tip), p.y(tip), p.y(tip) <= 0.5 * p.height(), Canvas.WAND);
            }
        }
    }

    @Override
    public void paint(Canvas c, Place p, BayLabels bays) {
        for (Pass pass : passes()) {
            wand(c, p, pass, bays);
        }
    }

    @Override
    public void key(Canvas c, double x, double y) throws IOException {
        c.stroke(new Line2D.Double(x, y - 5, x + 34, y - 5), Canvas.WAND, 2);
        c.fill(new Ellipse2D.Double(x + 29, y - 10, 10, 10), Canvas.WAND);
        String words = "wand, tip at its deepest; ring: it runs along the line of sight";
        c.text(words, x + 50, y, 14, Canvas.INK, Canvas.Align.LEFT);
    }

    /** A pass: the wand's axis, deepest and shallowest place of its tip. */
    private record Pass(Insertion insertion, Vec3 from, Vec3 to, String words) {}

    private List<Pass> passes() {
        List<Pass> passes = new ArrayList<>();
        for (PassSpec spec : check.scene().passes()) {
            for (Insertion i : check.insertions()) {
                if (i.entry().equals(spec.entry()) && i.wand().equals(spec.wand()) && i.feasible()) {
                    double from = Math.min(spec.fromDepthM(), i.maxDepthM());
                    double to = Math.min(spec.toDepthM(), from);
                    String words = String.format(
                            Locale.ROOT,
                            "%s: tip %.0f%s mm deep",
                            spec.name(),
                            1e3 * from,
                            to < from ? String.format(Locale.ROOT, " to %.0f", 1e3 * to) : "");
                    passes.add(new Pass(
                            i, i.originM().plus(from, i.axis()), i.originM().plus(to, i.axis()), words));
                    break;
                }
            }
        }
        if (check.scene().passes().isEmpty()) {
            for (Insertion i : check.insertions()) {
                if (i.feasible()) {
                    Vec3 tip = i.originM().plus(i.maxDepthM(), i.axis());
                    String words = String.format(Locale.ROOT, "%s: tip %.0f mm deep", i.entry(), 1e3 * i.maxDepthM());
                    passes.add(new Pass(i, tip, tip, words));
                }
            }
        }
        return passes;
    }

    /** Where the wand at its deepest passes the plane of the section, or null. */
    private static @org.jspecify.annotations.Nullable Vec3 pierce(Pass pass, SectionView view) {
        Vec3 a = pass.insertion.originM();
        double run = pass.from.get(view.axis()) - a.get(view.axis());
        double share = run == 0 ? -1 : (view.atM() - a.get(view.axis())) / run;
        return share >= 0 && share <= 1 ? a.plus(share, pass.from.minus(a)) : null;
    }

    private static void wand(Canvas c, Place p, Pass pass, BayLabels bays) {
        boolean along = Math.abs(pass.insertion.axis().get(p.view().axis())) > SectionPainter.FACES;
        if (along) {
            Vec3 at = p.view().whole() ? pass.from : pierce(pass, p.view());
            if (at != null) {
                bays.avoid(new Rectangle2D.Double(p.x(at) - 8, p.y(at) - 8, 16, 16));
                c.stroke(new Ellipse2D.Double(p.x(at) - 6, p.y(at) - 6, 12, 12), Canvas.WAND, 2);
                c.fill(new Ellipse2D.Double(p.x(at) - 2.5, p.y(at) - 2.5, 5, 5), Canvas.WAND);
            }
            return;
        }
        Vec3 outside = pass.insertion.originM().plus(-OUTSIDE_M, pass.insertion.axis());
        bays.avoid(p.line(outside, pass.from));
        c.stroke(p.line(outside, pass.from), Canvas.WAND, 2);
        c.fill(new Ellipse2D.Double(p.x(pass.from) - 5, p.y(pass.from) - 5, 10, 10), Canvas.WAND);
        if (pass.to.distance(pass.from) > 0) {
            c.fill(PanelPainter.arrow(p.x(pass.from), p.y(pass.from), p.x(pass.to), p.y(pass.to)), Canvas.WAND);
        }
    }
}
