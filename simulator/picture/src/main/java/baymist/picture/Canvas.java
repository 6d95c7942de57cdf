package baymist.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import javax.imageio.ImageIO;

/** A white page to draw shapes and letters on; pixels, y down. */
final class Canvas {
    static final Color INK = new Color(0x1C1F24);
    static final Color QUIET = new Color(0x5B626C);
    static final Color LINE = new Color(0xB8BEC6);
    /** Bare metal: hatch, outline and numbers. A red-orange that no film colour comes near. */
    static final Color BARE = new Color(0xC03A14);
    /** The path of the tip. */
    static final Color WAND = new Color(0x8E2A86);

    private final BufferedImage image;
    private final Graphics2D g;
    private final Lettering lettering;

    Canvas(int width, int height, Lettering lettering) {
        this.image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        this.lettering = lettering;
        this.g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, width, height);
    }

    Graphics2D graphics() {
        return g;
    }

    Lettering lettering() {
        return lettering;
    }

    BufferedImage image() {
        return image;
    }

    /** Where a text stands against its x. */
    enum Align {
        LEFT,
        CENTRE,
        RIGHT
    }

    /** Letters with their baseline at y. */
    void text(String words, double x, double y, double size, Color colour, Align align) throws IOException {
        double width = lettering.width(words, size);
        double left = align == Align.LEFT ? x : align == Align.RIGHT ? x - width : x - width / 2;
        g.setColor(colour);
        g.fill(lettering.outline(words, left, y, size));
    }

    void fill(Shape shape, Color colour) {
        g.setColor(colour);
        g.fill(shape);
    }

    void stroke(Shape shape, Color colour, double width, float... dash) {
        g.setColor(colour);
        float[] pattern = dash.length == 0 ? null : dash;
        g.setStroke(new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, pattern, 0));
        g.draw(shape);
    }

    void writePng(OutputStream out) throws IOException {
        if (!ImageIO.write(image, "png", out)) {
            throw new IOException("this Java can't write PNG");
        }
    }
}
