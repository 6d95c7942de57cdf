package baymist.picture;

import baymist.picture.PanelLayout.Placed;
import baymist.report.AtomicFile;
import baymist.report.CompareReport;
import baymist.scene.TargetSpec;
import baymist.study.CompareRow;
import baymist.study.Compared;
import baymist.study.StudyResult;
import baymist.study.StudyShape;
import baymist.voxel.SurfelSet;
import java.awt.Color;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntUnaryOperator;

/** Pictures of a comparison: film of the first few side by side, and where two of them differ. */
public final class CompareMap {
    private static final int WIDTH = 2400;
    private static final double MARGIN = 60;
    private static final double GAP = 50;
    private static final double HEAD = 70;
    private static final double COLUMN_HEAD = 190;
    private static final int RIM = 0x8A9099;

    private static final int BOTH = 0xD9DDE2;
    private static final int ONLY_A = 0x2B6CB0;
    private static final int ONLY_B = 0xE0A030;
    private static final int NEITHER = 0xFFFFFF;

    private CompareMap() {}

    /**
     * Film maps side by side at planning resolution, as a PNG, written whole or not at all.
     *
     * @param most columns at most, 1 to 4
     */
    public static void write(Compared compared, int most, Path png) throws IOException {
        List<CompareRow> rows =
                compared.rows().stream().filter(CompareRow::ran).limit(most).toList();
        Lettering lettering = Lettering.load();
        double column = (WIDTH - 2 * MARGIN - GAP * (rows.size() - 1)) / Math.max(1, rows.size());
        List<StudyShape> shapes = new ArrayList<>();
        List<PanelLayout> layouts = new ArrayList<>();
        double tallest = 0;
        for (CompareRow row : rows) {
            StudyShape shape = StudyShape.of(row.candidate().scene(), compared.planning());
            PanelLayout layout =
                    PanelLayout.of(new PanelFinder(shape.cavity(), shape.grid()).find(), column, lettering);
            shapes.add(shape);
            layouts.add(layout);
            tallest = Math.max(tallest, layout.heightPx());
        }
        double top = MARGIN + HEAD + Legend.HEIGHT + COLUMN_HEAD;
        Canvas canvas = new Canvas(WIDTH, (int) Math.ceil(top + tallest + 110), lettering);
        head(canvas, compared);
        TargetSpec targets = compared.scene().targets();
        FilmColours colours = new FilmColours(targets);
        double scale = layouts.isEmpty() ? 1 : layouts.get(0).pixelsPerM();
        Legend.drawFilm(canvas, colours, targets, scale, MARGIN, MARGIN + HEAD, WIDTH - 2 * MARGIN);
        for (int i = 0; i < rows.size(); i++) {
            double left = MARGIN + i * (column + GAP);
            columnHead(canvas, i + 1, rows.get(i), left, top - COLUMN_HEAD + 20, column);
            film(canvas, shapes.get(i), rows.get(i).outcome().filmM(), targets, colours, layouts.get(i), left, top);
        }
        foot(canvas, compared, top + tallest + 70);
        AtomicFile.writeBytes(png, canvas::writePng);
    }

