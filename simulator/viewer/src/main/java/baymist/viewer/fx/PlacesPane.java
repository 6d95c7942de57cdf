package baymist.viewer.fx;

import baymist.viewer.model.RegionList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Bare places, and what can be said about the one that was chosen or the spot that was clicked. */
final class PlacesPane extends VBox {
    private final ListView<RegionList.Row> list = new ListView<>();
    private final VBox answer = new VBox();
    private final Button why = new Button("Why is it bare?");
    private final Button best = new Button("Best tip pose");

    PlacesPane(Consumer<RegionList.Row> chosen, Consumer<RegionList.Row> askWhy, Consumer<RegionList.Row> askBest) {
        getStyleClass().add("pane");
        list.setCellFactory(v -> new Cell());
        list.setPlaceholder(new Label("Nothing to list yet."));
        list.getSelectionModel().selectedItemProperty().addListener((o, old, now) -> {
            why.setDisable(now == null);
            best.setDisable(now == null);
            if (now != null) {
                chosen.accept(now);
            }
        });
        why.setDisable(true);
        best.setDisable(true);
        why.setTooltip(new Tooltip("Tries one change at a time at a coarse resolution; takes a minute or so"));
        best.setTooltip(new Tooltip("Where the tip would have to be for oil to end there; takes a minute or so"));
        why.setOnAction(e -> askWhy.accept(list.getSelectionModel().getSelectedItem()));
        best.setOnAction(e -> askBest.accept(list.getSelectionModel().getSelectedItem()));
        answer.getStyleClass().add("answer");
        ScrollPane scroll = new ScrollPane(answer);
        scroll.setFitToWidth(true);
        VBox.setVgrow(scroll, Priority.ALWAYS);
        VBox.setVgrow(list, Priority.ALWAYS);
        list.setPrefHeight(260);
        getChildren().addAll(ShowPane.heading("Bare places"), list, new HBox(8, why, best), scroll);
        say(List.of("Click a surface to be told its film and how it got there, or choose a bare place."));
    }

    private static final class Cell extends ListCell<RegionList.Row> {
        Cell() {
            setWrapText(true);
            setPrefWidth(10);
        }

        @Override
        protected void updateItem(RegionList.Row row, boolean empty) {
            super.updateItem(row, empty);
            setText(
                    empty || row == null
                            ? null
                            : String.format(
                                    Locale.ROOT, "%s  (%.1f cm²)  %s", row.label(), 1e4 * row.areaM2(), row.where()));
        }
    }

    /** Lists a run's bare places. */
    void show(RegionList regions) {
        list.setPlaceholder(new Label("Nothing is bare."));
        list.getItems().setAll(regions.rows());
    }

    void clear() {
        list.setPlaceholder(new Label("Nothing to list yet."));
        list.getItems().clear();
    }

    void choose(int row) {
        list.getSelectionModel().select(row);
    }

    /** As if the button were pressed. */
    void askWhy() {
        why.fire();
    }

    /** As if the button were pressed. */
    void askBest() {
        best.fire();
    }

    /** Rows that are listed. */
    List<RegionList.Row> rows() {
        return List.copyOf(list.getItems());
    }

    /** Replaces what is told. */
    void say(List<String> sentences) {
        answer.getChildren().clear();
        more(sentences);
    }

    /** Adds to what is told. */
    void more(List<String> sentences) {
        for (String s : sentences) {
            Label label = new Label(s);
            label.setWrapText(true);
            label.setMinHeight(Label.USE_PREF_SIZE);
            answer.getChildren().add(label);
        }
    }

    /** What is told now. */
    List<String> told() {
        return answer.getChildren().stream().map(n -> ((Label) n).getText()).toList();
    }
}
