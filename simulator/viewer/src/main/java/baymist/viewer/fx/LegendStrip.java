package baymist.viewer.fx;

import java.util.function.DoubleToIntFunction;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.paint.CycleMethod;
import javafx.scene.paint.LinearGradient;
import javafx.scene.paint.Stop;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;

/** A scale of colours in a strip: title, bar with words above it and numbers below it, and a key beside it. */
abstract class LegendStrip extends HBox {
    private static final double LENGTH_PX = 230;
    private static final double BAR_PX = 12;
    private static final double TOP_PX = 16;
    private static final double SIDE_PX = 12;

    private final Theme theme;
    private final double size;
    private final Pane column = new Pane();

    LegendStrip(String name, Theme theme, double size) {
        super(8 * size);
        this.theme = theme;
        this.size = size;
        getStyleClass().add("legend");
        setAlignment(Pos.CENTER_LEFT);
        Label title = new Label(name);
        title.getStyleClass().add("legend-title");
        title.setMinWidth(Label.USE_PREF_SIZE);
        column.setMinSize((LENGTH_PX + 2 * SIDE_PX) * size, (TOP_PX + BAR_PX + 18) * size);
        column.setMaxSize((LENGTH_PX + 2 * SIDE_PX) * size, (TOP_PX + BAR_PX + 18) * size);
        getChildren().addAll(title, column);
    }

    /** The bar: a colour, 0xRRGGBB, at each place 0..1. */
    final void colours(DoubleToIntFunction rgb) {
        Rectangle bar = new Rectangle(SIDE_PX * size, TOP_PX * size, LENGTH_PX * size, BAR_PX * size);
        Stop[] stops = new Stop[33];
        for (int i = 0; i < stops.length; i++) {
            double share = i / (stops.length - 1.0);
            stops[i] = new Stop(share, LegendBox.colour(rgb.applyAsInt(share)));
        }
        bar.setFill(new LinearGradient(0, 0, 1, 0, true, CycleMethod.NO_CYCLE, stops));
        bar.setStroke(theme.edge());
        bar.setStrokeWidth(0.8);
        column.getChildren().add(bar);
    }

    private double x(double place) {
        return (SIDE_PX + LENGTH_PX * place) * size;
    }

    final void below(double place, String words) {
        mark(x(place), (TOP_PX + BAR_PX) * size, 4 * size);
        text(x(place), (TOP_PX + BAR_PX + 4) * size, VPos.TOP, words);
    }

    final void above(double place, String words) {
        mark(x(place), (TOP_PX - 4) * size, 4 * size);
        text(x(place), (TOP_PX - 4) * size, VPos.BOTTOM, words);
    }

    private void mark(double x, double y, double length) {
        Line line = new Line(x, y, x, y + length);
        line.setStroke(theme.text());
        column.getChildren().add(line);
    }

    private void text(double x, double y, VPos side, String words) {
        Text text = new Text(words);
        text.setFill(theme.text());
        text.setStyle("-fx-font-size: " + 11.5 * size + "px;");
        text.setTextOrigin(side == VPos.TOP ? VPos.TOP : VPos.BOTTOM);
        text.setY(y);
        text.applyCss();
        double width = text.getLayoutBounds().getWidth();
        double most = (LENGTH_PX + 2 * SIDE_PX) * size;
        text.setX(Math.max(0, Math.min(most - width, x - width / 2)));
        column.getChildren().add(text);
    }

    /** A key beside the bar. */
    final void beside(Node key, String words) {
        Label label = new Label(words, key);
        label.setStyle("-fx-font-size: " + 11.5 * size + "px;");
        label.setTextFill(theme.text());
        getChildren().add(label);
    }
}
