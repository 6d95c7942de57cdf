package baymist.viewer.fx;

import baymist.viewer.model.Job;
import java.util.Locale;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.jspecify.annotations.Nullable;

/** What runs in the background, how far it is, and a way to stop it. */
final class StatusBar extends HBox {
    private final Label text = new Label();
    private final ProgressBar bar = new ProgressBar(0);
    private final Button stop = new Button("Stop");
    private @Nullable Job<?> job;

    StatusBar() {
        super(8);
        getStyleClass().add("pane");
        setAlignment(Pos.CENTER_LEFT);
        HBox.setHgrow(text, Priority.ALWAYS);
        text.setMaxWidth(Double.MAX_VALUE);
        bar.setPrefWidth(180);
        stop.setTooltip(new Tooltip("Stop what runs in the background (Esc)"));
        stop.setOnAction(e -> stop());
        getChildren().addAll(text, bar, stop);
        idle("");
    }

    void stop() {
        Job<?> running = job;
        if (running != null) {
            running.cancel();
        }
    }

    void show(Job<?> running) {
        job = running;
        bar.setVisible(true);
        stop.setVisible(true);
        bar.setProgress(running.done() > 0 ? running.done() : ProgressBar.INDETERMINATE_PROGRESS);
        double t = running.jobTimeS();
        text.setText(running.title()
                + (running.stage().isEmpty() ? "" : ": " + running.stage())
                + (t > 0 && Double.isFinite(t) ? String.format(Locale.ROOT, ", job time %.1f s", t) : ""));
    }

    void idle(String words) {
        text.setTooltip(words.isEmpty() ? null : new Tooltip(words.replace(". ", ".\n")));
        job = null;
        bar.setVisible(false);
        stop.setVisible(false);
        text.setText(words);
    }

    String words() {
        return text.getText();
    }
}
