package baymist.viewer.fx;

import baymist.scene.TargetSpec;
import baymist.viewer.draw.FilmPlaces;
import baymist.viewer.draw.RoundNumbers;
import baymist.viewer.model.FilmUnit;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.shape.Rectangle;

/** What the colours of film mean, with the job's limits marked above the scale; lies below the picture, so it never covers anything. */
final class LegendBox extends LegendStrip {
    /** @param size of the lettering, 1 = plain */
    LegendBox(TargetSpec target, FilmUnit unit, Theme theme, double size) {
        super("Film, " + unit.symbol(), theme, size);
        FilmPlaces scale = new FilmPlaces(target);
        int[] line = FilmPlaces.line(0);
        colours(share -> line[FilmPlaces.BARE + (int) Math.round(share * (line.length - 1 - FilmPlaces.BARE))]);
        for (double value : RoundNumbers.between(unit.of(scale.lowM()), unit.of(scale.highM()))) {
            below(place(scale, unit.toM(value)), RoundNumbers.plain(value));
        }
        above(place(scale, target.buildM()), "protected");
        above(place(scale, target.excessM()), "excess");
        Rectangle box = new Rectangle(0, 0, 14 * size, 12 * size);
        box.setFill(theme.bare());
        box.setStroke(theme.outline());
        box.setStrokeWidth(1.6);
        beside(new Pane(box), "bare, under " + RoundNumbers.plain(unit.of(target.hazeM())) + " " + unit.symbol());
    }

    private static double place(FilmPlaces scale, double filmM) {
        return Math.log(filmM / scale.lowM()) / Math.log(scale.highM() / scale.lowM());
    }

    static Color colour(int rgb) {
        return Color.rgb(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255);
    }
}
