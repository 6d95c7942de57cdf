package baymist.picture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.report.SampleRun;
import baymist.run.CheckResult;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.io.SceneReader;
import java.awt.Color;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class StructureDrawingTest {
    private static final Path OUT = Path.of("target/samples");
    private static CheckResult wingBox;

    @BeforeAll
    static void readTheWingBox() {
        wingBox = Simulation.check(
                SceneReader.read(Path.of("../../scenes/wing-box.yaml")), new RunOptions(1), RunObserver.NONE);
    }

    private static double length(List<SectionCut.Segment> segments) {
        return segments.stream().mapToDouble(s -> s.a().distance(s.b())).sum();
    }

    /** A tetrahedron with corners at the origin and one metre along each axis, cut at z: a right triangle of legs 1 - z. */
    @Test
    void sectionOfATetrahedronIsAClosedTriangleOfKnownLength() {
        TriangleMesh mesh = new TriangleMesh(
                new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1}, new int[] {0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3});
        for (double z : new double[] {0.1, 0.25, 0.9}) {
            List<SectionCut.Segment> cut = SectionCut.of(mesh, t -> t, 2, z);
            assertEquals((1 - z) * (2 + Math.sqrt(2)), length(cut), 1e-12);
            Vec3 sum = Vec3.ZERO;
            for (SectionCut.Segment s : cut) {
                assertEquals(z, s.a().z(), 1e-15);
                sum = sum.plus(s.b().minus(s.a()));
            }
            assertEquals(3, cut.size());
        }
        assertTrue(SectionCut.of(mesh, t -> t, 2, 1.5).isEmpty());
    }

    /** Sheet and gaps of a rib at any height add up to the rib; a gap is the chord of its hole: 2 sqrt(r^2 - d^2). */
    @Test
    void gapsOfTheDrawnHolesAreTheirChords() {
        var cavity = wingBox.cavity();
        int hole = cavity.openingIndex("rib 2 hole 2");
        double d = 0.017;
        double z = cavity.openings().get(hole).place().centreM().z() + d;
        double gap = 0;
        for (SectionCut.Segment s : SectionCut.of(cavity.closures(), cavity::openingOfClosure, 2, z)) {
            gap += s.owner() == hole ? s.a().distance(s.b()) : 0;
        }
        // the polygon of 96 chords is matched in area: half a thousandth
        assertEquals(2 * Math.sqrt(0.04 * 0.04 - d * d), gap, 1e-3 * gap);
        int rib = cavity.openings().get(hole).part();
        double sheet = 0;
        for (SectionCut.Segment s : SectionCut.of(cavity.cutSheets(), cavity::partOfCut, 2, z)) {
            sheet += s.owner() == rib ? s.a().distance(s.b()) : 0;
        }
        double whole = 0;
        for (SectionCut.Segment s : SectionCut.of(cavity.sheets(), cavity::partOfSheet, 2, z)) {
            whole += s.owner() == rib ? s.a().distance(s.b()) : 0;
        }
        double others = 0;
        for (SectionCut.Segment s : SectionCut.of(cavity.closures(), cavity::openingOfClosure, 2, z)) {
            boolean same = cavity.openings().get(s.owner()).part() == rib;
            others += same && s.owner() != hole ? s.a().distance(s.b()) : 0;
        }
        assertEquals(whole, sheet + gap + others, 1e-9);
    }

    @Test
    void planSideAndOneSectionForEachBayAreShown() {
        List<SectionView> views = new SectionFinder(wingBox).find();
        assertEquals(2 + 4, views.size());
        assertTrue(views.get(0).title().startsWith("Plan"), views.get(0).title());
        assertTrue(
                views.get(3).title().startsWith("bay 2, between rib 2 and rib 3"),
                views.get(3).title());
        for (SectionView v : views) {
            // right x up points at the reader, who looks from where the view says
            boolean high = v.right().cross(v.up()).get(v.axis()) > 0;
            String from = v.axis() == 2 ? "above" : v.axis() == 1 ? "inboard" : "aft";
            assertEquals(v.axis() != 1, high, v.title());
            assertTrue(v.view().contains("seen from " + from), v.view());
        }
    }

    @Test
    void everyOpeningIsNamedInSomeView() throws IOException {
        SectionPainter painter = new SectionPainter(wingBox);
        Lettering lettering = Lettering.load();
        int names = 0;
        for (SectionView v : new SectionFinder(wingBox).find()) {
            names += painter.labels(v, 1000, lettering).boxes(0, 100).size();
        }
        assertTrue(names >= wingBox.cavity().openings().size() + 3, names + " names");
    }

    @Test
    void namesNeverLieOnEachOtherNorUnderALine() throws IOException {
        Lettering lettering = Lettering.load();
        for (int seed = 0; seed < 200; seed++) {
            Random random = new Random(seed);
            LeaderLabels labels = new LeaderLabels(lettering);
            int n = 1 + random.nextInt(30);
            for (int i = 0; i < n; i++) {
                // many stand exactly above each other, as the holes of a rib do
                double x = random.nextBoolean() ? 100 * random.nextInt(6) : 900 * random.nextDouble();
                labels.add(
                        "hole " + "x".repeat(random.nextInt(12)),
                        x,
                        300 * random.nextDouble(),
                        random.nextBoolean(),
                        Color.BLACK);
            }
            labels.settle();
            List<double[]> boxes = labels.boxes(0, 300);
            assertEquals(n, boxes.size());
            for (int a = 0; a < n; a++) {
                Rectangle2D box = rectangle(boxes.get(a));
                for (int b = a + 1; b < n; b++) {
                    assertTrue(!box.intersects(rectangle(boxes.get(b))), "seed " + seed);
                }
                for (double[] l : labels.lines(0, 300)) {
                    boolean crosses = new Line2D.Double(l[0], l[1], l[2], l[3])
                            .intersects(box.getX() + 1, box.getY() + 1, box.getWidth() - 1, box.getHeight() - 2);
                    assertTrue(!crosses, "seed " + seed);
                }
                assertTrue(boxes.get(a)[2] <= labels.reach());
            }
        }
    }

    private static Rectangle2D rectangle(double[] b) {
        return new Rectangle2D.Double(b[0], b[1], b[2] - b[0], b[3] - b[1]);
    }

    @Test
    void drawingsAreWrittenAndTheSameEachTime() throws IOException {
        for (CheckResult check : List.of(wingBox, SampleRun.check())) {
            Path png = OUT.resolve("structure-" + check.cavity().parts().size() + ".png");
            StructureDrawing.write(check, png);
            BufferedImage image = ImageIO.read(png.toFile());
            assertEquals(StructureDrawing.WIDTH, image.getWidth());
            assertTrue(image.getHeight() > 600 && image.getHeight() < 6000, "height " + image.getHeight());
            int[] again = StructureDrawing.draw(check, Lettering.load())
                    .image()
                    .getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
            assertArrayEquals(
                    image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth()), again);
        }
    }

    @Test
    void roundNumbersAreFoundUpwards() {
        assertEquals(0.1, Ticks.roundUp(0.07), 1e-12);
        assertEquals(0.05, Ticks.roundUp(0.03), 1e-12);
        assertEquals(0.02, Ticks.roundUp(0.011), 1e-12);
        assertEquals(5, Ticks.roundUp(5), 1e-12);
    }
}
