package baymist.viewer.fx;

import baymist.viewer.draw.DifferencePlaces;
import baymist.viewer.model.FilmUnit;
import javafx.scene.control.Label;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import javafx.scene.paint.CycleMethod;
import javafx.scene.paint.LinearGradient;
import javafx.scene.paint.Stop;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;

/** What the colours of a difference mean. */
final class DifferenceLegend extends VBox {
    private static final double HEIGHT_PX = 130;

    /** @param size of the lettering, 1 = plain */
    DifferenceLegend(DifferencePlaces places, FilmUnit unit, Theme theme, double size) {
        super(4);
        getStyleClass().add("legend");
        Label title = new Label("Film gained or lost");
        title.getStyleClass().add("legend-title");
        double height = HEIGHT_PX * size;
        Rectangle bar = new Rectangle(0, 6, 16 * size, height);
        Stop[] stops = new Stop[17];
        for (int i = 0; i < stops.length; i++) {
            double share = i / (stops.length - 1.0);
            int c = DifferencePlaces.colour(share);
            stops[i] = new Stop(share, Color.rgb(c >> 16 & 255, c >> 8 & 255, c & 255));
        }
        bar.setFill(new LinearGradient(0, 1, 0, 0, true, CycleMethod.NO_CYCLE, stops));
        Pane column = new Pane(bar);
        String most = unit.text(places.largestM());
        column.getChildren()
                .addAll(
                        text("+" + most + " gained", 6, size, theme),
                        text("no change", 6 + height / 2, size, theme),
                        text("-" + most + " lost", 6 + height, size, theme));
        column.setPrefSize(150 * size, height + 12);
        getChildren().addAll(title, column);
    }

    private static Text text(String words, double y, double size, Theme theme) {
        Text text = new Text(25 * size, y + 4 * size, words);
        text.setFill(theme.text());
        return text;
    }
}
