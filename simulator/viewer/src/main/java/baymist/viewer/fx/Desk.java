package baymist.viewer.fx;

import baymist.cavity.Cavity;
import baymist.recording.LiveFilm;
import baymist.recording.Recording;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import baymist.viewer.ViewRequest;
import baymist.viewer.draw.Camera;
import baymist.viewer.draw.FilmPlaces;
import baymist.viewer.draw.Picker;
import baymist.viewer.draw.View;
import baymist.viewer.model.ChartModel;
import baymist.viewer.model.FilmUnit;
import baymist.viewer.model.Job;
import baymist.viewer.model.JobRunner;
import baymist.viewer.model.RegionAnswer;
import baymist.viewer.model.RegionList;
import baymist.viewer.model.Runs;
import baymist.viewer.model.SceneModel;
import baymist.viewer.model.SceneWatch;
import baymist.viewer.model.Shade;
import baymist.viewer.model.SurfelStory;
import baymist.viewer.model.WhatIf;
import baymist.viewer.model.Work;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.jspecify.annotations.Nullable;

/** What lies open: a scene, its run, what was asked about it. Keeps the panes of the window up to date; the runs are in the background. */
final class Desk {
    /** Film is shown this often while a run goes on, at most, s. */
    private static final double LIVE_EVERY_S = 0.4;

    private static final long WATCH_MS = 700;

    private final ViewRequest request;
    private final JobRunner runs = new JobRunner();
    private final NoticeBar notice = new NoticeBar();
    private final StatusBar status = new StatusBar();
    private final HBox views = new HBox(2);
    private final CheckBox fog = new CheckBox("Fog");
    private final CheckBox seams = new CheckBox("Seams");
    private final CheckBox sheets = new CheckBox("Sheets");
    private final SceneWatch watch;
    private final Beside beside;
    private final Handles handles = new Handles(this);
    private Theme theme = Theme.LIGHT;
    private ViewRequest.Look look = ViewRequest.Look.PLAIN;
    private BayView view = new BayView(theme, false);
    private ShowPane showPane = new ShowPane(this::arrange);
    private PlacesPane places = newPlaces();
    private WhatIfPane whatIf;
    private TimeBar timeBar = new TimeBar(theme, this::at);
    private Label caption = new Label();
    private Runs.@Nullable Opened opened;
    private @Nullable Recording recording;
    private @Nullable CavityPicture picture;
    /** What was shown, and when, before the panes were made anew. */
    private @Nullable SceneModel before;

    private double beforeS;
    private boolean closed;
    private double patienceS = RegionAnswer.PATIENCE_S;

    Desk(ViewRequest request, Runnable raise) {
        this.request = request;
        beside = new Beside(this, views);
        whatIf = new WhatIfPane(beside);
        for (CheckBox box : new CheckBox[] {fog, seams, sheets}) {
            box.setSelected(box != seams);
            box.selectedProperty().addListener(o -> switched());
        }
        fog.setTooltip(new Tooltip("Dots for the oil in the air"));
        seams.setTooltip(new Tooltip("Lines where parts meet"));
        sheets.setTooltip(new Tooltip("The sheets as see-through skins"));
        watch = new SceneWatch(request.sceneFile(), WATCH_MS, new SceneWatch.Listener() {
            @Override
            public void changed(java.nio.file.Path file) {
                Platform.runLater(() -> {
                    notice.ask(file.getFileName() + " has changed on disk.", "Read it again", Desk.this::open);
                    raise.run();
                });
            }

            @Override
            public void gone(java.nio.file.Path file) {
                Platform.runLater(() ->
                        notice.tell(file.getFileName() + " is gone from disk; what is shown is what was read before."));
            }
        });
    }

    private PlacesPane newPlaces() {
        return new PlacesPane(this::flyTo, this::why, this::bestPose);
    }

    /** Makes the panes anew for a look. */
    void dress(ViewRequest.Look newLook) {
        look = newLook;
        theme = Theme.of(look.dark());
        before = showPane.model();
        beforeS = timeBar.timeS();
        Camera camera = view.camera();
        view = new BayView(theme, false);
        view.onAsked(this::tell);
        view.onCamera(beside::follow);
        showPane = new ShowPane(this::arrange);
        places = newPlaces();
        WhatIf now = whatIf.now();
        whatIf = new WhatIfPane(beside);
        if (now != null) {
            whatIf.show(now);
        }
        timeBar.clear();
        timeBar = new TimeBar(theme, this::at);
        caption = new Label("");
        caption.getStyleClass().add("caption");
        view.overlay().caption(caption);
        HBox.setHgrow(view, Priority.ALWAYS);
        views.getChildren().setAll(view);
        view.follow(camera);
    }

