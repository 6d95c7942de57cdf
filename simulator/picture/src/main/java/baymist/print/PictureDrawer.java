package baymist.print;

import baymist.picture.CardPicture;
import com.openhtmltopdf.css.parser.FSRGBColor;
import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;

/** Draws the pictures of a page where their SVG elements stand: the same shapes, without a detour over a font system. */
final class PictureDrawer implements SVGDrawer {
    private static final double PIXELS_PER_MM = 96 / 25.4;

    private final Map<String, CardPicture> pictures;

    PictureDrawer(Map<String, CardPicture> pictures) {
        this.pictures = pictures;
    }

    @Override
    public void importFontFaceRules(List<FontFaceRule> rules, SharedContext context) {}

    @Override
    public void addFontFile(File file, String family, Integer weight, BaseRendererBuilder.@Nullable FontStyle style) {}

    @Override
    public SVGImage buildSVGImage(
            Element svg, Box box, CssContext context, double width, double height, double dotsPerPixel) {
        CardPicture picture = pictures.get(svg.getAttribute("id"));
        if (picture == null) {
            throw new IllegalArgumentException(
                    "the page has a picture `" + svg.getAttribute("id") + "` that nobody drew");
        }
        return new Placed(picture, dotsPerPixel * PIXELS_PER_MM);
    }

    @Override
    public void close() {}

    /** A picture to scale. */
    private record Placed(CardPicture picture, double dotsPerMm) implements SVGImage {
        @Override
        public int getIntrinsicWidth() {
            return (int) Math.round(picture.widthMm() * dotsPerMm);
        }

        @Override
        public int getIntrinsicHeight() {
            return (int) Math.round(picture.heightMm() * dotsPerMm);
        }

        @Override
        public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
            AffineTransform place = new AffineTransform(dotsPerMm, 0, 0, dotsPerMm, x, y);
            try {
                picture.paint(new CardPicture.Painter() {
                    @Override
                    public void fill(Shape shape, double grey) {
                        device.setColor(colour(grey));
                        device.fill(place.createTransformedShape(shape));
                    }

                    @Override
                    public void stroke(Shape shape, double widthMm, double[] patternMm, double grey) {
                        device.setColor(colour(grey));
                        device.setStroke(pen(widthMm, patternMm));
                        device.draw(place.createTransformedShape(shape));
                    }
                });
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        private BasicStroke pen(double widthMm, double[] patternMm) {
            float[] dash = patternMm.length == 0 ? null : new float[patternMm.length];
            for (int i = 0; i < patternMm.length && dash != null; i++) {
                dash[i] = (float) (patternMm[i] * dotsPerMm);
            }
            return new BasicStroke(
                    (float) (widthMm * dotsPerMm), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dash, 0);
        }

        private static FSRGBColor colour(double grey) {
            int v = (int) Math.round(255 * grey);
            return new FSRGBColor(v, v, v);
        }
    }
}
