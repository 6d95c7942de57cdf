package baymist.viewer.fx;

import baymist.recording.LiveFilm;
import baymist.recording.Recording;
import baymist.run.RunObserver;
import baymist.scene.Scene;
import baymist.viewer.draw.Camera;
import baymist.viewer.draw.DifferencePlaces;
import baymist.viewer.draw.FilmPlaces;
import baymist.viewer.model.Difference;
import baymist.viewer.model.Runs;
import baymist.viewer.model.SceneModel;
import baymist.viewer.model.WhatIf;
import java.io.File;
import java.io.IOException;
import java.util.Locale;
import javafx.application.Platform;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import org.jspecify.annotations.Nullable;

/** The other set-up, in a second view beside the first, with cameras that move together. */
final class Beside implements WhatIfPane.Asked {
    private final Desk desk;
    private final HBox views;
    private @Nullable BayView view;
    private @Nullable CavityPicture picture;
    private @Nullable SceneModel arranged;
    private @Nullable Tried tried;
    private @Nullable Recording plainPreview;
    private CheckBox asDifference = new CheckBox();
    private CheckBox linked = new CheckBox();
    private Label caption = new Label();
    private double atS = Double.POSITIVE_INFINITY;

    /**
     * Another set-up and what it is compared with.
     *
     * @param first the scene as it is, as fine as the other
     */
    private record Tried(String name, Recording first, Recording other, Difference difference, String note) {}

    Beside(Desk desk, HBox views) {
        this.desk = desk;
        this.views = views;
    }

    /** The second view, or null where there is none. */
    @Nullable
    BayView view() {
        return view;
    }

    /** What the other set-up changes, or null before it was computed. */
    @Nullable
    Difference difference() {
        Tried t = tried;
        return t == null ? null : t.difference();
    }

    /** The other set-up's run, or null before it was computed. */
    @Nullable
    Recording recording() {
        Tried t = tried;
        return t == null ? null : t.other();
    }

    void clear() {
        BayView v = view;
        if (v != null) {
            views.getChildren().removeIf(n -> n != desk.view());
        }
        view = null;
        picture = null;
        tried = null;
        plainPreview = null;
    }

    private void close() {
        Recording keep = plainPreview;
        clear();
        plainPreview = keep;
    }

    @Override
    public void edited(WhatIf next) {
        // computed when asked for; the handles in the picture go along
        desk.handles().update();
    }

    @Override
    public void handles(String pass) {
        desk.handles().pass(pass);
    }

    @Override
    public void preview(WhatIf now) {
        Runs.Opened opened = desk.opened();
        if (opened == null) {
            return;
        }
        desk.start(
                "Preview",
                o -> {
                    Runs.Previewed other = Runs.preview(now.scene(), opened, desk.options(), live(now.scene()))
                            .run(o);
                    Recording first = plainPreview;
                    if (first == null) {
                        first = Runs.preview(opened.scene(), opened, desk.options(), LiveFilm.NONE)
                                .run(o)
                                .recording();
                    }
                    return tried(
                            now,
                            first,
                            other.recording(),
                            other.sentence() + " So is the scene that it is compared with.");
                },
                t -> {
                    plainPreview = t.first();
                    show(t);
                });
    }

    @Override
    public void whole(WhatIf now) {
        Recording first = desk.recording();
        if (first == null) {
            desk.notice().tell("The scene itself has not been run yet; there is nothing to compare with.");
            return;
        }
        desk.start("Running the other set-up", o -> runWhole(now, first, o), this::show);
    }

    private Tried runWhole(WhatIf now, Recording first, RunObserver o) throws Exception {
        Recording other =
                Runs.whole(now.scene(), desk.options(), live(now.scene())).run(o);
        return tried(now, first, other, "");
    }

    private static Tried tried(WhatIf now, Recording first, Recording other, String note) {
        String name = now.changes().isEmpty() ? "The scene as it is" : String.join("; ", now.changes());
        return new Tried(name, first, other, Difference.of(first, other), note);
    }

    /** Shows the other set-up's film as it comes. */
    private LiveFilm live(Scene scene) {
        Object[] grid = {null};
        long[] last = {0};
        return (cavity, voxels, timeS, filmM) -> {
            long now = System.nanoTime();
            if (now - last[0] < 4e8) {
                return;
            }
            last[0] = now;
            boolean first = grid[0] != voxels;
            grid[0] = voxels;
            Platform.runLater(() -> {
                if (first) {
                    open(new CavityPicture(
                            cavity, voxels, new FilmPlaces(scene.targets()), desk.theme(), new EntryNames(scene)));
                }
                CavityPicture p = picture;
                BayView v = view;
                if (p != null && v != null && p.structure().surface().surfelCount() == filmM.length) {
                    p.structure().film(filmM);
                    caption.setText(String.format(Locale.ROOT, "Film at %.1f s.", timeS));
                    v.changed();
                }
            });
        };
    }