    /** Shows again what lies open, after {@link #dress}. */
    void showAgain() {
        Runs.Opened o = opened;
        Recording r = recording;
        Camera camera = view.camera();
        SceneModel shown = before;
        double timeS = beforeS;
        if (o != null) {
            structure(o);
            view.set(camera);
        }
        if (r != null) {
            film(r);
            timeBar.goTo(timeS);
        }
        if (shown != null) {
            showPane.restore(shown);
        }
        beside.showAgain();
        handles.update();
    }

    BayView view() {
        return view;
    }

    Node views() {
        return views;
    }

    ShowPane showPane() {
        return showPane;
    }

    PlacesPane places() {
        return places;
    }

    WhatIfPane whatIf() {
        return whatIf;
    }

    TimeBar timeBar() {
        return timeBar;
    }

    StatusBar status() {
        return status;
    }

    NoticeBar notice() {
        return notice;
    }

    Handles handles() {
        return handles;
    }

    Beside beside() {
        return beside;
    }

    List<Node> switches() {
        return List.of(fog, seams, sheets);
    }

    Theme theme() {
        return theme;
    }

    ViewRequest.Look look() {
        return look;
    }

    FilmUnit unit() {
        return look.mils() ? FilmUnit.MIL : FilmUnit.MICROMETRE;
    }

    RunOptions options() {
        return new RunOptions(request.threads());
    }

    Runs.@Nullable Opened opened() {
        return opened;
    }

    @Nullable
    Recording recording() {
        return recording;
    }

    /** Reads the scene and, when it is sound, runs it. */
    void open() {
        notice.clear();
        start("Opening", this::read, o -> {
            opened = o;
            recording = null;
            structure(o);
            whatIf.show(WhatIf.of(o.scene()));
            beside.clear();
            run(o);
        });
    }

    private Runs.Opened read(baymist.run.RunObserver observer) {
        observer.stage("reading the scene");
        Scene scene = SceneReader.read(request.sceneFile());
        Scene sized = request.voxel() == null ? scene : scene.withVoxel(request.voxel());
        return new Runs.Opened(sized, Simulation.check(sized, options(), observer));
    }

    private void run(Runs.Opened o) {
        start("Running", Runs.whole(o.scene(), options(), live(o)), this::film);
    }

    /** Shows film while the run goes on. */
    private LiveFilm live(Runs.Opened o) {
        long[] last = {0};
        return (Cavity cavity, VoxelGrid grid, double timeS, float[] filmM) -> {
            long now = System.nanoTime();
            if (now - last[0] > LIVE_EVERY_S * 1e9) {
                last[0] = now;
                Platform.runLater(() -> liveFilm(o, timeS, filmM));
            }
        };
    }

    @SuppressWarnings("ReferenceEquality") // whether it is still this opening, not one like it
    private void liveFilm(Runs.Opened o, double timeS, float[] filmM) {
        CavityPicture p = picture;
        if (opened == o
                && recording == null
                && p != null
                && p.structure().surface().surfelCount() == filmM.length) {
            p.structure().film(filmM);
            caption.setText(String.format(java.util.Locale.ROOT, "Running: film at %.1f s.", timeS));
            view.changed();
        }
    }

    /** Begins background work, the only one at a time; its outcome comes back on the JavaFX thread. */
    <T> void start(String title, Work<T> work, Consumer<T> done) {
        runs.start(title, work, job -> Platform.runLater(() -> heard(job, done)));
    }

    private <T> void heard(Job<T> job, Consumer<T> done) {
        if (closed) {
            return;
        }
        switch (job.state()) {
            case DONE -> {
                status.idle("");
                T result = job.result();
                if (result != null) {
                    done.accept(result);
                }
            }
            case FAILED -> {
                status.idle(job.title() + " failed.");
                notice.ask(job.sentence(), "Try again", this::open);
            }
            case CANCELLED -> status.idle(job.title() + " was stopped.");
            default -> {
                if (!job.ended()) {
                    status.show(job);
                }
            }
        }
    }

    void stop() {
        runs.cancel();
    }

    /** Shows a structure without film. */
    private void structure(Runs.Opened o) {
        Cavity cavity = o.check().cavity();
        CavityPicture p = new CavityPicture(
                cavity, o.check().grid(), new FilmPlaces(o.scene().targets()), theme, new EntryNames(o.scene()));
        picture = p;
        view.show(p);
        view.legend(new LegendBox(o.scene().targets(), unit(), theme, look.scale()));
        caption.setText(p.structure().surface().detail().sentence());
        places.clear();
        timeBar.clear();
        showPane.show(SceneModel.of(p.bounds(), o.check().grid().bays()), cavity.parts());
        switched();
    }

