package baymist.viewer.fx;

import baymist.report.AtomicFile;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import javafx.scene.image.Image;
import javafx.scene.image.PixelFormat;
import javax.imageio.ImageIO;

/** A picture as numbers, away from JavaFX: 0xRRGGBB, line by line from the top. */
public record Pixels(int width, int height, int[] rgb) {
    static Pixels of(Image image) {
        int w = (int) image.getWidth();
        int h = (int) image.getHeight();
        int[] argb = new int[w * h];
        image.getPixelReader().getPixels(0, 0, w, h, PixelFormat.getIntArgbInstance(), argb, 0, w);
        for (int i = 0; i < argb.length; i++) {
            argb[i] &= 0xFFFFFF;
        }
        return new Pixels(w, h, argb);
    }

    /** Writes a PNG file, whole or not at all. */
    public void write(Path file) throws IOException {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        image.setRGB(0, 0, width, height, rgb, 0, width);
        AtomicFile.writeBytes(file, out -> {
            if (!ImageIO.write(image, "png", out)) {
                throw new IOException("no writer for PNG");
            }
        });
    }
}
