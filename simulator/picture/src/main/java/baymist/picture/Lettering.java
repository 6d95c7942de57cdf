package baymist.picture;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** Text as filled outlines from the Liberation Sans file that the PDF library carries. Needs no font on the machine. */
final class Lettering {
    private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    private final TrueTypeFont font;
    private final CmapLookup glyphs;
    private final double unitsPerEm;
    private final Map<Integer, GeneralPath> outlines = new HashMap<>();

    private Lettering(TrueTypeFont font) throws IOException {
        this.font = font;
        this.glyphs = font.getUnicodeCmapLookup();
        this.unitsPerEm = font.getUnitsPerEm();
    }

    static Lettering load() throws IOException {
        try (InputStream in = TTFParser.class.getResourceAsStream(FONT)) {
            if (in == null) {
                throw new IOException("the letter outlines " + FONT + " are missing from the program");
            }
            return new Lettering(new TTFParser().parse(new RandomAccessReadBuffer(in)));
        }
    }

    /** Width of a text of this size (height of an em, pixels), pixels. */
    double width(String text, double size) throws IOException {
        double units = 0;
        for (int c : text.codePoints().toArray()) {
            units += font.getAdvanceWidth(glyphs.getGlyphId(c));
        }
        return units * size / unitsPerEm;
    }

    /** Outline of a text whose baseline starts at (x, y), y down. */
    Shape outline(String text, double x, double y, double size) throws IOException {
        Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
        double k = size / unitsPerEm;
        double pen = x;
        for (int c : text.codePoints().toArray()) {
            int glyph = glyphs.getGlyphId(c);
            path.append(glyphPath(glyph).getPathIterator(new AffineTransform(k, 0, 0, -k, pen, y)), false);
            pen += font.getAdvanceWidth(glyph) * k;
        }
        return path;
    }

    /** Splits a text at blanks into rows no wider than {@code room} pixels (a single longer word stands alone). */
    List<String> wrap(String text, double size, double room) throws IOException {
        List<String> rows = new ArrayList<>();
        String row = "";
        for (String word : text.split(" ", -1)) {
            String longer = row.isEmpty() ? word : row + " " + word;
            if (!row.isEmpty() && width(longer, size) > room) {
                rows.add(row);
                row = word;
            } else {
                row = longer;
            }
        }
        rows.add(row);
        return rows;
    }

    private GeneralPath glyphPath(int glyph) throws IOException {
        GeneralPath known = outlines.get(glyph);
        if (known == null) {
            GlyphData data = font.getGlyph().getGlyph(glyph);
            known = data == null ? new GeneralPath() : data.getPath();
            outlines.put(glyph, known);
        }
        return known;
    }
}
