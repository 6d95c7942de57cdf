package baymist.viewer.fx;

import baymist.viewer.draw.TimeScale;
import baymist.viewer.model.ChartModel;
import baymist.viewer.model.TimeModel;
import java.util.Locale;
import java.util.function.DoubleConsumer;
import javafx.animation.AnimationTimer;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** Time of the job: play, pause, go to, speed; and the curves above it. */
final class TimeBar extends VBox {
    /** Share of the slider that the time of spraying gets, which is short beside the hours that fog may hang. */
    private static final double SPRAY_SHARE = 0.6;

    private final Button play = new Button("Play");
    private final Slider slider = new Slider(0, 1, 1);
    private final Label time = new Label();
    private final ChoiceBox<Double> speed = new ChoiceBox<>();
    private final CurveStrip curves;
    private final DoubleConsumer onTime;
    private TimeModel model = TimeModel.atEnd(0);
    private TimeScale scale = new TimeScale(0, 0, SPRAY_SHARE);
    private boolean moving;
    private final AnimationTimer timer = new AnimationTimer() {
        @Override
        public void handle(long nowNs) {
            tell(nowNs * 1e-9);
        }
    };

    TimeBar(Theme theme, DoubleConsumer onTime) {
        this.onTime = onTime;
        curves = new CurveStrip(theme, this::goTo);
        getStyleClass().add("pane");
        play.setTooltip(new Tooltip("Play or pause (space)"));
        play.setMinWidth(Button.USE_PREF_SIZE);
        play.setOnAction(e -> playOrPause());
        slider.setTooltip(new Tooltip("Job time, s. The time after the last pass is drawn closer together."));
        HBox.setHgrow(slider, Priority.ALWAYS);
        slider.valueProperty().addListener((o, old, now) -> {
            if (!moving) {
                goTo(scale.timeS(now.doubleValue()));
            }
        });
        for (double s : TimeModel.SPEEDS) {
            speed.getItems().add(s);
        }
        speed.setValue(1.0);
        speed.setConverter(new SpeedWords());
        speed.setTooltip(new Tooltip("Job seconds in a second (keys [ and ])"));
        speed.valueProperty().addListener((o, old, now) -> model = model.withSpeed(now, clockS()));
        time.setMinWidth(110);
        HBox row = new HBox(8, play, slider, time, speed);
        row.setAlignment(Pos.CENTER_LEFT);
        row.setPadding(new Insets(0, 4, 0, 4));
        getChildren().addAll(curves, row);
        setDisable(true);
    }

    private static final class SpeedWords extends StringConverter<Double> {
        @Override
        public String toString(Double s) {
            return String.format(Locale.ROOT, "%sx", s < 1 ? s.toString() : String.valueOf(s.intValue()));
        }

        @Override
        public Double fromString(String text) {
            return Double.valueOf(text.substring(0, text.length() - 1));
        }
    }

    /** Takes a run's curves and stands at its end. */
    void show(ChartModel chart, double lastSprayS) {
        scale = new TimeScale(lastSprayS, chart.endS(), SPRAY_SHARE);
        curves.show(chart, scale);
        model = TimeModel.atEnd(chart.endS());
        setDisable(false);
        timer.start();
        goTo(chart.endS());
    }

    /** Nothing to play. */
    void clear() {
        timer.stop();
        setDisable(true);
    }

    double timeS() {
        return model.jobTimeS(clockS());
    }

    boolean playing() {
        return model.running(clockS());
    }

    void playOrPause() {
        model = model.playOrPause(clockS());
        tell(clockS());
    }

    void faster(int by) {
        speed.setValue(model.faster(by, clockS()).speed());
    }

    /** Goes to a job time, s. */
    void goTo(double jobS) {
        model = model.scrub(jobS, clockS());
        tell(clockS());
    }

    /** Goes a step of the slider on or back. */
    void step(double share) {
        goTo(scale.timeS(Math.max(0, Math.min(1, scale.place(timeS()) + share))));
    }

    private double lastToldS = Double.NaN;

    private void tell(double clockS) {
        double jobS = model.jobTimeS(clockS);
        play.setText(model.running(clockS) ? "Pause" : "Play");
        if (jobS == lastToldS) {
            return;
        }
        lastToldS = jobS;
        moving = true;
        slider.setValue(scale.place(jobS));
        moving = false;
        time.setText(String.format(Locale.ROOT, "%.1f of %.0f s", jobS, model.endS()));
        curves.cursor(jobS);
        onTime.accept(jobS);
    }

    private static double clockS() {
        return System.nanoTime() * 1e-9;
    }
}
