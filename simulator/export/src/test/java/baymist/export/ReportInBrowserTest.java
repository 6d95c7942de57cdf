package baymist.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import baymist.run.RunResult;
import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page in a browser without a network: it loads, turns, and shows its legend and its list. */
class ReportInBrowserTest {
    @TempDir
    static Path folder;

    private static RunResult result;
    private static Browser browser;

    @BeforeAll
    static void open() throws Exception {
        Optional<String> chromium = Outside.chromium();
        assumeTrue(chromium.isPresent(), "needs chromium");
        result = QuickRun.get().result();
        Path page = folder.resolve("report.html");
        HtmlReport.write(result, page);
        browser = new Browser(chromium.get());
        browser.open(page, "document.documentElement?.dataset.view === 'ready'");
        browser.evaluate("document.getElementById('stage').scrollIntoView({block: 'center'})");
    }

    @AfterAll
    static void close() throws Exception {
        if (browser != null) {
            browser.close();
        }
    }

    private record Box(double x, double y, double width, double height) {
        static Box of(String selector) throws Exception {
            JsonNode b = browser.evaluate("(() => { const b = document.querySelector('" + selector
                    + "').getBoundingClientRect(); return [b.x, b.y, b.width, b.height]; })()");
            return new Box(
                    b.get(0).asDouble(),
                    b.get(1).asDouble(),
                    b.get(2).asDouble(),
                    b.get(3).asDouble());
        }

        BufferedImage in(BufferedImage window) {
            return window.getSubimage((int) x + 2, (int) y + 2, (int) width - 4, (int) height - 4);
        }
    }

    private static BufferedImage stage() throws Exception {
        return Box.of("#stage").in(browser.picture());
    }

    private static double differing(BufferedImage a, BufferedImage b) {
        int n = 0;
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                n += a.getRGB(x, y) == b.getRGB(x, y) ? 0 : 1;
            }
        }
        return n / (double) (a.getWidth() * a.getHeight());
    }

    private static void press(String id) throws Exception {
        browser.evaluate("document.getElementById('" + id + "').click()");
    }

    @Test
    void loadsWithoutANetworkAndWithoutComplaint() throws Exception {
        assertEquals(List.of(), browser.errors());
        assertEquals(List.of(), browser.requests());
        assertEquals(
                "true",
                browser.evaluate(
                                "String(performance.getEntriesByType('resource').every(e => /^(data|blob):/.test(e.name)))")
                        .asText());
    }

    @Test
    void theViewShowsFilmInManyColours() throws Exception {
        press("view-whole");
        BufferedImage view = stage();
        Set<Integer> colours = new HashSet<>();
        int ground = view.getRGB(4, 4);
        int drawn = 0;
        for (int y = 0; y < view.getHeight(); y++) {
            for (int x = 0; x < view.getWidth(); x++) {
                drawn += view.getRGB(x, y) == ground ? 0 : 1;
                colours.add(view.getRGB(x, y));
            }
        }
        assertTrue(drawn > 0.05 * view.getWidth() * view.getHeight(), drawn + " pixels drawn");
        assertTrue(colours.size() > 300, colours.size() + " colours");
    }

    @Test
    void draggingTurnsTheView() throws Exception {
        press("view-whole");
        BufferedImage before = stage();
        assertEquals(0, differing(before, stage()), "a view that nobody touches stands still");
        Box b = Box.of("#stage");
        browser.drag(b.x + 0.4 * b.width, b.y + 0.5 * b.height, b.x + 0.65 * b.width, b.y + 0.4 * b.height);
        BufferedImage after = stage();
        assertTrue(differing(before, after) > 0.05, differing(before, after) + " of the pixels changed");
        press("view-whole");
        assertTrue(differing(before, stage()) < 1e-3, "and the button brings it back");
    }

    @Test
    void legendAndListAreThere() throws Exception {
        for (String id : List.of("legend", "places", "cautions", "time")) {
            assertTrue(Box.of("#" + id).height > 40, id);
        }
        String legend =
                browser.evaluate("document.getElementById('legend').innerText").asText();
        for (String word : List.of("reached", "protected", "excess", "bare", "\u00b5m", "10", "50")) {
            assertTrue(legend.contains(word), word + " in " + legend);
        }
        JsonNode rows = browser.evaluate("[...document.querySelectorAll('.places button')].map(b => b.innerText)");
        assertEquals(result.coverage().unreached().size(), rows.size());
        for (int i = 0; i < rows.size(); i++) {
            assertTrue(rows.get(i)
                    .asText()
                    .contains(result.coverage().unreached().get(i).where()));
        }
    }

    @Test
    void pressingAPlaceGoesThere() throws Exception {
        press("view-whole");
        BufferedImage before = stage();
        browser.evaluate("document.querySelectorAll('.places button')[1].click()");
        assertEquals(
                "2", browser.evaluate("document.documentElement.dataset.marked").asText());
        assertTrue(differing(before, stage()) > 0.05);
        assertTrue(browser.evaluate("document.querySelectorAll('.places button')[1].classList.contains('on')")
                .asBoolean());
    }

    /** What the view tells of the point in its middle, looking down, is a part that is there and a film within its bounds. */
    @Test
    void pointingReadsTheFilm() throws Exception {
        press("view-above");
        Box b = Box.of("#stage");
        browser.point(b.x + 0.5 * b.width + 3, b.y + 0.5 * b.height + 40);
        String words =
                browser.evaluate("document.getElementById('under').textContent").asText();
        assertTrue(
                words.matches(
                        "lower skin, bay \\d: .* \u00b5m, (bare|thin|protected|excess); at -?\\d+, -?\\d+, -?\\d+ mm"),
                words);
    }

    @Test
    void nothingIsWiderThanTheWindow() throws Exception {
        assertTrue(browser.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
                .asBoolean());
    }

    @Test
    void darkAndLightBothHaveContrast() throws Exception {
        String keep = System.getProperty("baymist.pictures", "");
        for (String scheme : List.of("dark", "light")) {
            browser.prefer(scheme);
            BufferedImage window = browser.picture();
            if (!keep.isEmpty()) {
                ImageIO.write(
                        window,
                        "png",
                        Files.createDirectories(Path.of(keep))
                                .resolve("report-" + scheme + ".png")
                                .toFile());
            }
            JsonNode c = browser.evaluate(
                    "(() => { const s = getComputedStyle(document.body); return [s.color, s.backgroundColor]; })()");
            double ink = light(c.get(0).asText());
            double paper = light(c.get(1).asText());
            assertEquals(scheme.equals("dark"), paper < ink, scheme);
            // W3C, Web Content Accessibility Guidelines 2.1, success criterion 1.4.6: 7 to 1 for text
            assertTrue((Math.max(ink, paper) + 0.05) / (Math.min(ink, paper) + 0.05) >= 7, c.toString());
        }
    }

    /** Relative luminance of "rgb(r, g, b)", W3C WCAG 2.1. */
    private static double light(String rgb) {
        String[] n = rgb.replaceAll("[^0-9,]", "").split(",");
        double[] weight = {0.2126, 0.7152, 0.0722};
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            sum += weight[i] * GltfFile.linear(Integer.parseInt(n[i]));
        }
        return sum;
    }
}