    /**
     * Where two jobs differ: reached by both, by one of them, by neither; as a PNG, written whole or not at all.
     *
     * @param a,b places in the ranking, from 1; both were run
     */
    public static void difference(Compared compared, int a, int b, Path png) throws IOException {
        CompareRow first = compared.row(a);
        CompareRow second = compared.row(b);
        StudyShape shape = StudyShape.of(first.candidate().scene(), compared.planning());
        StudyShape other = StudyShape.of(second.candidate().scene(), compared.planning());
        double[] filmA = first.outcome().filmM();
        double[] filmB = shape.filmOf(other, second.outcome().filmM());
        double haze = compared.scene().targets().hazeM();
        IntUnaryOperator colour = s -> {
            boolean inA = filmA[s] >= haze;
            boolean inB = filmB[s] >= haze;
            return inA && inB ? BOTH : inA ? ONLY_A : inB ? ONLY_B : NEITHER;
        };
        Lettering lettering = Lettering.load();
        double inner = WIDTH - 2 * MARGIN;
        PanelLayout layout = PanelLayout.of(new PanelFinder(shape.cavity(), shape.grid()).find(), inner, lettering);
        double top = MARGIN + HEAD + 150;
        Canvas canvas = new Canvas(WIDTH, (int) Math.ceil(top + layout.heightPx() + 110), lettering);
        head(canvas, compared);
        double[] shares = shares(shape.grid().surfels(), filmA, filmB, haze);
        key(canvas, first, second, a, b, shares);
        for (Placed p : layout.placed()) {
            panel(canvas, shape, p, MARGIN, top, layout.pixelsPerM(), colour);
        }
        foot(canvas, compared, top + layout.heightPx() + 70);
        AtomicFile.writeBytes(png, canvas::writePng);
    }

    private static void head(Canvas c, Compared compared) throws IOException {
        double size = 34;
        String title = compared.scene().title();
        while (size > 18 && c.lettering().width(title, size) > WIDTH - 2 * MARGIN) {
            size -= 1;
        }
        c.text(title, MARGIN, MARGIN + 30, size, Canvas.INK, Canvas.Align.LEFT);
    }

    private static void columnHead(Canvas c, int rank, CompareRow row, double x, double y, double width)
            throws IOException {
        String name = rank + ".  " + row.candidate().words();
        double size = 20;
        while (size > 11 && c.lettering().width(name, size) > width) {
            size -= 0.5;
        }
        c.text(name, x, y, size, Canvas.INK, Canvas.Align.LEFT);
        double line = y + 26;
        for (String words : figures(row)) {
            c.text(words, x, line, 16, Canvas.QUIET, Canvas.Align.LEFT);
            line += 22;
        }
    }

    /** What a row of the table says, in lines. */
    private static List<String> figures(CompareRow row) {
        StudyResult r = row.outcome();
        List<String> holes = row.candidate().holes().stream().map(h -> h.name()).toList();
        return List.of(
                String.format(
                        Locale.ROOT,
                        "reached %.1f %%, protected %.1f %%, seams %.1f %%",
                        100 * r.reached(),
                        100 * r.protectedShare(),
                        100 * r.seamsReached()),
                String.format(
                        Locale.ROOT,
                        "thin %.1f %%, excess %.1f %%, %d bare region%s",
                        100 * r.thin(),
                        100 * r.excess(),
                        r.bareRegions(),
                        r.bareRegions() == 1 ? "" : "s"),
                String.format(
                        Locale.ROOT,
                        "%.1f mL in %.1f s of trigger, hang %.0f s, overspray %.2f g",
                        1e6 * r.productM3(),
                        r.triggerS(),
                        r.hangS(),
                        1e3 * r.oversprayKg()),
                "panels off: " + names(row.candidate().panels()) + "; holes to drill: " + names(holes),
                "protected items hit: " + names(r.items()));
    }

    private static String names(List<String> all) {
        return all.isEmpty() ? "none" : String.join(", ", all);
    }

    private static void foot(Canvas c, Compared compared, double y) throws IOException {
        String words =
                "Planning resolution: " + compared.planning().words() + ". A computed prediction, not an approval.";
        c.text(words, MARGIN, y, 15, Canvas.QUIET, Canvas.Align.LEFT);
        if (compared.rows().stream().anyMatch(r -> !r.candidate().holes().isEmpty())) {
            c.text(CompareReport.DRILLING, MARGIN, y + 24, 15, Canvas.INK, Canvas.Align.LEFT);
        }
    }

