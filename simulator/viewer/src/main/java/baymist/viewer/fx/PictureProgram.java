package baymist.viewer.fx;

import baymist.recording.Recording;
import baymist.viewer.ViewRequest;
import baymist.viewer.draw.FilmPlaces;
import baymist.viewer.draw.View;
import baymist.viewer.model.FilmUnit;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.image.WritableImage;
import javafx.stage.Stage;

/** A picture without anybody at the window. */
public final class PictureProgram {
    private PictureProgram() {}

    /**
     * Makes sure that pictures can be drawn.
     *
     * @throws baymist.viewer.NoDisplayException if there is no display
     */
    public static void needDisplay() {
        Toolkit.start();
    }

    /** Draws a run at a time, s, from one side. */
    public static Pixels draw(
            Recording recording, View view, double timeS, ViewRequest.Look look, int width, int height)
            throws InterruptedException {
        Toolkit.start();
        CompletableFuture<WritableImage> picture = new CompletableFuture<>();
        Platform.runLater(() -> {
            try {
                begin(recording, view, timeS, look, width, height, picture);
            } catch (RuntimeException e) {
                picture.completeExceptionally(e);
            }
        });
        try {
            return Pixels.of(picture.get());
        } catch (ExecutionException e) {
            throw new IllegalStateException("the picture could not be drawn", e.getCause());
        }
    }

    private static void begin(
            Recording recording,
            View view,
            double timeS,
            ViewRequest.Look look,
            int width,
            int height,
            CompletableFuture<WritableImage> picture) {
        Theme theme = Theme.of(look.dark());
        BayView bay = new BayView(theme, true);
        var result = recording.result();
        CavityPicture shown = new CavityPicture(
                result.cavity(),
                result.grid(),
                new FilmPlaces(result.scene().targets()),
                theme,
                new EntryNames(result.scene()));
        shown.recorded(recording);
        shown.at(timeS);
        FilmUnit unit = look.mils() ? FilmUnit.MIL : FilmUnit.MICROMETRE;
        bay.legend(new LegendBox(result.scene().targets(), unit, theme, look.scale()));
        Label caption = new Label(Captions.of(recording, timeS) + "\n" + shown.fogSentence());
        caption.getStyleClass().add("caption");
        bay.overlay().caption(caption);
        Scene scene = new Scene(bay, width, height);
        Styles.dress(bay, look.dark(), look.scale());
        Stage stage = new Stage();
        stage.setScene(scene);
        stage.show();
        bay.show(shown);
        new AnimationTimer() {
            private int pulses;

            @Override
            public void handle(long now) {
                if (++pulses == 2) {
                    bay.look(view);
                }
                if (pulses > 3 && bay.settled()) {
                    stop();
                    picture.complete(scene.snapshot(null));
                    stage.close();
                }
            }
        }.start();
    }
}
