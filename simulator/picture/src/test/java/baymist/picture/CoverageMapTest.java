package baymist.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.coverage.UnreachedRegion;
import baymist.picture.PanelLayout.Placed;
import baymist.report.SampleRun;
import baymist.run.RunResult;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class CoverageMapTest {
    private static final Path OUT = Path.of("target/samples");

    @Test
    void mapsOfSamplesAreWrittenAndWideEnough() throws IOException {
        for (RunResult r : List.of(SampleRun.wedge(), SampleRun.tank())) {
            String name = r.scene().title().substring(0, 4).toLowerCase(java.util.Locale.ROOT);
            Path png = OUT.resolve(name + ".png");
            CoverageMap.write(r, png);
            BufferedImage image = ImageIO.read(png.toFile());
            assertEquals(CoverageMap.WIDTH, image.getWidth());
            assertTrue(image.getHeight() > 800 && image.getHeight() < 4000, "height " + image.getHeight());
            TimeChart.write(r, OUT.resolve(name + "-time.png"));
            assertTrue(Files.size(OUT.resolve(name + "-time.png")) > 5000);
        }
    }

    @Test
    void sameResultGivesTheSamePicture() throws IOException {
        Lettering l = Lettering.load();
        int[] first = pixels(CoverageMap.draw(SampleRun.tank(), 1600, l).image());
        int[] second = pixels(CoverageMap.draw(SampleRun.tank(), 1600, l).image());
        assertTrue(Arrays.equals(first, second));
    }

    @Test
    void absurdWidthsAreRefused() {
        assertThrows(
                IllegalArgumentException.class, () -> CoverageMap.write(SampleRun.tank(), OUT.resolve("no.png"), 100));
    }

    @Test
    void everySurfelIsInExactlyOnePanelAndBothFacesOfARibHaveTheirOwn() {
        RunResult r = SampleRun.wedge();
        List<Panel> panels = new PanelFinder(r).find();
        int shown = panels.stream().mapToInt(p -> p.surfels().length).sum();
        long there =
                Arrays.stream(r.grid().surfels().areaM2()).filter(a -> a > 0).count();
        assertEquals(there, shown);
        List<String> titles = panels.stream().map(Panel::title).toList();
        assertEquals(titles.size(), new HashSet<>(titles).size());
        assertTrue(
                titles.containsAll(List.of("upper skin", "lower skin", "rib 3, inboard face", "rib 3, outboard face")));
        assertEquals(
                "upper skin",
                titles.stream()
                        .filter(t -> t.endsWith("skin"))
                        .skip(1)
                        .findFirst()
                        .orElse(""));
    }

    /** Orthographic along the mean normal: on a flat panel every surfel's patch has its true area. */
    @Test
    void patchesOfAFlatPanelHaveTheAreaOfTheirSurfels() {
        RunResult r = SampleRun.tank();
        double scale = 1000;
        for (Panel p : new PanelFinder(r).find()) {
            PanelRaster raster = new PanelRaster(p, r.grid().surfels(), r.cavity(), scale);
            double area = 0;
            Set<Integer> owners = new HashSet<>();
            for (int y = 0; y < raster.height(); y++) {
                for (int x = 0; x < raster.width(); x++) {
                    if (raster.owner(x, y) >= 0) {
                        area += 1 / (scale * scale);
                        owners.add(raster.owner(x, y));
                    }
                }
            }
            double exact = Arrays.stream(p.surfels())
                    .mapToDouble(s -> r.grid().surfels().areaM2()[s])
                    .sum();
            assertEquals(exact, area, 0.01 * exact, p.title());
            assertEquals(p.surfels().length, owners.size(), p.title());
        }
    }

    @Test
    void panelsAreSeenTheWayTheySay() {
        for (Panel p : new PanelFinder(SampleRun.wedge()).find()) {
            boolean mirrored = p.view().contains("through the sheet");
            // unmirrored: right x up points from the sheet to the reader, as the face's own normal does
            assertEquals(!mirrored, p.right().cross(p.up()).dot(p.normal()) > 0.9, p.title() + ": " + p.view());
        }
    }

    @Test
    void panelsShareOneScaleStayOnThePageAndDoNotOverlap() throws IOException {
        PanelLayout layout = PanelLayout.of(new PanelFinder(SampleRun.wedge()).find(), 1800, Lettering.load());
        List<Placed> all = layout.placed();
        for (int i = 0; i < all.size(); i++) {
            Placed a = all.get(i);
            assertEquals(a.panel().widthM() * layout.pixelsPerM(), a.width(), 1e-9);
            assertTrue(a.x() >= 0 && a.x() + a.width() <= 1800.5 && a.y() + a.height() <= layout.heightPx() + 1e-9);
            for (Placed b : all.subList(i + 1, all.size())) {
                boolean apart = a.x() + a.width() <= b.x()
                        || b.x() + b.width() <= a.x()
                        || a.y() + a.height() <= b.y()
                        || b.y() + b.height() <= a.y();
                assertTrue(apart, a.panel().title() + " on " + b.panel().title());
            }
        }
    }

    @Test
    void largeRegionsHaveRoomForTheirNumberInsideThemselves() {
        RunResult r = SampleRun.wedge();
        int[] regionOf = new int[r.filmM().length];
        for (UnreachedRegion u : r.coverage().unreached()) {
            Arrays.stream(u.surfels()).forEach(s -> regionOf[s] = u.id());
        }
        Panel upper = new PanelFinder(r)
                .find().stream()
                        .filter(p -> p.title().equals("upper skin"))
                        .findFirst()
                        .orElseThrow();
        PanelRaster raster = new PanelRaster(upper, r.grid().surfels(), r.cavity(), 1000);
        PanelImage image = new PanelImage(
                raster,
                r.grid().surfels(),
                regionOf,
                s -> new FilmColours(r.scene().targets()).rgb(r.filmM()[s]));
        double[] at = image.middleOf(1);
        assertNotNull(at);
        assertEquals(1, regionOf[raster.owner((int) at[0], (int) at[1])]);
    }

    private static int[] pixels(BufferedImage image) {
        return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    }
}
