package baymist.picture;

import baymist.cavity.Opening;
import baymist.geom.Vec3;
import baymist.picture.PanelLayout.Placed;
import baymist.report.AtomicFile;
import baymist.scene.Scene;
import baymist.study.StudyShape;
import baymist.voxel.SurfelSet;
import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** One structure with the films of two jobs: reached by both, by one of them, by neither. */
final class TwoFilmMap {
    private static final int WIDTH = 2400;
    private static final double MARGIN = 60;
    private static final double HEAD = 70;
    private static final int RIM = 0x8A9099;
    private static final int BOTH = 0xD9DDE2;
    private static final int ONLY_A = 0x2B6CB0;
    private static final int ONLY_B = 0xE0A030;
    private static final int NEITHER = 0xFFFFFF;
    private static final int[] COLOURS = {BOTH, ONLY_A, ONLY_B, NEITHER};
    private static final double FOOT_SIZE = 15;
    private static final double FOOT_ROW = 22;

    private final Scene scene;
    private final StudyShape shape;
    private final double[] filmA;
    private final double[] filmB;
    private final List<String> words;

    /**
     * @param filmA,filmB wet film, m, [surfels of the shape]; NaN counts as bare
     * @param words for what both reach, the first alone, the second alone, neither
     */
    TwoFilmMap(Scene scene, StudyShape shape, double[] filmA, double[] filmB, List<String> words) {
        this.scene = scene;
        this.shape = shape;
        this.filmA = filmA;
        this.filmB = filmB;
        this.words = List.copyOf(words);
    }

    /**
     * Writes the picture whole or not at all.
     *
     * @param foot lines below the panels
     * @param marked names of openings that get a ring and their name
     */
    void write(List<String> foot, List<String> marked, Path png) throws IOException {
        Lettering lettering = Lettering.load();
        double inner = WIDTH - 2 * MARGIN;
        PanelLayout layout = PanelLayout.of(new PanelFinder(shape.cavity(), shape.grid()).find(), inner, lettering);
        double top = MARGIN + HEAD + 150;
        double below = 80 + FOOT_ROW * rows(lettering, foot);
        Canvas canvas = new Canvas(WIDTH, (int) Math.ceil(top + layout.heightPx() + below), lettering);
        head(canvas, scene.title());
        key(canvas);
        Legend.scaleBar(canvas, layout.pixelsPerM(), WIDTH - MARGIN, MARGIN + HEAD + 48);
        for (Placed p : layout.placed()) {
            panel(canvas, p, MARGIN, top, layout.pixelsPerM());
            marks(canvas, p, MARGIN, top, layout.pixelsPerM(), marked);
        }
        foot(canvas, foot, top + layout.heightPx() + 60);
        AtomicFile.writeBytes(png, canvas::writePng);
    }

    static void head(Canvas c, String title) throws IOException {
        double size = 34;
        while (size > 18 && c.lettering().width(title, size) > WIDTH - 2 * MARGIN) {
            size -= 1;
        }
        c.text(title, MARGIN, MARGIN + 30, size, Canvas.INK, Canvas.Align.LEFT);
    }

    static void foot(Canvas c, List<String> lines, double y) throws IOException {
        double at = y;
        for (String line : lines) {
            for (String row : c.lettering().wrap(line, FOOT_SIZE, WIDTH - 2 * MARGIN)) {
                c.text(row, MARGIN, at, FOOT_SIZE, Canvas.QUIET, Canvas.Align.LEFT);
                at += FOOT_ROW;
            }
        }
    }

    private static int rows(Lettering lettering, List<String> lines) throws IOException {
        int rows = 0;
        for (String line : lines) {
            rows += lettering.wrap(line, FOOT_SIZE, WIDTH - 2 * MARGIN).size();
        }
        return rows;
    }

    static void titles(Canvas c, Placed p, double left, double top) throws IOException {
        double x = left + p.x();
        double y = top + p.y();
        c.text(p.panel().title(), x, y - 27, PanelLayout.TITLE_SIZE, Canvas.INK, Canvas.Align.LEFT);
        c.text(p.panel().view(), x, y - 8, PanelLayout.VIEW_SIZE, Canvas.QUIET, Canvas.Align.LEFT);
    }

    private void panel(Canvas c, Placed p, double left, double top, double scale) throws IOException {
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
                    int rgb = rim ? RIM : COLOURS[kind(s)];
                    boolean hatch = rgb == NEITHER && (x + y) % 8 < 2;
                    image.setRGB(x, y, 0xFF000000 | (hatch ? Canvas.BARE.getRGB() & 0xFFFFFF : rgb));
                }
            }
        }
        c.graphics().drawImage(image, (int) (left + p.x()), (int) (top + p.y()), null);
    }

    private void marks(Canvas c, Placed p, double left, double top, double scale, List<String> marked)
            throws IOException {
        PanelRaster raster = new PanelRaster(p.panel(), shape.grid().surfels(), shape.cavity(), scale);
        for (Opening o : p.panel().openings()) {
            if (marked.contains(o.name())) {
                Vec3 centre = o.place().point(0, 0);
                double x = left + p.x() + raster.x(centre);
                double y = top + p.y() + raster.y(centre);
                c.stroke(new Ellipse2D.Double(x - 16, y - 16, 32, 32), Color.WHITE, 6);
                c.stroke(new Ellipse2D.Double(x - 16, y - 16, 32, 32), Canvas.WAND, 3);
                double width = c.lettering().width(o.name(), 17);
                c.fill(new Rectangle2D.Double(x + 22, y - 13, width + 12, 26), Color.WHITE);
                c.text(o.name(), x + 28, y + 6, 17, Canvas.WAND, Canvas.Align.LEFT);
            }
        }
    }

    /** Reached by both, by the first alone, by the second alone, by neither: 0 to 3. */
    private int kind(int surfel) {
        boolean a = filmA[surfel] >= scene.targets().hazeM();
        boolean b = filmB[surfel] >= scene.targets().hazeM();
        return a && b ? 0 : a ? 1 : b ? 2 : 3;
    }

    /** Shares of area of each kind. */
    private double[] shares() {
        SurfelSet surfels = shape.grid().surfels();
        double[] area = new double[COLOURS.length];
        double all = 0;
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isStructure(s)) {
                area[kind(s)] += surfels.areaM2()[s];
                all += surfels.areaM2()[s];
            }
        }
        for (int k = 0; k < area.length; k++) {
            area[k] /= all;
        }
        return area;
    }

    private void key(Canvas c) throws IOException {
        double[] shares = shares();
        for (int k = 0; k < COLOURS.length; k++) {
            double y = MARGIN + HEAD + 30 * k;
            Rectangle2D box = new Rectangle2D.Double(MARGIN, y - 16, 34, 20);
            c.fill(box, new Color(COLOURS[k]));
            c.stroke(box, Canvas.QUIET, 1);
            if (k == 3) {
                for (int i = 0; i < 4; i++) {
                    double x = MARGIN + 4 + 8 * i;
                    c.stroke(new Line2D.Double(x, y - 6, x + 6, y - 12), Canvas.BARE, 2);
                }
            }
            String row = String.format(Locale.ROOT, "%5.1f %%   %s", 100 * shares[k], words.get(k));
            c.text(row, MARGIN + 46, y, 18, Canvas.INK, Canvas.Align.LEFT);
        }
    }
}
