package baymist.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class DrawingTest {
    /**
     * Liberation Sans has the widths of Helvetica (Adobe font metrics, from memory): in thousandths of an em a digit is
     * 556, a blank 278, an M 833, an i 222.
     */
    @Test
    void lettersHaveTheirPublishedWidths() throws IOException {
        Lettering l = Lettering.load();
        assertEquals(556, l.width("8", 1000), 1);
        assertEquals(278, l.width(" ", 1000), 1);
        assertEquals(833, l.width("M", 1000), 1);
        assertEquals(222, l.width("i", 1000), 1);
        assertEquals(l.width("80", 20), 2 * l.width("8", 20), 1e-9);
    }

    @Test
    void everySignThatThePicturesUseHasAnOutline() throws IOException {
        Lettering l = Lettering.load();
        for (String sign :
                List.of("\u00b5", "\u00b2", "\u00d7", "\u2191", "\u2192", "\u00b7", "\u2013", "\u201c", "%")) {
            Rectangle2D box = l.outline(sign, 0, 0, 100).getBounds2D();
            assertTrue(box.getWidth() > 5 && box.getHeight() > 3, sign);
        }
        assertFalse(l.outline("\u2192", 0, 0, 100)
                .getBounds2D()
                .equals(l.outline("\uE000", 0, 0, 100).getBounds2D()));
    }

    @Test
    void lettersStandOnTheirBaseline() throws IOException {
        Shape cap = Lettering.load().outline("H", 10, 50, 100);
        assertEquals(50, cap.getBounds2D().getMaxY(), 0.5);
        // cap height of Helvetica: 718 thousandths of an em (Adobe font metrics, from memory); Liberation's is 688 to
        // 729
        assertEquals(71, cap.getBounds2D().getHeight(), 3);
        assertTrue(cap.getBounds2D().getMinX() >= 10);
    }

    @Test
    void wrappedRowsFitAndKeepAllWords() throws IOException {
        Lettering l = Lettering.load();
        String words = "upper skin, bay 2, aft corner at rib 3, and some more words to fill a row or two";
        List<String> rows = l.wrap(words, 17, 200);
        assertEquals(words, String.join(" ", rows));
        for (String row : rows) {
            assertTrue(l.width(row, 17) <= 200);
        }
    }

    @Test
    void ticksAreRound() {
        assertEquals(200, Ticks.roundDown(499), 1e-9);
        assertEquals(500, Ticks.roundDown(500), 1e-9);
        assertEquals(0.01, Ticks.roundDown(0.019), 1e-12);
        assertEquals(List.of(0.0, 2.0, 4.0, 6.0, 8.0), Ticks.upTo(9));
        assertEquals(List.of(0.0), Ticks.upTo(0));
        assertEquals("25.4", Ticks.plain(25.4, 3));
        assertEquals("200", Ticks.plain(200, 3));
        assertEquals("0", Ticks.plain(0, 3));
        assertEquals(7, Ticks.decades(1, 100).size());
    }

    @Test
    void labelsNeverLieOnEachOther() throws IOException {
        Canvas canvas = new Canvas(300, 200, Lettering.load());
        Labels labels = new Labels();
        Rectangle2D page = new Rectangle2D.Double(0, 0, 300, 200);
        int drawn = 0;
        for (int i = 1; i <= 60; i++) {
            drawn += labels.number(canvas, String.valueOf(i), 150, 100, page) ? 1 : 0;
        }
        // rings of 26 pixels with 3 to spare within 76 + 13 pixels: some fit, not all sixty
        assertTrue(drawn >= 5 && drawn < 60, drawn + " drawn");
        assertFalse(labels.name(canvas, "port", new Rectangle2D.Double(140, 90, 20, 20), 14, page));
        assertTrue(labels.name(canvas, "port", new Rectangle2D.Double(10, 10, 4, 4), 14, page));
    }

    /** Java's own text throws on a machine without fonts or fontconfig: no class here may name it. */
    @Test
    void nothingUsesJavasOwnText() throws IOException {
        try (Stream<Path> classes = Files.walk(Path.of("target/classes/baymist/picture"))) {
            for (Path c : classes.filter(p -> p.toString().endsWith(".class")).toList()) {
                String bytes = new String(Files.readAllBytes(c), StandardCharsets.ISO_8859_1);
                assertFalse(bytes.contains("java/awt/Font"), c.toString());
                assertFalse(bytes.contains("drawString"), c.toString());
            }
        }
    }
}