    private static void film(
            Canvas c,
            StudyShape shape,
            double[] filmM,
            TargetSpec targets,
            FilmColours colours,
            PanelLayout layout,
            double left,
            double top)
            throws IOException {
        int[] region = new int[filmM.length];
        for (int s = 0; s < region.length; s++) {
            region[s] = filmM[s] >= targets.hazeM() ? 0 : 1;
        }
        for (Placed p : layout.placed()) {
            titles(c, p, left, top);
            PanelRaster raster =
                    new PanelRaster(p.panel(), shape.grid().surfels(), shape.cavity(), layout.pixelsPerM());
            PanelImage image = new PanelImage(raster, shape.grid().surfels(), region, t -> colours.rgb(filmM[t]));
            c.graphics().drawImage(image.paint(), (int) (left + p.x()), (int) (top + p.y()), null);
        }
    }

    private static void titles(Canvas c, Placed p, double left, double top) throws IOException {
        double x = left + p.x();
        double y = top + p.y();
        c.text(p.panel().title(), x, y - 27, PanelLayout.TITLE_SIZE, Canvas.INK, Canvas.Align.LEFT);
        c.text(p.panel().view(), x, y - 8, PanelLayout.VIEW_SIZE, Canvas.QUIET, Canvas.Align.LEFT);
    }

    private static void panel(
            Canvas c, StudyShape shape, Placed p, double left, double top, double scale, IntUnaryOperator colour)
            throws IOException {
        titles(c, p, left, top);
        PanelRaster raster = new PanelRaster(p.panel(), shape.grid().surfels(), shape.cavity(), scale);
        BufferedImage image = new BufferedImage(raster.width(), raster.height(), BufferedImage.TYPE_INT_ARGB);
        for (int y = 0; y < raster.height(); y++) {
            for (int x = 0; x < raster.width(); x++) {
                int s = raster.owner(x, y);
                if (s >= 0) {
                    boolean rim = raster.owner(x - 1, y) < 0
                            || raster.owner(x + 1, y) < 0
                            || raster.owner(x, y - 1) < 0
                            || raster.owner(x, y + 1) < 0;
                    int rgb = rim ? RIM : colour.applyAsInt(s);
                    boolean hatch = rgb == NEITHER && (x + y) % 8 < 2;
                    image.setRGB(x, y, 0xFF000000 | (hatch ? Canvas.BARE.getRGB() & 0xFFFFFF : rgb));
                }
            }
        }
        c.graphics().drawImage(image, (int) (left + p.x()), (int) (top + p.y()), null);
    }

    /** Shares of area reached by both, by the first alone, by the second alone, by neither. */
    private static double[] shares(SurfelSet surfels, double[] filmA, double[] filmB, double haze) {
        double[] area = new double[4];
        double all = 0;
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isStructure(s)) {
                boolean a = filmA[s] >= haze;
                boolean b = filmB[s] >= haze;
                area[a && b ? 0 : a ? 1 : b ? 2 : 3] += surfels.areaM2()[s];
                all += surfels.areaM2()[s];
            }
        }
        for (int k = 0; k < 4; k++) {
            area[k] /= all;
        }
        return area;
    }

    private static void key(Canvas c, CompareRow a, CompareRow b, int rankA, int rankB, double[] shares)
            throws IOException {
        int[] colours = {BOTH, ONLY_A, ONLY_B, NEITHER};
        String[] words = {
            "reached by both",
            "only by " + rankA + ": " + a.candidate().words(),
            "only by " + rankB + ": " + b.candidate().words(),
            "bare with either"
        };
        for (int k = 0; k < 4; k++) {
            double y = MARGIN + HEAD + 30 * k;
            Rectangle2D box = new Rectangle2D.Double(MARGIN, y - 16, 34, 20);
            c.fill(box, new Color(colours[k]));
            c.stroke(box, Canvas.QUIET, 1);
            if (k == 3) {
                for (int i = 0; i < 4; i++) {
                    double x = MARGIN + 4 + 8 * i;
                    c.stroke(new Line2D.Double(x, y - 6, x + 6, y - 12), Canvas.BARE, 2);
                }
            }
            String row = String.format(Locale.ROOT, "%5.1f %%   %s", 100 * shares[k], words[k]);
            c.text(row, MARGIN + 46, y, 18, Canvas.INK, Canvas.Align.LEFT);
        }
    }
}
