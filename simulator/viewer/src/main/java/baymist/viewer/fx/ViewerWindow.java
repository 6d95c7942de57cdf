package baymist.viewer.fx;

import baymist.viewer.ViewRequest;
import baymist.viewer.draw.View;
import java.util.List;
import javafx.application.Platform;
import javafx.geometry.Orientation;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.Separator;
import javafx.scene.control.SplitPane;
import javafx.scene.control.Tab;
import javafx.scene.control.TabPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.ToolBar;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;

/** The window: where everything stands, and what keys do. What it shows is the {@link Desk}'s business. */
final class ViewerWindow {
    private static final List<Integer> SCALES = List.of(100, 125, 150, 200);

    private final Stage stage = new Stage();
    private final StackPane frame = new StackPane();
    private final Desk desk;
    private ViewRequest.Look look;

    private ViewerWindow(ViewRequest request) {
        look = request.look();
        desk = new Desk(request, this::raise);
    }

    /** Opens a window on a scene; {@code closed} is called when it has been closed and nothing runs any more. */
    static ViewerWindow open(ViewRequest request, Runnable closed) {
        ViewerWindow window = new ViewerWindow(request);
        window.build();
        Stage stage = window.stage;
        stage.setTitle("Baymist: " + request.sceneFile().getFileName());
        Scene scene = new Scene(window.frame, 1320, 860);
        scene.addEventFilter(KeyEvent.KEY_PRESSED, window::key);
        stage.setScene(scene);
        stage.setOnHidden(e -> {
            Thread closing = new Thread(
                    () -> {
                        window.desk.close();
                        Platform.runLater(closed);
                    },
                    "baymist closing");
            closing.start();
        });
        stage.show();
        window.desk.open();
        return window;
    }

    Stage stage() {
        return stage;
    }

    ViewRequest.Look look() {
        return look;
    }

    Desk desk() {
        return desk;
    }

    private void raise() {
        stage.toFront();
    }

    /** Lays the window out anew, for another look. */
    private void build() {
        desk.dress(look);
        BorderPane pane = new BorderPane();
        TabPane left = new TabPane(tab("Show", desk.showPane()), tab("Try", desk.whatIf()));
        TabPane right = new TabPane(tab("Bare places", desk.places()));
        left.getSelectionModel()
                .selectedIndexProperty()
                .addListener((o, old, now) -> desk.handles().out(now.intValue() == 1));
        desk.handles().out(false);
        left.setPrefWidth(290 * Math.sqrt(look.scale()));
        right.setPrefWidth(310 * Math.sqrt(look.scale()));
        SplitPane middle = new SplitPane(left, desk.views(), right);
        middle.setDividerPositions(0.21, 0.78);
        SplitPane.setResizableWithParent(left, false);
        SplitPane.setResizableWithParent(right, false);
        pane.setTop(new VBox(tools(), desk.notice()));
        pane.setCenter(middle);
        pane.setBottom(new VBox(desk.timeBar(), new Separator(Orientation.HORIZONTAL), desk.status()));
        Styles.dress(frame, look.dark(), look.scale());
        frame.getChildren().setAll(pane);
    }

    private static Tab tab(String name, javafx.scene.Node content) {
        Tab tab = new Tab(name, content);
        tab.setClosable(false);
        return tab;
    }

    private ToolBar tools() {
        ToolBar bar = new ToolBar();
        int key = 1;
        for (View v : View.values()) {
            String word = v == View.ISO ? "Slanted" : v == View.TOP ? "Top" : v == View.SIDE ? "Side" : "Front";
            bar.getItems().add(button(word, "Look from this side (" + key++ + ")", () -> desk.lookFrom(v)));
        }
        bar.getItems().add(new Separator());
        bar.getItems().addAll(desk.switches());
        bar.getItems().add(new Separator());
        ChoiceBox<String> unit = new ChoiceBox<>();
        unit.getItems().setAll("µm", "mil");
        unit.setValue(look.mils() ? "mil" : "µm");
        unit.setTooltip(new Tooltip("Unit of film: micrometres or mils (thousandths of an inch)"));
        unit.valueProperty()
                .addListener(
                        (o, old, now) -> relook(new ViewRequest.Look(look.dark(), now.equals("mil"), look.scale())));
        CheckBox dark = new CheckBox("Dark");
        dark.setSelected(look.dark());
        dark.setTooltip(new Tooltip("Light lettering on a dark ground"));
        dark.selectedProperty()
                .addListener((o, old, now) -> relook(new ViewRequest.Look(now, look.mils(), look.scale())));
        ChoiceBox<Integer> size = new ChoiceBox<>();
        size.getItems().setAll(SCALES);
        size.setValue((int) Math.round(100 * look.scale()));
        size.setTooltip(new Tooltip("Size of lettering, percent"));
        size.valueProperty()
                .addListener((o, old, now) -> relook(new ViewRequest.Look(look.dark(), look.mils(), now / 100.0)));
        HBox gap = new HBox();
        HBox.setHgrow(gap, Priority.ALWAYS);
        bar.getItems().addAll(gap, new Label("Film in"), unit, dark, size);
        return bar;
    }

    private static Button button(String text, String tip, Runnable action) {
        Button button = new Button(text);
        button.setTooltip(new Tooltip(tip));
        button.setOnAction(e -> action.run());
        return button;
    }

    void relook(ViewRequest.Look other) {
        look = other;
        build();
        desk.showAgain();
    }

    private void key(KeyEvent e) {
        if (e.getTarget() instanceof TextInputControl || e.isControlDown() || e.isMetaDown() || e.isAltDown()) {
            return;
        }
        boolean inView = !(e.getTarget() instanceof javafx.scene.control.Control) || e.getTarget() instanceof SplitPane;
        if (ViewerKeys.press(e.getCode(), e.isShiftDown(), inView, desk)) {
            e.consume();
        }
    }
}
