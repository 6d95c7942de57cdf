package baymist.print;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.card.CardSource;
import java.awt.geom.Rectangle2D;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.xml.sax.InputSource;

/** The printed card, read back from the PDF by another library than the one that laid it out. */
class CardPageTest {
    private static final String SCENE = """
            baymist: 1
            title: Box with a clutch & a tape, two passes
            cavity:
              family: block
              name: test box
              size: [640 mm, 240 mm, 200 mm]
              ports:
                - {name: low port, part: forward wall, shape: {circle: 20 mm}, at: [0, 60 mm, 50 mm]}
                - {name: high port, part: forward wall, shape: {circle: 20 mm}, at: [0, 120 mm, 150 mm]}
                - {name: vent, part: aft wall, shape: {circle: 30 mm}, at: [640 mm, 120 mm, 100 mm], state: {pass: open, hang: taped, after: closed}}
                - {name: drain, part: floor, shape: {circle: 8 mm}, at: [20 mm, 200 mm, 0]}
            protected:
              - {name: servo clutch, mask: bag, limit: 0 um, box: {at: [500 mm, 180 mm, 60 mm], size: [60 mm, 60 mm, 60 mm]}}
            entries: [{name: low, opening: low port}, {name: high, opening: high port}]
            wands:
              - {name: fan, length: 700 mm, outer_diameter: 6 mm, bore: 2 mm,
                 tip: {one_sided: {jets: 4, arc: 120 deg, orifice: 0.4 mm}}}
            product: {name: oil, density: 870 kg/m3, viscosity: 40 cSt, surface_tension: 0.03 N/m}
            supply: {pressure: 60 psi, liquid: 30 mL/min, droplets: {log_normal: {dv50: 40 um, deviation: 1.5}}}
            passes:
              - {name: upper line, entry: high, wand: fan, from: 600 mm, to: 40 mm, draw_back: 100 mm/s, clock: 30 deg}
              - {name: lower line, entry: low, wand: fan, from: 600 mm, to: 40 mm, draw_back: 100 mm/s, clock: 180 deg, hang: 5 s}
            hang: 20 s
            voxel: 20 mm
            air: projected
            card: {interval: 24 months, cup: 2 mL}
            """;

    /** What stands on a card, in order. */
    private static final List<String> ORDER = List.of(
            "Work card",
            "1 Cautions: read first",
            "Ventilation and breathing",
            "Ignition and bonding",
            "Oxygen systems",
            "Confined space",
            "2 Items to mask",
            "servo clutch",
            "3 Tools and wands",
            "4 Product",
            "5 Supply and time",
            "6 Panels to open",
            "vent (C): cover off",
            "Drains found clear before",
            "counted in",
            "7 Passes",
            "lower line",
            "upper line",
            "8 Hang time",
            "At once",
            "vent (C): tape on",
            "20 s",
            "9 Inspection",
            "before anything is closed",
            "slick, even sheen and no bare metal",
            "10 Close-up",
            "Drains found clear after",
            "counted out",
            "Wipe",
            "vent (C): tape off, then cover on",
            "11 Balance check",
            "12 Sign-off",
            "Next due",
            "24 months after the date of work",
            "13 Where this card comes from");

    @TempDir
    static Path folder;

    private static Path scene;
    private static CardSource source;

    @BeforeAll
    static void run() throws IOException {
        scene = folder.resolve("box.yaml");
        Files.writeString(scene, SCENE);
        source = CardJobs.source(scene);
    }

