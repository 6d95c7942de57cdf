package baymist.viewer.fx;

import baymist.scene.TargetSpec;
import baymist.viewer.draw.FilmPlaces;
import baymist.viewer.draw.RoundNumbers;
import baymist.viewer.model.FilmUnit;
import javafx.scene.control.Label;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import javafx.scene.paint.CycleMethod;
import javafx.scene.paint.LinearGradient;
import javafx.scene.paint.Stop;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;

/** What the colours of film mean, with the job's limits marked beside the scale. */
final class LegendBox extends VBox {
    private static final double HEIGHT_PX = 170;
    private static final double BAR_PX = 16;

    private final Theme theme;
    private final FilmPlaces scale;
    /** Length and width of the bar, pixels. */
    private final double height;

    private final double bar;
    private final double size;

    /** @param size of the lettering, 1 = plain */
    LegendBox(TargetSpec target, FilmUnit unit, Theme theme, double size) {
        this.theme = theme;
        this.size = size;
        height = HEIGHT_PX * size;
        bar = BAR_PX * size;
        scale = new FilmPlaces(target);
        getStyleClass().add("legend");
        setSpacing(4);
        Label title = new Label("Film, " + unit.symbol());
        title.getStyleClass().add("legend-title");
        Pane column = new Pane();
        column.setPrefSize(150 * size, height + 10);
        column.getChildren().add(colours());
        for (double value : RoundNumbers.between(unit.of(scale.lowM()), unit.of(scale.highM()))) {
            double y = y(unit.toM(value));
            column.getChildren().addAll(line(bar, y, bar + 5), text(bar + 9, y, RoundNumbers.plain(value)));
        }
        mark(column, target.buildM(), "protected");
        mark(column, target.excessM(), "excess");
        getChildren().addAll(title, column, bare(unit, target));
    }

    private Rectangle colours() {
        Rectangle box = new Rectangle(0, 5, bar, height);
        Stop[] stops = new Stop[33];
        int[] line = FilmPlaces.line(0);
        for (int i = 0; i < stops.length; i++) {
            double share = i / (stops.length - 1.0);
            int c = line[FilmPlaces.BARE + (int) Math.round(share * (line.length - 1 - FilmPlaces.BARE))];
            stops[i] = new Stop(share, Color.rgb(c >> 16 & 255, c >> 8 & 255, c & 255));
        }
        box.setFill(new LinearGradient(0, 1, 0, 0, true, CycleMethod.NO_CYCLE, stops));
        box.setStroke(theme.edge());
        box.setStrokeWidth(0.8);
        return box;
    }

    private double y(double filmM) {
        double share = Math.log(filmM / scale.lowM()) / Math.log(scale.highM() / scale.lowM());
        return 5 + height * (1 - share);
    }

    private Line line(double x, double y, double toX) {
        Line line = new Line(x, y, toX, y);
        line.setStroke(theme.text());
        return line;
    }

    private Text text(double x, double y, String words) {
        Text text = new Text(x, y + 4 * size, words);
        text.setFill(theme.text());
        return text;
    }

    private void mark(Pane column, double filmM, String word) {
        double y = y(filmM);
        column.getChildren().addAll(line(52 * size, y, 62 * size), text(66 * size, y, word));
    }

    private Pane bare(FilmUnit unit, TargetSpec target) {
        Rectangle box = new Rectangle(0, 2, bar, 14 * size);
        box.setFill(theme.bare());
        box.setStroke(theme.outline());
        box.setStrokeWidth(1.6);
        String words = "bare, under " + RoundNumbers.plain(unit.of(target.hazeM())) + " " + unit.symbol();
        return new Pane(box, text(bar + 9, 9.5 * size, words));
    }
}
