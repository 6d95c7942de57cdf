package baymist.viewer.fx;

import baymist.scene.TargetSpec;
import baymist.viewer.draw.FilmPlaces;
import baymist.viewer.draw.FilmUnit;
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

    LegendBox(TargetSpec target, FilmUnit unit, Theme theme) {
        getStyleClass().add("legend");
        setSpacing(4);
        FilmPlaces scale = new FilmPlaces(target);
        double em = javafx.scene.text.Font.getDefault().getSize();
        Label title = new Label("Film, " + unit.symbol());
        title.getStyleClass().add("legend-title");
        Pane column = new Pane();
        column.setPrefSize(150, HEIGHT_PX + 10);
        Rectangle bar = new Rectangle(0, 5, BAR_PX, HEIGHT_PX);
        Stop[] stops = new Stop[33];
        int[] line = FilmPlaces.line(0);
        for (int i = 0; i < stops.length; i++) {
            double share = i / (stops.length - 1.0);
            int c = line[FilmPlaces.BARE + (int) Math.round(share * (line.length - 1 - FilmPlaces.BARE))];
            stops[i] = new Stop(share, Color.rgb(c >> 16 & 255, c >> 8 & 255, c & 255));
        }
        bar.setFill(new LinearGradient(0, 1, 0, 0, true, CycleMethod.NO_CYCLE, stops));
        bar.setStroke(theme.edge());
        bar.setStrokeWidth(0.8);
        column.getChildren().add(bar);
        for (double m : unit.ticksM(scale.lowM(), scale.highM())) {
            double y = y(scale, m);
            column.getChildren().add(tick(BAR_PX, y, theme));
            Text text = new Text(BAR_PX + 9, y + 4, unit.number(m));
            text.setFill(theme.text());
            column.getChildren().add(text);
        }
        mark(column, scale, target.buildM(), "protected", theme);
        mark(column, scale, target.excessM(), "excess", theme);
        getChildren().addAll(title, column, bare(theme, unit, target));
    }

    private static double y(FilmPlaces scale, double m) {
        double share = Math.log(m / scale.lowM()) / Math.log(scale.highM() / scale.lowM());
        return 5 + HEIGHT_PX * (1 - share);
    }

    private static Line tick(double x, double y, Theme theme) {
        Line line = new Line(x, y, x + 5, y);
        line.setStroke(theme.text());
        return line;
    }

    private static void mark(Pane column, FilmPlaces scale, double m, String word, Theme theme) {
        double y = y(scale, m);
        Line line = new Line(48, y, 60, y);
        line.setStroke(theme.text());
        Text text = new Text(64, y + 4, word);
        text.setFill(theme.text());
        column.getChildren().addAll(line, text);
    }

    private static Pane bare(Theme theme, FilmUnit unit, TargetSpec target) {
        Pane row = new Pane();
        Rectangle box = new Rectangle(0, 2, BAR_PX, 14);
        box.setFill(theme.bare());
        box.setStroke(theme.outline());
        box.setStrokeWidth(1.6);
        Text text = new Text(BAR_PX + 9, 13.5, "bare, under " + unit.text(target.hazeM()));
        text.setFill(theme.text());
        row.getChildren().addAll(box, text);
        return row;
    }
}
