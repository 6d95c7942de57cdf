package baymist.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.report.FilmTable;
import baymist.report.PastRun;
import baymist.report.ResultJson;
import baymist.report.RunDifference;
import baymist.report.SampleRun;
import baymist.run.RunResult;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class DifferenceMapTest {
    private static final Path OUT = Path.of("target/samples/difference");

    @Test
    void aMapOfWhatChangedIsWritten() throws IOException {
        RunResult before = SampleRun.wedge();
        ResultJson.write(before, OUT.resolve("result.json"));
        FilmTable.write(before, OUT.resolve(FilmTable.FILE));
        RunResult now = SampleRun.wedgeLater();
        Path png = OUT.resolve("difference.png");
        DifferenceMap.write(now, RunDifference.of(now, PastRun.read(OUT)), png);
        BufferedImage image = ImageIO.read(png.toFile());
        assertEquals(CoverageMap.WIDTH, image.getWidth());
    }

    @Test
    void theScaleIsEvenOnBothSidesAndDarkensTowardsItsEnds() {
        DifferenceColours c = new DifferenceColours(1e-6);
        assertEquals(0, c.place(3e-6, 3e-6), 1e-15);
        assertEquals(-c.place(2e-6, 5e-6), c.place(5e-6, 2e-6), 1e-15);
        assertEquals(1, c.place(0, 1));
        assertEquals(-1, c.place(1, 0));
        // half the way in the logarithm: root of five
        assertEquals(0.5, c.place(0, (Math.sqrt(5) - 1) * 1e-6), 1e-12);
        for (int side : new int[] {-1, 1}) {
            double last = 2;
            for (int i = 0; i <= 10; i++) {
                double l = DifferenceColours.colour(side * i / 10.0).l();
                assertTrue(l < last, "lightness falls away from the middle");
                last = l;
            }
            // Machado, Oliveira and Fernandes (2009) and others: blue against yellow-orange is what red-green blindness
            // keeps
            assertTrue(Math.signum(DifferenceColours.colour(side * 0.7).b()) == side, "blue below, yellow above");
        }
    }
}
