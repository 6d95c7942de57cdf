package baymist.print;

import baymist.card.CardSource;
import baymist.card.WorkCard;
import baymist.picture.CardPicture;
import baymist.picture.CardPictures;
import com.github.mustachejava.DefaultMustacheFactory;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;

/** A work card as a page: XHTML that is the HTML file and that the PDF is laid out from. */
public final class CardPage {
    private static final String TEMPLATE = "baymist/print/card.mustache";
    private static final String FONTS = "/net/sf/jasperreports/fonts/dejavu/DejaVuSansCondensed";
    private static final String FAMILY = "Card";

    private final String title;
    private final String html;
    private final Map<String, CardPicture> pictures = new LinkedHashMap<>();

    /** Lays out the words and draws the pictures of a card. */
    public CardPage(WorkCard card, CardSource source, CardUnits units, Paper paper) {
        CardPictures draw = new CardPictures(source);
        List<CardPicture> all = new ArrayList<>(List.of(draw.overview(card), draw.points(card)));
        for (int i = 0; i < card.items().size(); i++) {
            all.add(draw.item(card.items().get(i), i + 1));
        }
        for (WorkCard.Step step : card.steps()) {
            all.add(draw.pass(step));
            all.add(draw.dial(step));
            all.add(draw.rod(step, units::length));
        }
        all.forEach(p -> pictures.put(p.id(), p));
        title = card.origin().title();
        html = filled(new CardWords(card, units, pictures).page(paper));
    }

    private static String filled(Map<String, Object> words) {
        StringWriter out = new StringWriter();
        try (Writer w = new DefaultMustacheFactory().compile(TEMPLATE).execute(out, words)) {
            w.flush();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    /** The page, complete in itself. */
    public String html() {
        return html;
    }

    /** Writes the page as a PDF, its letters embedded; the same card gives the same bytes. */
    public void writePdf(OutputStream out) throws IOException {
        // the library tells of every font and style sheet on standard error; what is wrong it throws
        XRLog.setLoggingEnabled(false);
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useFont(() -> font(".ttf"), FAMILY, 400, FontStyle.NORMAL, true);
        builder.useFont(() -> font("-Bold.ttf"), FAMILY, 700, FontStyle.NORMAL, true);
        builder.useSVGDrawer(new PictureDrawer(pictures));
        builder.withProducer("Baymist");
        builder.withHtmlContent(html, null);
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.layout();
            renderer.createPDFWithoutClosing();
            PDDocument document = renderer.getPdfDocument();
            document.getDocumentInformation().setTitle(title);
            document.getDocumentInformation().setCreationDate(null);
            document.setDocumentId(1L);
            document.save(out);
        }
    }

    private static InputStream font(String style) {
        InputStream in = PdfRendererBuilder.class.getResourceAsStream(FONTS + style);
        if (in == null) {
            throw new IllegalStateException("the letters " + FONTS + style + " are missing from the program");
        }
        return in;
    }
}
