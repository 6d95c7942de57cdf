package baymist.viewer.fx;

import baymist.viewer.model.Field;
import baymist.viewer.model.WhatIf;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Fields and sliders of a job that is tried otherwise. */
final class WhatIfPane extends VBox {
    /** What the pane asks for. */
    interface Asked {
        /** The job is tried otherwise; not yet computed. */
        void edited(WhatIf next);

        /** A coarse run, soon. */
        void preview(WhatIf now);

        /** A run as fine as the scene's. */
        void whole(WhatIf now);

        void save(WhatIf now);

        /** This pass is the one to be dragged in the picture. */
        void handles(String pass);
    }

    private final VBox rows = new VBox(5);
    private final Label says = new Label();
    private final Asked asked;
    private @Nullable WhatIf now;

    WhatIfPane(Asked asked) {
        this.asked = asked;
        getStyleClass().add("pane");
        Button preview = button("Preview", "A coarse run: first film within seconds (P)", asked::preview);
        Button whole = button("Run", "A run as fine as the scene's, beside the first", asked::whole);
        Button save = button("Save as scene", "Writes the changed job as a scene file of its own", asked::save);
        Button back = button("Undo all", "Back to the scene as it was read", w -> {
            show(WhatIf.of(w.original()));
            asked.edited(WhatIf.of(w.original()));
        });
        ScrollPane scroll = new ScrollPane(rows);
        scroll.setFitToWidth(true);
        VBox.setVgrow(scroll, Priority.ALWAYS);
        says.setWrapText(true);
        says.setMinHeight(Label.USE_PREF_SIZE);
        FlowPane buttons = new FlowPane(6, 6, preview, whole, save, back);
        getChildren().addAll(ShowPane.heading("Try it otherwise"), scroll, says, buttons);
    }

    private Button button(String text, String tip, Consumer<WhatIf> action) {
        Button button = new Button(text);
        button.setTooltip(new Tooltip(tip));
        button.setOnAction(e -> {
            WhatIf w = now;
            if (w != null) {
                action.accept(w);
            }
        });
        return button;
    }

    @Nullable
    WhatIf now() {
        return now;
    }

    /** Shows a job's fields. */
    void show(WhatIf whatIf) {
        now = whatIf;
        rows.getChildren().clear();
        String pass = "";
        for (Field field : whatIf.fields()) {
            if (!field.pass().equals(pass)) {
                pass = field.pass();
                rows.getChildren().add(passHeading(pass));
            }
            rows.getChildren().add(row(field));
        }
        says.setText(
                whatIf.changes().isEmpty() ? "Nothing is changed." : "Changed: " + String.join("; ", whatIf.changes()));
    }

    /** A pass's name; a click on it brings its handles out in the picture. */
    private Label passHeading(String pass) {
        Label heading = ShowPane.heading("Pass \"" + pass + "\"");
        heading.setTooltip(new Tooltip("Click to drag this pass in the picture: depths, clock angle, entry"));
        heading.setOnMouseClicked(e -> asked.handles(pass));
        return heading;
    }

    /** Sets a field as if it had been typed. */
    void set(String id, String typed) {
        WhatIf w = now;
        if (w == null) {
            return;
        }
        WhatIf.Edit edit = w.with(id, typed);
        if (edit.refused()) {
            show(w);
        }
        take(edit);
    }

    /** Takes an edit made elsewhere, such as in the picture, as if it had been made here. */
    void take(WhatIf.Edit edit) {
        WhatIf next = edit.result();
        if (next == null) {
            says.setText(edit.sentence());
            return;
        }
        show(next);
        asked.edited(next);
    }

    void say(String words) {
        says.setText(words);
    }

    String told() {
        return says.getText();
    }

    private HBox row(Field field) {
        Label name = new Label(field.label());
        name.setMinWidth(96);
        name.setTooltip(new Tooltip(field.tip()));
        HBox row = new HBox(6, name);
        row.setAlignment(Pos.CENTER_LEFT);
        if (field.kind() == Field.Kind.CHOICE) {
            ChoiceBox<String> choice = new ChoiceBox<>();
            choice.getItems().setAll(field.choices());
            choice.setValue(field.choice());
            choice.setMaxWidth(190);
            choice.setTooltip(new Tooltip(field.tip()));
            choice.valueProperty().addListener((o, old, chosen) -> set(field.id(), chosen));
            row.getChildren().add(choice);
            return row;
        }
        TextField box = new TextField(field.text());
        box.setPrefColumnCount(5);
        box.setTooltip(new Tooltip(field.tip() + " In " + field.unit() + " unless another unit is typed."));
        box.setOnAction(e -> set(field.id(), box.getText()));
        Slider slider =
                new Slider(field.min(), field.max(), Math.max(field.min(), Math.min(field.max(), field.value())));
        slider.setTooltip(new Tooltip(field.tip()));
        HBox.setHgrow(slider, Priority.ALWAYS);
        slider.setPrefWidth(80);
        slider.valueProperty()
                .addListener(o -> box.setText(String.format(
                        java.util.Locale.ROOT, field.max() - field.min() > 20 ? "%.0f" : "%.2f", slider.getValue())));
        slider.setOnMouseReleased(e -> set(field.id(), box.getText()));
        slider.setOnKeyReleased(e -> set(field.id(), box.getText()));
        row.getChildren().addAll(box, new Label(field.unit()), slider);
        return row;
    }
}
