package baymist.viewer.fx;

import baymist.viewer.ViewRequest;
import javafx.scene.Scene;
import javafx.scene.layout.BorderPane;
import javafx.stage.Stage;

/** The window. */
final class ViewerWindow {
    private ViewerWindow() {}

    static ViewerWindow open(ViewRequest request, Runnable closed) {
        ViewerWindow window = new ViewerWindow();
        Stage stage = new Stage();
        stage.setTitle("Baymist: " + request.sceneFile().getFileName());
        stage.setScene(new Scene(new BorderPane(), 1280, 800));
        stage.setOnHidden(e -> closed.run());
        stage.show();
        return window;
    }
}
