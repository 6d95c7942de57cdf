package baymist.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import baymist.card.CardMaker;
import baymist.card.CardOptions;
import baymist.card.CardSource;
import baymist.card.WorkCard;
import baymist.print.CardPage;
import baymist.print.CardUnits;
import baymist.print.Paper;
import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The work card as a page in a browser without a network: every section can be seen, every picture has something in it. */
class CardInBrowserTest {
    private static final Path SCENE = Path.of("src/test/scenes/quick-elevator.yaml");

    @TempDir
    static Path folder;

    private static WorkCard card;
    private static Browser browser;

    @BeforeAll
    static void open() throws Exception {
        Optional<String> chromium = Outside.chromium();
        assumeTrue(chromium.isPresent(), "needs chromium");
        CardSource source = CardSource.of(QuickRun.get().result());
        card = CardMaker.of(source, CardOptions.NONE);
        Path page = folder.resolve("card.html");
        Files.writeString(page, new CardPage(card, source, CardUnits.of(Files.readString(SCENE)), Paper.A4).html());
        browser = new Browser(chromium.get());
        browser.open(page, "document.readyState === 'complete' && document.querySelectorAll('h2').length > 0");
    }

    @AfterAll
    static void close() throws Exception {
        if (browser != null) {
            browser.close();
        }
    }

    @Test
    void asksForNothingAndComplainsOfNothing() {
        assertEquals(List.of(), browser.requests());
        assertEquals(List.of(), browser.errors());
    }

    @Test
    void everySectionCanBeSeen() throws Exception {
        JsonNode seen = browser.evaluate("[...document.querySelectorAll('h2')].filter(h => h.checkVisibility()"
                + " && h.getBoundingClientRect().height > 5).map(h => h.textContent.trim().split(/\\s+/)[0])");
        for (int i = 1; i <= 13; i++) {
            assertEquals(Integer.toString(i), seen.path(i - 1).asText(), seen.toString());
        }
        assertEquals(
                card.steps().size(),
                browser.evaluate("document.querySelectorAll('.pass').length").asInt());
    }

    @Test
    void nothingSticksOutOfThePage() throws Exception {
        JsonNode out = browser.evaluate("(() => { const b = document.body.getBoundingClientRect();"
                + " return [...document.querySelectorAll('body *')].filter(e => { const r = e.getBoundingClientRect();"
                + " return !e.closest('svg svg, svg *') && r.width > 0 && (r.left < b.left - 1 || r.right > b.right + 1); })"
                + ".map(e => e.tagName + ' ' + e.textContent.trim().slice(0, 40)); })()");
        assertEquals("[]", out.toString());
    }

    @Test
    void picturesAndWordsAreDrawn() throws Exception {
        int pictures =
                browser.evaluate("document.querySelectorAll('body svg').length").asInt();
        // the overview, and a dial, a rod and a view of each pass
        assertTrue(pictures >= 1 + 3 * card.steps().size(), pictures + " pictures");
        assertInk("the cautions");
        for (int i = 0; i < pictures; i++) {
            browser.evaluate("document.querySelectorAll('body svg')[" + i + "].scrollIntoView({block: 'center'})");
            JsonNode b = browser.evaluate("(() => { const r = document.querySelectorAll('body svg')[" + i
                    + "].getBoundingClientRect(); return [r.x, r.y, r.width, r.height]; })()");
            BufferedImage window = browser.picture();
            int x = Math.max(0, b.get(0).asInt());
            int y = Math.max(0, b.get(1).asInt());
            int width = Math.min(window.getWidth() - x, b.get(2).asInt());
            int height = Math.min(window.getHeight() - y, b.get(3).asInt());
            assertTrue(ink(window.getSubimage(x, y, width, height)) > 0.005, "picture " + i + " is blank");
        }
    }

    private static void assertInk(String what) throws Exception {
        double ink = ink(browser.picture());
        assertTrue(ink > 0.01 && ink < 0.5, what + ": " + ink + " of the window is dark");
    }

    /** Share of dark points. */
    private static double ink(BufferedImage image) {
        int dark = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                dark += (image.getRGB(x, y) >> 8 & 0xff) < 128 ? 1 : 0;
            }
        }
        return dark / (double) (image.getWidth() * image.getHeight());
    }
}
