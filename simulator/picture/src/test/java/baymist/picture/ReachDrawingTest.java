package baymist.picture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.access.NearTips;
import baymist.geom.Vec3;
import baymist.picture.SectionPainter.Place;
import baymist.report.SampleRun;
import baymist.run.CheckResult;
import baymist.run.ReachLine;
import baymist.run.ReachOptions;
import baymist.run.ReachResult;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.io.SceneReader;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class ReachDrawingTest {
    private static final Path OUT = Path.of("target/samples");
    private static ReachResult rods;

    @BeforeAll
    static void lookIntoTheBox() {
        rods = Simulation.reach(
                SceneReader.read(Path.of("../../scenes/verification/access/rods.yaml")),
                ReachOptions.DEFAULT,
                new RunOptions(1),
                RunObserver.NONE);
    }

    private static SectionView plan(ReachResult r) {
        CheckResult c = new CheckResult(r.scene(), r.cavity(), r.grid(), List.of(), r.findings());
        return new SectionFinder(c).find().get(0);
    }

    private static Canvas paint(ReachResult r, SectionView view, double scale) throws IOException {
        Canvas canvas = new Canvas(900, 700, Lettering.load());
        Place place = new Place(view, 50, 50, scale);
        CheckResult c = new CheckResult(r.scene(), r.cavity(), r.grid(), List.of(), r.findings());
        SectionPainter painter = new SectionPainter(c, new ReachLayer(r));
        painter.paint(canvas, place, painter.labels(view, scale, Lettering.load()));
        return canvas;
    }

    private static boolean near(Canvas c, Place p, Vec3 at, Color wanted, int pixels) {
        int x0 = (int) Math.round(p.x(at));
        int y0 = (int) Math.round(p.y(at));
        for (int dx = -pixels; dx <= pixels; dx++) {
            for (int dy = -pixels; dy <= pixels; dy++) {
                if (new Color(c.image().getRGB(x0 + dx, y0 + dy)).equals(wanted)) {
                    return true;
                }
            }
        }
        return false;
    }

    @Test
    void everyObstacleHasItsCross() throws IOException {
        SectionView view = plan(rods);
        Canvas c = paint(rods, view, 1000);
        Place p = new Place(view, 50, 50, 1000);
        int crosses = 0;
        for (ReachLine l : rods.lines()) {
            if (l.reach().feasible()
                    && l.reach().stop() != null
                    && l.reach().stop().partName().equals("right wall")) {
                assertTrue(
                        near(c, p, l.reach().stop().placeM(), ReachLayer.STOP, 7),
                        l.entry().name());
                crosses++;
            }
        }
        assertTrue(crosses > 0);
    }

    @Test
    void shadeIsWhereATipIsNearAndNowhereElse() throws IOException {
        SectionView view = plan(rods);
        Canvas c = paint(rods, view, 1000);
        Place p = new Place(view, 50, 50, 1000);
        NearTips tips = new NearTips(
                rods.around(),
                rods.lines().stream().flatMap(l -> l.places().stream()).toList(),
                rods.withinM());
        int shaded = 0;
        int white = 0;
        for (int cell = 0; cell < rods.grid().cellCount(); cell++) {
            Vec3 q = rods.grid().centre(cell);
            if (Math.abs(q.z() - view.atM()) > 0.5 * rods.grid().sizeM().z()) {
                continue;
            }
            Color colour = new Color(c.image().getRGB((int) Math.round(p.x(q)), (int) Math.round(p.y(q))));
            if (colour.equals(ReachLayer.REACHED)) {
                assertTrue(tips.sees(q));
                shaded++;
            } else if (colour.equals(Color.WHITE)) {
                assertTrue(!tips.sees(q), "white at " + q);
                white++;
            }
        }
        assertTrue(shaded > 50, shaded + " shaded, " + white + " white");
    }

    @Test
    void drawingsAreWrittenAndTheSameEachTime() throws IOException {
        for (ReachResult r : List.of(rods, SampleRun.reach())) {
            Path png = OUT.resolve("reach-" + r.lines().size() + ".png");
            ReachDrawing.write(r, png);
            BufferedImage image = ImageIO.read(png.toFile());
            assertEquals(StructureDrawing.WIDTH, image.getWidth());
            int[] once = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
            BufferedImage again = ReachDrawing.draw(r, Lettering.load()).image();
            assertArrayEquals(once, again.getRGB(0, 0, again.getWidth(), again.getHeight(), null, 0, again.getWidth()));
        }
    }

    /** The tip of the sagged line, not that of the straight one, carries the dot. */
    @Test
    void wandIsDrawnWhereItHangs() throws IOException {
        ReachResult sample = SampleRun.reach();
        CheckResult c = new CheckResult(sample.scene(), sample.cavity(), sample.grid(), List.of(), sample.findings());
        SectionView side = new SectionFinder(c)
                .find().stream().filter(v -> v.axis() == 0).findFirst().orElseThrow();
        Canvas canvas = paint(sample, side, 700);
        Place p = new Place(side, 50, 50, 700);
        ReachLine l = sample.lines().get(0);
        Vec3 hung = java.util.Objects.requireNonNull(l.sag()).tipM();
        Color wand = new Color(0x8E2A86);
        assertTrue(near(canvas, p, hung, wand, 1));
        assertTrue(near(canvas, p, hung.plus(3.0 / 700, new Vec3(0, 0, -1)), wand, 1));
    }
}
