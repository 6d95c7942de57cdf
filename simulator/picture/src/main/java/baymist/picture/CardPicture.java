package baymist.picture;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.UncheckedIOException;

/** A small drawing in black and grey for a printed page, in mm; as SVG for a screen and as shapes for a PDF. */
public final class CardPicture {
    private final String id;
    private final Sheet sheet;

    CardPicture(String id, Sheet sheet) {
        this.id = id;
        this.sheet = sheet;
    }

    /** What a drawing is put on. */
    public interface Painter {
        /** Fills a shape given in mm; grey from 0 = black to 1 = white. */
        void fill(Shape shape, double grey);

        /** Strokes a shape given in mm; the pattern is lengths of strokes and gaps, mm, empty for a full line. */
        void stroke(Shape shape, double widthMm, double[] patternMm, double grey);
    }

    /** Name of the picture, unique on a card. */
    public String id() {
        return id;
    }

    public double widthMm() {
        return sheet.widthMm();
    }

    public double heightMm() {
        return sheet.heightMm();
    }

    /** What it shows, in words. */
    public String title() {
        return sheet.title();
    }

    /** The picture as an SVG element within a page. */
    public String svg() {
        try {
            return SheetSvg.inline(sheet, id);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Draws everything in turn; letters are outlines. */
    public void paint(Painter painter) throws IOException {
        Lettering letters = Lettering.load();
        for (Sheet.Item item : sheet.items()) {
            if (item instanceof Sheet.Path p) {
                Path2D path = new Path2D.Double();
                path.moveTo(p.xy()[0], p.xy()[1]);
                for (int i = 2; i + 1 < p.xy().length; i += 2) {
                    path.lineTo(p.xy()[i], p.xy()[i + 1]);
                }
                if (p.closed()) {
                    path.closePath();
                }
                if (p.filled()) {
                    painter.fill(path, p.grey());
                } else {
                    painter.stroke(path, p.widthMm(), p.dash().patternMm(), p.grey());
                }
            } else if (item instanceof Sheet.Text t) {
                painter.fill(outline(t, letters), 0);
            }
        }
    }

    private static Shape outline(Sheet.Text t, Lettering letters) throws IOException {
        double width = letters.width(t.words(), t.sizeMm());
        double shift = t.anchor() == Sheet.Anchor.START ? 0 : t.anchor() == Sheet.Anchor.END ? -width : -width / 2;
        Shape at = letters.outline(t.words(), shift, 0, t.sizeMm());
        AffineTransform place = AffineTransform.getTranslateInstance(t.x(), t.y());
        if (t.upright()) {
            place.rotate(-Math.PI / 2);
        }
        return place.createTransformedShape(at);
    }
}
