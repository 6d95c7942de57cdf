package baymist.viewer.fx;

import javafx.scene.paint.Color;
import javafx.scene.paint.PhongMaterial;

/** Colours of things in the picture; light is even, so a thing shows the colour it is given. */
final class Materials {
    private Materials() {}

    /** One colour; what it lets through is its opacity. */
    static PhongMaterial plain(Color c) {
        double a = c.getOpacity();
        // blending takes the colour as already weighed by its opacity
        return new PhongMaterial(Color.color(a * c.getRed(), a * c.getGreen(), a * c.getBlue(), a));
    }
}
