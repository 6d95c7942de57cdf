package baymist.viewer.fx;

import baymist.viewer.draw.TimeScale;
import baymist.viewer.model.ChartModel;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polyline;
import org.jspecify.annotations.Nullable;

/** Small charts side by side, with one cursor at the job time; a click goes to that time. */
final class CurveStrip extends HBox {
    private static final double HEIGHT_PX = 64;

    private final Theme theme;
    private final DoubleConsumer onTime;
    private final List<Curve> curves = new ArrayList<>();

    CurveStrip(Theme theme, DoubleConsumer onTime) {
        super(10);
        this.theme = theme;
        this.onTime = onTime;
    }

    void show(ChartModel chart, TimeScale scale) {
        curves.clear();
        getChildren().clear();
        for (ChartModel.Series series : chart.series()) {
            Curve curve = new Curve(series, scale, theme, onTime);
            HBox.setHgrow(curve, Priority.ALWAYS);
            curves.add(curve);
            getChildren().add(curve);
        }
    }

    void cursor(double timeS) {
        curves.forEach(c -> c.cursor(timeS));
    }

    private static final class Curve extends VBox {
        private final ChartModel.Series series;
        private final TimeScale scale;
        private final Label title = new Label();
        private final Pane plot = new Pane();
        private final Polyline line = new Polyline();
        private final Line cursor = new Line();
        private final Line end = new Line();
        private @Nullable Double atS;

        Curve(ChartModel.Series series, TimeScale scale, Theme theme, DoubleConsumer onTime) {
            this.series = series;
            this.scale = scale;
            title.setTooltip(new Tooltip(series.tip()));
            title.getStyleClass().add("small");
            plot.getStyleClass().add("plot");
            plot.setPrefSize(200, HEIGHT_PX);
            plot.setMinHeight(HEIGHT_PX);
            line.setStroke(theme.text());
            line.setStrokeWidth(1.6);
            line.setFill(Color.TRANSPARENT);
            cursor.setStroke(theme.lit());
            cursor.setStrokeWidth(2);
            end.setStroke(theme.edge());
            end.getStrokeDashArray().setAll(2.0, 3.0);
            plot.getChildren().addAll(end, line, cursor);
            plot.widthProperty().addListener(o -> draw());
            plot.setOnMousePressed(e -> onTime.accept(scale.timeS(e.getX() / plot.getWidth())));
            plot.setOnMouseDragged(e ->
                    onTime.accept(scale.timeS(Math.max(0, Math.min(1, e.getX() / plot.getWidth())))));
            Tooltip.install(
                    plot,
                    new Tooltip(series.tip() + "; " + series.unit() + " over job time, 0 to " + series.top() + " "
                            + series.unit() + ". Dotted: the last pass ends."));
            getChildren().addAll(title, plot);
        }

        private double y(double value) {
            return 3 + (HEIGHT_PX - 6) * (1 - value / series.top());
        }

        private void draw() {
            double w = plot.getWidth();
            line.getPoints().clear();
            for (int i = 0; i < series.timeS().length; i++) {
                line.getPoints().addAll(w * scale.place(series.timeS()[i]), y(series.value()[i]));
            }
            double x = w * scale.share();
            end.setStartX(x);
            end.setEndX(x);
            end.setStartY(1);
            end.setEndY(HEIGHT_PX - 1);
            Double t = atS;
            if (t != null) {
                cursor(t);
            }
        }

        void cursor(double timeS) {
            atS = timeS;
            double x = plot.getWidth() * scale.place(timeS);
            cursor.setStartX(x);
            cursor.setEndX(x);
            cursor.setStartY(1);
            cursor.setEndY(HEIGHT_PX - 1);
            title.setText(series.text(timeS));
        }
    }
}