    private static byte[] pdf(Paper paper) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        CardJobs.page(source, scene, paper).writePdf(out);
        return out.toByteArray();
    }

    private static void assertInOrder(String text) {
        String flat = text.replace('\u00a0', ' ').replaceAll("\\s+", " ");
        int at = 0;
        for (String wanted : ORDER) {
            int next = flat.indexOf(wanted, at);
            assertTrue(next >= 0, "after " + flat.substring(Math.max(0, at - 60), at) + " there is no: " + wanted);
            at = next;
        }
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void everySectionStandsInOrderOnBothPapers(Paper paper) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(paper))) {
            assertInOrder(new PDFTextStripper().getText(document));
            PDRectangle box = document.getPage(0).getMediaBox();
            // ISO 216: A4 is 210 mm x 297 mm; ANSI/ASME Y14.1: letter is 8.5 in x 11 in
            assertEquals(paper.widthMm(), box.getWidth() / 72 * 25.4, 0.2);
            assertEquals(paper.heightMm(), box.getHeight() / 72 * 25.4, 0.2);
        }
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void noLetterLiesOffThePageOrOnAnother(Paper paper) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(paper))) {
            Letters letters = new Letters();
            letters.getText(document);
            assertTrue(letters.byPage.size() >= 3);
            // what office printers can reach: 6.4 mm (a quarter of an inch, common practice, no source)
            double margin = 6.4 / 25.4 * 72;
            PDRectangle page = document.getPage(0).getMediaBox();
            Rectangle2D inside =
                    new Rectangle2D.Double(margin, margin, page.getWidth() - 2 * margin, page.getHeight() - 2 * margin);
            for (List<Letter> list : letters.byPage.values()) {
                for (Letter a : list) {
                    assertTrue(inside.contains(a.box), "off the page: " + a);
                }
                assertApart(list);
            }
        }
    }

    private static void assertApart(List<Letter> letters) {
        List<Letter> list = new ArrayList<>(letters);
        list.sort(java.util.Comparator.comparingDouble(l -> l.box.getMinY()));
        for (int i = 0; i < list.size(); i++) {
            Rectangle2D a = list.get(i).box;
            for (int j = i + 1; j < list.size() && list.get(j).box.getMinY() < a.getMaxY(); j++) {
                Rectangle2D b = list.get(j).box;
                if (!a.intersects(b)) {
                    continue;
                }
                Rectangle2D both = a.createIntersection(b);
                boolean over = both.getWidth() > 0.4 * Math.min(a.getWidth(), b.getWidth())
                        && both.getHeight() > 0.3 * Math.min(a.getHeight(), b.getHeight());
                assertFalse(over, list.get(i) + " lies on " + list.get(j));
            }
        }
    }

    private record Letter(String text, Rectangle2D box) {}

    /** Collects the letters of each page. */
    private static final class Letters extends PDFTextStripper {
        private final Map<Integer, List<Letter>> byPage = new TreeMap<>();

        @Override
        protected void writeString(String text, List<TextPosition> positions) {
            for (TextPosition p : positions) {
                if (!p.getUnicode().isBlank()) {
                    double h = p.getHeightDir();
                    Rectangle2D box = new Rectangle2D.Double(p.getXDirAdj(), p.getYDirAdj() - h, p.getWidthDirAdj(), h);
                    byPage.computeIfAbsent(getCurrentPageNo(), k -> new ArrayList<>())
                            .add(new Letter(p.getUnicode(), box));
                }
            }
        }
    }

    @Test
    void passesStandLowBeforeHighAndTheCardSaysThatTheSceneHadThemOtherwise() throws IOException {
        String html = plain();
        assertTrue(html.indexOf("lower line") < html.indexOf("upper line"));
        assertTrue(html.contains("had another order"));
        // 100 mm/s is five seconds for half a metre
        assertTrue(html.contains("5.0 s for each half metre"), "no draw-back rate");
        assertTrue(html.contains("pin at 6 o&#39;clock (180°)"), "no clock angle");
        assertTrue(html.contains("pin at 1 o&#39;clock (30°)"), "no clock angle");
    }

    @Test
    void unitsAreThoseOfTheSceneWithTheOthersBeside() throws IOException {
        String html = plain();
        assertTrue(html.contains("600 mm (23.6 in)"));
        assertTrue(html.contains("60 psi (414 kPa)"));
        assertTrue(html.contains("µm"));
        assertTrue(html.contains("20 °C (68 °F)"));
    }

    /** The page with plain blanks where a figure is kept with its unit. */
    private static String plain() throws IOException {
        return CardJobs.page(source, scene, Paper.A4).html().replace('\u00a0', ' ');
    }

    @Test
    void theCupIsFilledBeforeItRunsDry() throws IOException {
        // 30 mL/min for 560 mm at 100 mm/s is 2.8 mL a pass; the cup holds 2 mL, which is 4 s of trigger
        assertEquals(2, plain().split("every 4 s trigger off, fill up", -1).length - 1);
    }

    @Test
    void unitsAreThoseOfValuesAndNotOfNames() {
        String metric = "title: 8 ft wand, 4 ft box\npasses: [{wand: ring 5/16 in x 8 ft, from: 1.5 m, to: 50 mm}]\n";
        assertFalse(CardUnits.of(metric).inches());
        assertTrue(CardUnits.of(metric.replace("1.5 m", "59 in").replace("50 mm", "2 in"))
                .inches());
    }

    @Test
    void aFigureStaysWithItsUnit() {
        assertEquals(
                "tape at 40\u00a0mm, then 5.0\u00a0s for half; 2 masks",
                Unbroken.words("tape at 40 mm, then 5.0 s for half; 2 masks"));
    }

    @Test
    void thePageIsSoundXmlAndNeedsNoOtherFile() throws Exception {
        String html = CardJobs.page(source, scene, Paper.A4).html();
        var factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        var document = factory.newDocumentBuilder()
                .parse(new InputSource(new java.io.StringReader(html.replace("<!DOCTYPE html>", ""))));
        for (String tag : List.of("img", "script", "link", "iframe", "object")) {
            assertEquals(0, document.getElementsByTagName(tag).getLength(), tag);
        }
        String rest = html.replace("http://www.w3.org/1999/xhtml", "").replace("http://www.w3.org/2000/svg", "");
        assertFalse(rest.contains("http:") || rest.contains("https:") || rest.contains("url("));
        // overview, points, item, and three of each pass
        assertEquals(3 + 3 * 2, document.getElementsByTagName("svg").getLength());
        assertTrue(html.contains("a clutch &amp; a tape"));
    }

    @Test
    void theSameCardGivesTheSameBytes() throws IOException {
        assertArrayEquals(pdf(Paper.A4), pdf(Paper.A4));
    }

    @Test
    void lettersAreEmbedded() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(Paper.A4))) {
            for (var page : document.getPages()) {
                for (var name : page.getResources().getFontNames()) {
                    assertTrue(page.getResources().getFont(name).isEmbedded(), name.toString());
                }
            }
        }
    }
}
