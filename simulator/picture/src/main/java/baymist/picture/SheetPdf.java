package baymist.picture;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.util.Matrix;

/** Writes a sheet as a one-page PDF in true size, its font embedded. */
final class SheetPdf {
    private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
    private static final double POINT = 72 / 25.4;

    private SheetPdf() {}

    static void write(Sheet sheet, OutputStream out) throws IOException {
        try (PDDocument document = new PDDocument();
                InputStream file = PDDocument.class.getResourceAsStream(FONT)) {
            if (file == null) {
                throw new IOException("the font " + FONT + " is missing from the program");
            }
            PDDocumentInformation about = new PDDocumentInformation();
            about.setTitle(sheet.title());
            document.setDocumentInformation(about);
            // the same sheet gives the same bytes: no clock in the identity of the file
            document.setDocumentId(1L);
            PDPage page =
                    new PDPage(new PDRectangle((float) (POINT * sheet.widthMm()), (float) (POINT * sheet.heightMm())));
            document.addPage(page);
            PDType0Font font = PDType0Font.load(document, file, true);
            try (PDPageContentStream stream = new PDPageContentStream(document, page)) {
                stream.setLineJoinStyle(1);
                for (Sheet.Item item : sheet.items()) {
                    if (item instanceof Sheet.Path p) {
                        path(sheet, p, stream);
                    } else if (item instanceof Sheet.Text t) {
                        text(sheet, t, font, stream);
                    }
                }
            }
            document.save(out);
        }
    }

    private static float x(double mm) {
        return (float) (POINT * mm);
    }

    private static float y(Sheet sheet, double mm) {
        return (float) (POINT * (sheet.heightMm() - mm));
    }

    private static void path(Sheet sheet, Sheet.Path p, PDPageContentStream stream) throws IOException {
        stream.moveTo(x(p.xy()[0]), y(sheet, p.xy()[1]));
        for (int i = 2; i + 1 < p.xy().length; i += 2) {
            stream.lineTo(x(p.xy()[i]), y(sheet, p.xy()[i + 1]));
        }
        if (p.filled()) {
            stream.setNonStrokingColor((float) p.grey());
            stream.fill();
            stream.setNonStrokingColor(0f);
            return;
        }
        double[] mm = p.dash().patternMm();
        float[] pattern = new float[mm.length];
        for (int i = 0; i < mm.length; i++) {
            pattern[i] = x(mm[i]);
        }
        stream.setLineDashPattern(pattern, 0);
        stream.setStrokingColor((float) p.grey());
        stream.setLineWidth(x(p.widthMm()));
        if (p.closed()) {
            stream.closeAndStroke();
        } else {
            stream.stroke();
        }
    }

    private static void text(Sheet sheet, Sheet.Text t, PDType0Font font, PDPageContentStream stream)
            throws IOException {
        double width = font.getStringWidth(t.words()) / 1000 * t.sizeMm();
        double shift = t.anchor() == Sheet.Anchor.START ? 0 : t.anchor() == Sheet.Anchor.END ? -width : -width / 2;
        stream.beginText();
        stream.setFont(font, (float) (POINT * t.sizeMm()));
        if (t.upright()) {
            stream.setTextMatrix(Matrix.getRotateInstance(Math.PI / 2, x(t.x()), y(sheet, t.y() - shift)));
        } else {
            stream.setTextMatrix(Matrix.getTranslateInstance(x(t.x() + shift), y(sheet, t.y())));
        }
        stream.showText(t.words());
        stream.endText();
    }
}
