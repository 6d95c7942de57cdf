package baymist.picture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.WandMaterial;
import baymist.size.Bore;
import baymist.size.Candidate;
import baymist.size.Design;
import baymist.size.Hook;
import baymist.size.Pattern;
import baymist.size.SampleSize;
import baymist.size.SizeRequest;
import baymist.size.SizeResult;
import baymist.size.Tube;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WandDrawingTest {
    private static final SizeResult SAMPLE = SampleSize.result(
            new SizeRequest(
                    0.7,
                    0,
                    0.05,
                    3,
                    List.of(new Tube(0.00635, 0.003)),
                    List.of(Pattern.ring(8, 0.0003)),
                    List.of(),
                    false,
                    WandMaterial.STAINLESS),
            true);

    @TempDir
    Path folder;

    private record Ink(double left, double top, double right, double bottom, String words) {
        boolean meets(Ink o) {
            return left < o.right && o.left < right && top < o.bottom && o.top < bottom;
        }
    }

    private static Candidate wand(double outerM, @Nullable Hook hook, Pattern tip, double lengthM, double stopM) {
        Design design = new Design(new Tube(outerM, outerM / 2), hook, tip, WandMaterial.STAINLESS);
        Candidate like = SAMPLE.shortest();
        if (like == null) {
            throw new IllegalStateException("the sample has a wand");
        }
        Bore bore = new Bore(1e-3, 5e-7, 4e3, 0, 5e5);
        return new Candidate(design, 9, lengthM, stopM, stopM, like.at(), Double.NaN, 0.0068, bore, 0.1, 0.11, true);
    }

    private static List<Candidate> many() {
        Random random = new Random(7);
        List<Candidate> all = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            double outer = 0.002 + 0.01 * random.nextDouble();
            Hook hook = i % 3 == 0 ? new Hook(0.3 + 2.8 * random.nextDouble(), 0.012 + 0.08 * random.nextDouble(), 0.1 * random.nextDouble()) : null;
            Pattern tip = i % 2 == 0 ? Pattern.ring(2 + random.nextInt(15), 0.0002 + 0.0004 * random.nextDouble()) : Pattern.forward(1 + random.nextInt(6), 0.6, 0.0005);
            double length = (hook == null ? 0.1 : 2 * hook.tubeM()) + 2.8 * random.nextDouble();
            all.add(wand(outer, hook, tip, length, length * (i % 4 == 0 ? 1 : 0.6 + 0.4 * random.nextDouble())));
        }
        return all;
    }

    @Test
    void noTextMeetsAnotherOrLeavesTheFrame() throws IOException {
        Lettering letters = Lettering.load();
        for (Candidate c : many()) {
            List<Ink> texts = new ArrayList<>();
            for (Sheet.Item item : WandDrawing.sheet(SAMPLE, c).items()) {
                if (item instanceof Sheet.Text t && !t.words().isEmpty()) {
                    texts.add(ink(t, letters));
                }
            }
            for (int i = 0; i < texts.size(); i++) {
                Ink a = texts.get(i);
                assertTrue(a.left > 10 && a.right < 410 && a.top > 10 && a.bottom < 287, a + " of " + c.design());
                for (Ink b : texts.subList(0, i)) {
                    assertTrue(!a.meets(b), a + " meets " + b + " on the drawing of " + c.design());
                }
            }
        }
    }

    private static Ink ink(Sheet.Text t, Lettering letters) throws IOException {
        double width = letters.width(t.words(), t.sizeMm());
        double shift = t.anchor() == Sheet.Anchor.START ? 0 : t.anchor() == Sheet.Anchor.END ? -width : -width / 2;
        double high = 0.72 * t.sizeMm();
        return t.upright()
                ? new Ink(t.x() - high, t.y() - width / 2, t.x(), t.y() + width / 2, t.words())
                : new Ink(t.x() + shift, t.y() - high, t.x() + shift + width, t.y(), t.words());
    }

    @Test
    void everyLineLiesOnThePaper() throws IOException {
        for (Candidate c : many()) {
            for (Sheet.Item item : WandDrawing.sheet(SAMPLE, c).items()) {
                if (item instanceof Sheet.Path p) {
                    for (int i = 0; i + 1 < p.xy().length; i += 2) {
                        assertTrue(
                                p.xy()[i] >= 10 && p.xy()[i] <= 410 && p.xy()[i + 1] >= 10 && p.xy()[i + 1] <= 287,
                                p.xy()[i] + ", " + p.xy()[i + 1] + " of " + c.design());
                    }
                }
            }
        }
    }

    @Test
    void marksStandWhereTheirNumbersSay() throws IOException {
        // a straight wand of 0.7 m at 1 : 2 is 350 mm on paper; its 50 mm marks stand 25 mm apart
        Candidate c = wand(0.006, null, Pattern.ring(6, 0.0003), 0.7, 0.7);
        List<Sheet.Item> items = WandDrawing.sheet(SAMPLE, c).items();
        double at100 = number(items, "100");
        double at600 = number(items, "600");
        assertEquals(250, at600 - at100, 1e-9);
        assertEquals(25, number(items, "150") - at100, 1e-9);
    }

    private static double number(List<Sheet.Item> items, String words) {
        return items.stream()
                .filter(i -> i instanceof Sheet.Text t && t.words().equals(words))
                .mapToDouble(i -> ((Sheet.Text) i).x())
                .findFirst()
                .orElseThrow();
    }

    @Test
    void pdfAndSvgSayTheSameAndAreTheSameTwice() throws IOException {
        Path pdf = folder.resolve("wand.pdf");
        Path again = folder.resolve("again.PDF");
        Path svg = folder.resolve("wand.svg");
        WandDrawing.write(SAMPLE, pdf);
        WandDrawing.write(SAMPLE, again);
        WandDrawing.write(SAMPLE, svg);
        assertArrayEquals(Files.readAllBytes(pdf), Files.readAllBytes(again));
        String drawn = Files.readString(svg);
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            String text = new PDFTextStripper().getText(document);
            for (String words : List.of("as agreed", "Tolerances", "STOP: the whole wand is in", "pressure-rated")) {
                assertTrue(text.contains(words), words + " not in " + text);
                assertTrue(drawn.contains(words), words);
            }
            assertEquals(420 * 72 / 25.4, document.getPage(0).getMediaBox().getWidth(), 0.01);
            BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, 50);
            assertTrue(dark(image) > 0.005 && dark(image) < 0.2, "ink on " + dark(image));
        }
    }

    private static double dark(BufferedImage image) {
        int dark = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                dark += (image.getRGB(x, y) & 0xff) < 128 ? 1 : 0;
            }
        }
        return (double) dark / (image.getWidth() * image.getHeight());
    }
}
