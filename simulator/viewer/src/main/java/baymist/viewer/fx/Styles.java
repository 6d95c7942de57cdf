package baymist.viewer.fx;

import java.util.List;
import java.util.Objects;
import javafx.scene.Parent;

/** Style sheets of the window. */
final class Styles {
    private Styles() {}

    static void dress(Parent root, boolean dark, double scale) {
        root.getStylesheets().setAll(List.of(sheet(dark ? "dark.css" : "light.css"), sheet("shape.css")));
        root.setStyle(String.format(java.util.Locale.ROOT, "-fx-font-size: %.2fpx;", 13 * scale));
    }

    private static String sheet(String name) {
        return Objects.requireNonNull(Styles.class.getResource(name), name).toExternalForm();
    }
}
