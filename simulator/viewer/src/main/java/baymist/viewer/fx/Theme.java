package baymist.viewer.fx;

import javafx.scene.paint.Color;

/**
 * Colours that depend on a light or a dark ground. Own choices; things told apart by colour differ in lightness too, so that they stay
 * apart for colour-blind eyes.
 *
 * @param ground behind the structure
 * @param sheet see-through sheet
 * @param edge lines of the structure
 * @param bare structure without film
 * @param outline round what is unreached
 * @param seam lines where parts meet
 * @param wand body of the wand
 * @param fog droplets in the air
 * @param jet jets
 * @param lit what is pointed out
 * @param text lettering
 */
record Theme(
        boolean dark,
        Color ground,
        Color sheet,
        Color edge,
        Color bare,
        Color outline,
        Color seam,
        Color wand,
        Color fog,
        Color jet,
        Color lit,
        Color text) {
    static final Theme LIGHT = new Theme(
            false,
            Color.web("#f4f3ef"),
            Color.web("#5f6f86", 0.07),
            Color.web("#6c7077"),
            Color.web("#aeaba6"),
            Color.web("#b3400e"),
            Color.web("#5b4a8a"),
            Color.web("#22262c"),
            Color.web("#ffffff"),
            Color.web("#ffffff"),
            Color.web("#c88a00"),
            Color.web("#1d2126"));
    static final Theme DARK = new Theme(
            true,
            Color.web("#1b1e23"),
            Color.web("#9db0c8", 0.07),
            Color.web("#717a86"),
            Color.web("#4b4e54"),
            Color.web("#ff8a4c"),
            Color.web("#b9a5ee"),
            Color.web("#e9e6df"),
            Color.web("#f2f6fa"),
            Color.web("#dcecfb"),
            Color.web("#ffce57"),
            Color.web("#eceae4"));

    static Theme of(boolean dark) {
        return dark ? DARK : LIGHT;
    }
}
