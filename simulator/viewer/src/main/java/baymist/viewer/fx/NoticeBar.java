package baymist.viewer.fx;

import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;

/** A line that tells of something that needs a decision: a scene that can't be read, a file that has changed. */
final class NoticeBar extends HBox {
    private final Label text = new Label();
    private final Button action = new Button();
    private final Button away = new Button("Leave it");

    NoticeBar() {
        getStyleClass().add("notice");
        text.setWrapText(true);
        text.setMinHeight(Label.USE_PREF_SIZE);
        text.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(text, Priority.ALWAYS);
        away.setOnAction(e -> clear());
        action.setMinWidth(Button.USE_PREF_SIZE);
        away.setMinWidth(Button.USE_PREF_SIZE);
        getChildren().addAll(text, action, away);
        clear();
    }

    void ask(String words, String button, Runnable then) {
        tell(words);
        action.setText(button);
        action.setVisible(true);
        action.setManaged(true);
        action.setOnAction(e -> {
            clear();
            then.run();
        });
    }

    void tell(String words) {
        text.setText(words);
        action.setVisible(false);
        action.setManaged(false);
        setVisible(true);
        setManaged(true);
    }

    void clear() {
        text.setText("");
        setVisible(false);
        setManaged(false);
    }

    String words() {
        return text.getText();
    }

    /** Presses the button that does something about it. */
    void act() {
        action.fire();
    }
}
