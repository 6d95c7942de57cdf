package baymist.picture;

import baymist.picture.PanelLayout.Placed;
import baymist.report.AtomicFile;
import baymist.report.CompareReport;
import baymist.scene.TargetSpec;
import baymist.study.CompareRow;
import baymist.study.Compared;
import baymist.study.StudyResult;
import baymist.study.StudyShape;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Pictures of a comparison: film of the first few side by side, and where two of them differ. */
public final class CompareMap {
    private static final int WIDTH = 2400;
    private static final double MARGIN = 60;
    private static final double GAP = 50;
    private static final double HEAD = 70;
    private static final double COLUMN_HEAD = 240;

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
        TwoFilmMap.head(canvas, compared.scene().title());
        TargetSpec targets = compared.scene().targets();
        FilmColours colours = new FilmColours(targets);
        double scale = layouts.isEmpty() ? 1 : layouts.get(0).pixelsPerM();
        Legend.drawFilm(canvas, colours, targets, scale, MARGIN, MARGIN + HEAD, WIDTH - 2 * MARGIN);
        for (int i = 0; i < rows.size(); i++) {
            double left = MARGIN + i * (column + GAP);
            columnHead(canvas, i + 1, rows.get(i), left, top - COLUMN_HEAD + 44, column);
            film(canvas, shapes.get(i), rows.get(i).outcome().filmM(), targets, colours, layouts.get(i), left, top);
        }
        TwoFilmMap.foot(canvas, foot(compared, rows), top + tallest + 70);
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
        TwoFilmMap map = new TwoFilmMap(
                compared.scene(),
                shape,
                first.outcome().filmM(),
                shape.filmOf(other, second.outcome().filmM()),
                List.of(
                        "reached by both",
                        "only by " + a + ": " + first.candidate().words(),
                        "only by " + b + ": " + second.candidate().words(),
                        "bare with either"));
        List<CompareRow> both = List.of(first, second);
        map.write(foot(compared, both), List.of(), png);
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

    /** What stands below a picture of these rows. */
    private static List<String> foot(Compared compared, List<CompareRow> rows) {
        List<String> lines = new ArrayList<>();
        lines.add("Planning resolution: " + compared.planning().words() + ". A computed prediction, not an approval.");
        if (rows.stream().anyMatch(r -> !r.candidate().holes().isEmpty())) {
            lines.add(CompareReport.DRILLING);
        }
        return lines;
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
            TwoFilmMap.titles(c, p, left, top);
            PanelRaster raster =
                    new PanelRaster(p.panel(), shape.grid().surfels(), shape.cavity(), layout.pixelsPerM());
            PanelImage image = new PanelImage(raster, shape.grid().surfels(), region, t -> colours.rgb(filmM[t]));
            c.graphics().drawImage(image.paint(), (int) (left + p.x()), (int) (top + p.y()), null);
        }
    }
}
