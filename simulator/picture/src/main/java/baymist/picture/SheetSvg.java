package baymist.picture;

import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.util.Locale;
import java.util.TreeSet;

/** Writes a sheet as SVG in true size. Letters are outlines, so that it looks the same where no font is. */
final class SheetSvg {
    /** Size that letters are kept in. */
    private static final double EM = 10;

    private SheetSvg() {}

    static void write(Sheet sheet, Writer out) throws IOException {
        Lettering letters = Lettering.load();
        out.write(String.format(
                        Locale.ROOT,
                        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>%n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" height=\"%smm\""
                                + " viewBox=\"0 0 %s %s\">%n<title>%s</title>%n<rect width=\"100%%\" height=\"100%%\" fill=\"white\"/>%n",
                        n(sheet.widthMm()),
                        n(sheet.heightMm()),
                        n(sheet.widthMm()),
                        n(sheet.heightMm()),
                        escaped(sheet.title()))
                .replace(System.lineSeparator(), "\n"));
        letters(sheet, letters, out);
        out.write("<g fill=\"none\" stroke=\"black\" stroke-linejoin=\"round\">\n");
        for (Sheet.Item item : sheet.items()) {
            if (item instanceof Sheet.Path p) {
                path(p, out);
            } else if (item instanceof Sheet.Text t) {
                text(t, letters, out);
            }
        }
        out.write("</g>\n</svg>\n");
    }

    private static void path(Sheet.Path p, Writer out) throws IOException {
        StringBuilder d = new StringBuilder();
        for (int i = 0; i + 1 < p.xy().length; i += 2) {
            d.append(i == 0 ? "M" : "L").append(n(p.xy()[i])).append(' ').append(n(p.xy()[i + 1]));
        }
        if (p.closed()) {
            d.append('Z');
        }
        if (p.filled()) {
            out.write("<path d=\"" + d + "\" fill=\"" + colour(p.grey()) + "\" stroke=\"none\"/>\n");
            return;
        }
        StringBuilder dash = new StringBuilder();
        for (double v : p.dash().patternMm()) {
            dash.append(dash.isEmpty() ? "" : " ").append(n(v));
        }
        out.write("<path d=\"" + d + "\" stroke-width=\"" + n(p.widthMm()) + "\""
                + (p.grey() > 0 ? " stroke=\"" + colour(p.grey()) + "\"" : "")
                + (dash.isEmpty() ? "" : " stroke-dasharray=\"" + dash + "\"") + "/>\n");
    }

    private static String colour(double grey) {
        int v = (int) Math.round(255 * grey);
        return v == 0 ? "black" : String.format(Locale.ROOT, "#%02x%02x%02x", v, v, v);
    }

    /** A sheet as an element within a page: letters are the page's own, so that they can be found and read aloud. */
    static String inline(Sheet sheet, String id) throws IOException {
        StringWriter out = new StringWriter();
        out.write(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" id=\"%s\" width=\"%smm\" height=\"%smm\" viewBox=\"0 0 %s %s\" role=\"img\""
                        + " aria-label=\"%s\"><g fill=\"none\" stroke=\"black\" stroke-linejoin=\"round\">",
                id,
                n(sheet.widthMm()),
                n(sheet.heightMm()),
                n(sheet.widthMm()),
                n(sheet.heightMm()),
                escaped(sheet.title())));
        for (Sheet.Item item : sheet.items()) {
            if (item instanceof Sheet.Path p) {
                path(p, out);
            } else if (item instanceof Sheet.Text t) {
                String anchor =
                        t.anchor() == Sheet.Anchor.START ? "start" : t.anchor() == Sheet.Anchor.END ? "end" : "middle";
                out.write("<text transform=\"translate(" + n(t.x()) + " " + n(t.y()) + ")"
                        + (t.upright() ? " rotate(-90)" : "") + "\" text-anchor=\"" + anchor + "\" font-size=\""
                        + n(t.sizeMm()) + "\" fill=\"black\" stroke=\"none\">" + escaped(t.words()) + "</text>\n");
            }
        }
        out.write("</g></svg>");
        return out.toString();
    }

    private static void text(Sheet.Text t, Lettering letters, Writer out) throws IOException {
        double width = letters.width(t.words(), t.sizeMm());
        double pen = t.anchor() == Sheet.Anchor.START ? 0 : t.anchor() == Sheet.Anchor.END ? -width : -width / 2;
        String place = "translate(" + n(t.x()) + " " + n(t.y()) + ")" + (t.upright() ? " rotate(-90)" : "");
        out.write("<g role=\"img\" aria-label=\"" + escaped(t.words()) + "\" transform=\"" + place + " scale("
                + n(t.sizeMm() / EM) + ")\" fill=\"black\" stroke=\"none\">");
        for (int c : t.words().codePoints().toArray()) {
            String letter = Character.toString(c);
            if (c != ' ') {
                out.write("<use href=\"#c" + c + "\" x=\"" + n(pen * EM / t.sizeMm()) + "\"/>");
            }
            pen += letters.width(letter, t.sizeMm());
        }
        out.write("</g>\n");
    }

    /** Each letter that the sheet uses, once. */
    private static void letters(Sheet sheet, Lettering letters, Writer out) throws IOException {
        TreeSet<Integer> used = new TreeSet<>();
        for (Sheet.Item item : sheet.items()) {
            if (item instanceof Sheet.Text t) {
                t.words().codePoints().filter(c -> c != ' ').forEach(used::add);
            }
        }
        out.write("<defs>\n");
        for (int c : used) {
            String d = data(letters.outline(Character.toString(c), 0, 0, EM));
            out.write("<path id=\"c" + c + "\" d=\"" + d + "\"/>\n");
        }
        out.write("</defs>\n");
    }

    private static String data(Shape shape) {
        StringBuilder d = new StringBuilder();
        double[] c = new double[6];
        for (PathIterator it = shape.getPathIterator(null); !it.isDone(); it.next()) {
            int kind = it.currentSegment(c);
            int points = kind == PathIterator.SEG_CLOSE
                    ? 0
                    : kind == PathIterator.SEG_QUADTO ? 2 : kind == PathIterator.SEG_CUBICTO ? 3 : 1;
            d.append("MLQCZ".charAt(kind));
            for (int i = 0; i < 2 * points; i++) {
                d.append(i == 0 ? "" : " ").append(n(c[i]));
            }
        }
        return d.toString();
    }

    /** At most three decimals: a thousandth of a millimetre. */
    private static String n(double v) {
        String text = String.format(Locale.ROOT, "%.3f", v);
        text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
        return text.equals("-0") ? "0" : text;
    }

    private static String escaped(String s) {
        return s.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
    }
}
