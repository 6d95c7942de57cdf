package baymist.viewer.fx;

import baymist.cavity.Part;
import baymist.geom.Vec3;
import baymist.viewer.draw.Cut;
import baymist.viewer.model.SceneModel;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Slider;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** What of the structure is shown: parts, a cutting plane, bays apart. */
final class ShowPane extends VBox {
    private static final List<String> CUTS =
            List.of("no cut", "aft of", "ahead of", "right of", "left of", "above", "below");

    private final VBox parts = new VBox(3);
    private final ChoiceBox<String> cutSide = new ChoiceBox<>();
    private final Slider cutAt = new Slider(0, 1, 0.5);
    private final Slider apart = new Slider(0, 1, 0);
    private final Label cutText = new Label();
    private final Consumer<SceneModel> changed;
    private final List<CheckBox> boxes = new ArrayList<>();
    private @Nullable SceneModel model;

    ShowPane(Consumer<SceneModel> changed) {
        this.changed = changed;
        getStyleClass().add("pane");
        Label title = heading("Parts");
        Button all = new Button("All");
        all.setTooltip(new Tooltip("Show every part"));
        all.setOnAction(e -> boxes.forEach(b -> b.setSelected(true)));
        Button none = new Button("None");
        none.setTooltip(new Tooltip("Hide every part"));
        none.setOnAction(e -> boxes.forEach(b -> b.setSelected(false)));
        ScrollPane scroll = new ScrollPane(parts);
        scroll.setFitToWidth(true);
        VBox.setVgrow(scroll, Priority.ALWAYS);
        cutSide.getItems().setAll(CUTS);
        cutSide.setValue(CUTS.get(0));
        cutSide.setTooltip(new Tooltip("Takes away what lies on that side of a plane"));
        cutSide.valueProperty().addListener(o -> apply());
        cutAt.setTooltip(new Tooltip("Where the plane stands, mm"));
        cutAt.valueProperty().addListener(o -> apply());
        apart.setTooltip(new Tooltip("Draws the bays apart"));
        apart.valueProperty().addListener(o -> apply());
        getChildren()
                .addAll(
                        new HBox(8, title, all, none),
                        scroll,
                        heading("Cut away"),
                        new HBox(8, cutSide, cutText),
                        cutAt,
                        heading("Bays apart"),
                        apart);
    }

    static Label heading(String text) {
        Label label = new Label(text);
        label.getStyleClass().add("heading");
        return label;
    }

    void show(SceneModel newModel, List<Part> newParts) {
        model = newModel;
        boxes.clear();
        parts.getChildren().clear();
        for (int p = 0; p < newParts.size(); p++) {
            CheckBox box = new CheckBox(newParts.get(p).name());
            box.setSelected(true);
            box.setTooltip(new Tooltip(String.format(
                    java.util.Locale.ROOT,
                    "%.1f mm sheet",
                    1000 * newParts.get(p).gaugeM())));
            int part = p;
            box.selectedProperty().addListener((o, old, now) -> {
                SceneModel m = model;
                if (m != null) {
                    set(m.withPart(part, now));
                }
            });
            boxes.add(box);
            parts.getChildren().add(box);
        }
        apply();
    }

    /** What is shown now, or null before there is anything. */
    @Nullable
    SceneModel model() {
        return model;
    }

    /** Takes over what was shown before, where it is the same structure. */
    void restore(SceneModel before) {
        for (int p = 0; p < boxes.size(); p++) {
            boxes.get(p).setSelected(before.shows(p));
        }
        apart(before.explode());
        cut(before.cutAxis() < 0 ? 0 : 2 * before.cutAxis() + (before.keepsLow() ? 1 : 2), before.cutShare());
    }

    /** Ticks or clears a part. */
    void showPart(int part, boolean shown) {
        boxes.get(part).setSelected(shown);
    }

    /** Sets the plane: side 0 = none, 1..6 as in the list. */
    void cut(int side, double share) {
        cutAt.setValue(share);
        cutSide.setValue(CUTS.get(side));
    }

    void apart(double share) {
        apart.setValue(share);
    }

    private void apply() {
        SceneModel m = model;
        if (m == null) {
            return;
        }
        int side = CUTS.indexOf(cutSide.getValue());
        cutAt.setDisable(side == 0);
        SceneModel next = m.withCut(side == 0 ? -1 : (side - 1) / 2, cutAt.getValue(), (side - 1) % 2 == 0)
                .withExplode(apart.getValue());
        cutText.setText(side == 0 ? "" : String.format(java.util.Locale.ROOT, "%.0f mm", 1000 * next.cutM()));
        set(next);
    }

    private void set(SceneModel next) {
        model = next;
        changed.accept(next);
    }

    /** The plane of a model, or null. */
    static @Nullable Cut cutOf(SceneModel m) {
        if (m.cutAxis() < 0) {
            return null;
        }
        Vec3 axis = m.cutAxis() == 0 ? Vec3.X : m.cutAxis() == 1 ? Vec3.Y : Vec3.Z;
        return m.keepsLow() ? new Cut(axis, m.cutM()) : new Cut(axis.negate(), -m.cutM());
    }
}