    /** Shows a run. */
    private void film(Recording r) {
        CavityPicture p = picture;
        if (p == null) {
            return;
        }
        recording = r;
        p.recorded(r);
        places.show(RegionList.of(r.result()));
        timeBar.show(ChartModel.of(r), lastSprayS(r));
        switched();
        handles.update();
        status.idle(r.statement() + " " + p.structure().surface().detail().sentence() + " " + p.fogSentence());
    }

    /** End of the last pass, s. */
    static double lastSprayS(Recording r) {
        return r.result().stations().stream()
                .mapToDouble(s -> s.startS() + s.durationS())
                .max()
                .orElse(0);
    }

    private void at(double timeS) {
        CavityPicture p = picture;
        Recording r = recording;
        if (p != null && r != null) {
            p.at(timeS);
            caption.setText(Captions.of(r, timeS));
            beside.at(timeS);
            view.changed();
        }
    }

    private void arrange(SceneModel model) {
        CavityPicture p = picture;
        if (p != null) {
            p.arrange(model);
            beside.arrange(model);
            view.changed();
        }
    }

    private void switched() {
        CavityPicture p = picture;
        if (p != null) {
            p.showSeams(seams.isSelected());
            p.structure().showSheets(sheets.isSelected());
            p.showFog(fog.isSelected(), timeBar.timeS());
            view.changed();
        }
    }

    void lookFrom(View side) {
        view.flyTo(side);
    }

    void previewNow() {
        WhatIf now = whatIf.now();
        if (now != null) {
            beside.preview(now);
        }
    }

    /** Tells about a spot of the structure. */
    private void tell(Picker.Hit hit) {
        Recording r = recording;
        if (r == null) {
            places.say(List.of("There is no film yet: the run is not done."));
            return;
        }
        List<String> says =
                new ArrayList<>(SurfelStory.of(r, hit.surfel(), unit()).sentences());
        List<RegionList.Row> rows = places.rows();
        for (RegionList.Row row : rows) {
            for (int s : row.surfels()) {
                if (s == hit.surfel()) {
                    says.add("It belongs to bare place " + row.label() + ": " + row.where() + ".");
                    says.add(Shade.of(r.result(), row.surfels()).sentence());
                }
            }
        }
        places.say(says);
    }

    /** Flies to a bare place and points out what shades it. */
    private void flyTo(RegionList.Row row) {
        CavityPicture p = picture;
        Recording r = recording;
        if (p == null || r == null) {
            return;
        }
        p.ghost().show(null);
        Shade shade = Shade.of(r.result(), row.surfels());
        p.structure().light(shade.part());
        places.say(List.of(
                String.format(java.util.Locale.ROOT, "%s: %s, %.1f cm².", row.label(), row.where(), 1e4 * row.areaM2()),
                shade.sentence()));
        view.flyTo(row.region().extentM(), Sights.towards(view.camera(), row.facing()));
        view.changed();
    }

    /** Tries changes for an answer no longer than this, s. */
    void patience(double seconds) {
        patienceS = seconds;
    }

    private void why(RegionList.Row row) {
        Recording r = recording;
        if (r == null) {
            return;
        }
        start(
                "Asking why " + row.label() + " is bare",
                o -> RegionAnswer.why(r.result().scene(), row, patienceS, options(), o),
                why -> places.more(why.sentences()));
    }

    private void bestPose(RegionList.Row row) {
        Recording r = recording;
        if (r == null) {
            return;
        }
        start("Seeking the best tip pose for " + row.label(), o -> List.of(poses(r, row, o)), found -> {
            CavityPicture p = picture;
            RegionAnswer.GhostPose pose = found.get(0).pose();
            places.more(List.of(
                    pose == null ? "No wand of the scene gets to a pose that brings anything here." : pose.sentence()));
            if (p != null) {
                p.ghost().show(pose);
                view.changed();
            }
        });
    }

    private record Found(RegionAnswer.@Nullable GhostPose pose) {}

    private Found poses(Recording r, RegionList.Row row, baymist.run.RunObserver o) {
        return new Found(RegionAnswer.bestPose(r.result(), row, options(), o));
    }

    /** Stops everything; returns when nothing runs any more. Not on the JavaFX thread. */
    void close() {
        closed = true;
        watch.close();
        runs.close();
    }
}