    private void open(CavityPicture newPicture) {
        picture = newPicture;
        BayView v = view;
        if (v == null) {
            v = new BayView(desk.theme(), false);
            view = v;
            caption = new Label();
            caption.getStyleClass().add("caption");
            v.overlay().caption(caption);
            v.onCamera(c -> {
                if (linked.isSelected()) {
                    desk.view().follow(c);
                }
            });
            VBox box = new VBox(tools(), v);
            box.setPrefWidth(400);
            VBox.setVgrow(v, Priority.ALWAYS);
            HBox.setHgrow(box, Priority.ALWAYS);
            views.getChildren().setAll(desk.view(), box);
        }
        v.show(newPicture);
        v.follow(desk.view().camera());
        SceneModel model = arranged;
        if (model != null) {
            newPicture.arrange(model);
        }
    }

    private FlowPane tools() {
        asDifference = new CheckBox("Difference");
        asDifference.setTooltip(new Tooltip("Film gained (blue) and lost (brown) against the scene as it is"));
        asDifference.selectedProperty().addListener(o -> paint());
        linked = new CheckBox("Move together");
        linked.setSelected(true);
        linked.setTooltip(new Tooltip("Both views are turned and moved together"));
        Button close = new Button("Close");
        close.setTooltip(new Tooltip("Close this view"));
        close.setOnAction(e -> close());
        FlowPane row = new FlowPane(8, 4, asDifference, linked, close);
        row.getStyleClass().add("pane");
        return row;
    }

    private void show(Tried t) {
        tried = t;
        open(new CavityPicture(
                t.other().result().cavity(),
                t.other().result().grid(),
                new FilmPlaces(t.other().result().scene().targets()),
                desk.theme(),
                new EntryNames(t.other().result().scene())));
        CavityPicture p = picture;
        if (p != null) {
            p.recorded(t.other());
        }
        paint();
        desk.whatIf().say(t.name() + ". " + String.join(" ", t.difference().sentences()) + " " + t.note());
        desk.handles().update();
    }

    /** Shows what lies open again, for another look. */
    void showAgain() {
        Tried t = tried;
        view = null;
        picture = null;
        if (t != null) {
            show(t);
        }
    }

    void showDifference(boolean shown) {
        asDifference.setSelected(shown);
    }

    private void paint() {
        Tried t = tried;
        CavityPicture p = picture;
        BayView v = view;
        if (t == null || p == null || v == null) {
            return;
        }
        double hazeM = t.other().result().scene().targets().hazeM();
        if (asDifference.isSelected()) {
            float largest = 0;
            for (float f : t.difference().filmM()) {
                largest = Float.isNaN(f) ? largest : Math.max(largest, Math.abs(f));
            }
            DifferencePlaces places = new DifferencePlaces(hazeM, largest);
            p.at(t.other().endS());
            p.structure().difference(t.difference().filmM(), places);
            v.legend(new DifferenceLegend(
                    places, desk.unit(), desk.theme(), desk.look().scale()));
            caption.setText("Film gained and lost at the end of the job: " + t.name() + ".");
        } else {
            v.legend(new LegendBox(
                    t.other().result().scene().targets(),
                    desk.unit(),
                    desk.theme(),
                    desk.look().scale()));
            at(atS);
        }
        v.changed();
    }

    /** Shows the other set-up at a job time, s, or at its end if it ends before. */
    void at(double timeS) {
        atS = timeS;
        Tried t = tried;
        CavityPicture p = picture;
        BayView v = view;
        if (t != null && p != null && v != null && !asDifference.isSelected()) {
            double s = Math.min(timeS, t.other().endS());
            p.at(s);
            caption.setText(t.name() + ". " + Captions.of(t.other(), s));
            v.changed();
        }
    }

    void arrange(SceneModel model) {
        arranged = model;
        CavityPicture p = picture;
        BayView v = view;
        if (p != null && v != null) {
            p.arrange(model);
            v.changed();
        }
    }

    void follow(Camera camera) {
        BayView v = view;
        if (v != null && linked.isSelected()) {
            v.follow(camera);
        }
    }

    @Override
    public void save(WhatIf now) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle("Save as scene");
        chooser.setInitialFileName("what-if.yaml");
        File file = chooser.showSaveDialog(views.getScene().getWindow());
        if (file != null) {
            saveTo(now, file);
        }
    }

    /** Writes the job that is tried to a file that was chosen. */
    void saveTo(WhatIf now, File file) {
        try {
            now.save(file.toPath());
            desk.whatIf().say("Written to " + file + ".");
        } catch (IOException | RuntimeException e) {
            desk.notice().tell("The scene could not be written to " + file + ": " + e.getMessage());
        }
    }
}
