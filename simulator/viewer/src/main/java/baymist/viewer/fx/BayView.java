package baymist.viewer.fx;

import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.viewer.draw.Camera;
import baymist.viewer.draw.PassHandle;
import baymist.viewer.draw.Picker;
import baymist.viewer.draw.View;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.animation.AnimationTimer;
import javafx.scene.AmbientLight;
import javafx.scene.Group;
import javafx.scene.SceneAntialiasing;
import javafx.scene.SubScene;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.transform.Scale;
import org.jspecify.annotations.Nullable;

/**
 * The picture of a cavity that can be turned: a 3D scene and a sheet of lettering over it.
 *
 * <p>Dragging turns, dragging with the other button or with Shift moves, the wheel brings nearer, a click asks about a place.
 */
final class BayView extends Pane {
    private static final double FLIGHT_S = 0.7;
    private static final double DRAG_PX = 4;

    private final Group world = new Group();
    private final SubScene scene3d;
    private final CameraRig rig = new CameraRig();
    private final Overlay overlay;
    private final HandleSheet handles;
    private final List<Consumer<Camera>> followers = new ArrayList<>();
    private final AnimationTimer timer = new AnimationTimer() {
        @Override
        public void handle(long nowNs) {
            tick(nowNs);
        }
    };
    private @Nullable Region legend;
    private @Nullable CavityPicture picture;
    private Camera camera = new Camera(Vec3.ZERO, 0.5, 0.4, 3);
    private Consumer<Picker.Hit> asked = h -> {};
    private @Nullable Camera flightFrom;
    private @Nullable Camera flightTo;
    private long flightStartNs;
    private boolean moved = true;
    private double lastX;
    private double lastY;
    private double travelPx;

    BayView(Theme theme, boolean smooth) {
        overlay = new Overlay(theme);
        handles = new HandleSheet(theme);
        scene3d = new SubScene(world, 640, 480, true, smooth ? SceneAntialiasing.BALANCED : SceneAntialiasing.DISABLED);
        scene3d.setFill(theme.ground());
        scene3d.setCamera(rig.node());
        getChildren().addAll(scene3d, overlay, handles);
        overlay.setMouseTransparent(true);
        overlay.setManaged(false);
        setOnMousePressed(this::pressed);
        setOnMouseDragged(this::dragged);
        setOnMouseReleased(this::released);
        setOnScroll(this::scrolled);
        setMinSize(120, 120);
        sceneProperty().addListener((o, old, now) -> {
            if (now == null) {
                timer.stop();
            } else {
                timer.start();
            }
        });
    }

    /** What a click on film calls. */
    void onAsked(Consumer<Picker.Hit> listener) {
        asked = listener;
    }

    /** Whoever follows the camera. */
    void onCamera(Consumer<Camera> follower) {
        followers.add(follower);
    }

    Overlay overlay() {
        return overlay;
    }

    HandleSheet handles() {
        return handles;
    }

    Camera camera() {
        return camera;
    }

    void show(CavityPicture newPicture) {
        boolean first = picture == null;
        picture = newPicture;
        world.getChildren().setAll(new AmbientLight(Color.WHITE));
        world.getChildren().addAll(newPicture.layers());
        overlay.labels(newPicture.labels());
        if (first) {
            look(View.ISO);
        }
        changed();
    }

    @Nullable
    CavityPicture picture() {
        return picture;
    }

    /** Looks at the whole from one of the usual sides, at once. */
    void look(View view) {
        if (picture != null) {
            set(Camera.of(view, picture.drawn(), aspect()));
        }
    }

    void set(Camera newCamera) {
        camera = newCamera;
        flightTo = null;
        changed();
        followers.forEach(f -> f.accept(camera));
    }

    /** Takes over another view's camera, without telling those that follow. */
    void follow(Camera other) {
        camera = other;
        flightTo = null;
        changed();
    }

    void flyTo(Camera goal) {
        flightFrom = camera;
        flightTo = goal;
        flightStartNs = 0;
    }

    void flyTo(View view) {
        if (picture != null) {
            flyTo(Camera.of(view, picture.drawn(), aspect()));
        }
    }

    /** Flies to where a box fills some of the picture, from the side that is looked from now or a better one. */
    void flyTo(Box3 box, Camera direction) {
        double least = picture == null ? 0.1 : 0.22 * picture.bounds().size().length();
        Box3 grown = box.grown(Math.max(0, (least - box.size().length()) / 2 / Math.sqrt(3)));
        flyTo(direction.fitting(grown, aspect()));
    }

    double aspect() {
        return getHeight() > 0 ? Math.max(0.2, getWidth() / scene3d.getHeight()) : 1.5;
    }

    /** Something that is shown has changed: the order of drawing and the lettering are due. */
    void changed() {
        moved = true;
    }

    /** Whether everything is drawn as it should be: no flight, nothing waiting to be sorted. */
    boolean settled() {
        return !moved && flightTo == null;
    }

    /** A strip below the picture, such as a legend, or none. */
    void legend(@Nullable Region strip) {
        getChildren().remove(legend);
        legend = strip;
        if (strip != null) {
            strip.setMouseTransparent(true);
            getChildren().add(strip);
        }
        requestLayout();
    }

    @Override
    protected void layoutChildren() {
        Region strip = legend;
        double below = strip == null ? 0 : strip.prefHeight(getWidth());
        if (strip != null) {
            double wide = strip.prefWidth(-1);
            double fit = Math.min(1, getWidth() / wide);
            strip.getTransforms().setAll(new Scale(fit, fit, 0, 0));
            strip.resizeRelocate(0, getHeight() - below, Math.max(wide, getWidth()), below);
        }
        double high = Math.max(1, getHeight() - below);
        if (scene3d.getWidth() != getWidth() || scene3d.getHeight() != high) {
            scene3d.setWidth(getWidth());
            scene3d.setHeight(high);
            overlay.resizeRelocate(0, 0, getWidth(), high);
            handles.resizeRelocate(0, 0, getWidth(), high);
            changed();
        }
    }

    @Override
    protected double computePrefWidth(double height) {
        return 400;
    }

    @Override
    protected double computePrefHeight(double width) {
        return 300;
    }

    private void tick(long nowNs) {
        Camera to = flightTo;
        Camera from = flightFrom;
        if (to != null && from != null) {
            flightStartNs = flightStartNs == 0 ? nowNs : flightStartNs;
            double share = Math.min(1, (nowNs - flightStartNs) * 1e-9 / FLIGHT_S);
            camera = from.towards(to, share * share * (3 - 2 * share));
            if (share >= 1) {
                flightTo = null;
            }
            moved = true;
            followers.forEach(f -> f.accept(camera));
        }
        if (!moved || picture == null || getWidth() < 2) {
            return;
        }
        double size = picture.drawnSizeM();
        rig.set(camera, size);
        moved = picture.sort(camera, scene3d.getHeight()) > 0;
        overlay.update(camera, picture::placeOf);
        handles.update(camera);
    }

    private void pressed(MouseEvent e) {
        requestFocus();
        lastX = e.getX();
        lastY = e.getY();
        travelPx = 0;
        if (e.getButton() == MouseButton.PRIMARY && !e.isShiftDown()) {
            handles.press(camera, e.getX(), e.getY());
        }
    }

    private void dragged(MouseEvent e) {
        double dx = e.getX() - lastX;
        double dy = e.getY() - lastY;
        travelPx += Math.hypot(dx, dy);
        lastX = e.getX();
        lastY = e.getY();
        if (handles.holds()) {
            handles.drag(camera, e.getX(), e.getY());
        } else if (e.getButton() == MouseButton.PRIMARY && !e.isShiftDown()) {
            set(camera.turned(dx / getHeight() * -2.5, dy / getHeight() * 2.5));
        } else {
            set(camera.panned(dx / getHeight(), dy / getHeight()));
        }
    }

    private void released(MouseEvent e) {
        if (handles.holds()) {
            handles.release();
            return;
        }
        if (travelPx < DRAG_PX && e.getButton() == MouseButton.PRIMARY && picture != null) {
            String opening = handles.isVisible() ? openingAt(picture, e.getX(), e.getY()) : null;
            if (opening != null) {
                handles.enter(opening);
                return;
            }
            Vec3 through = camera.throughPixel(e.getX(), e.getY(), getWidth(), scene3d.getHeight());
            Picker.Hit hit = picture.pick(camera.eye(), through);
            if (hit != null) {
                asked.accept(hit);
            }
        }
    }

    /** The opening whose middle or name is clicked, or null. */
    private @Nullable String openingAt(CavityPicture p, double xPx, double yPx) {
        Overlay.Label named = overlay.nameAt(xPx, yPx);
        if (named != null) {
            return named.opening();
        }
        String best = null;
        double least = PassHandle.HOLD_PX;
        for (Overlay.Label label : p.labels()) {
            Vec3 place = p.placeOf(label);
            Camera.Spot spot = place == null ? null : camera.project(place, getWidth(), scene3d.getHeight());
            double off = spot == null ? Double.POSITIVE_INFINITY : Math.hypot(spot.x() - xPx, spot.y() - yPx);
            if (off <= least) {
                least = off;
                best = label.opening();
            }
        }
        return best;
    }

    private void scrolled(ScrollEvent e) {
        set(camera.zoomed(Math.pow(0.999, e.getDeltaY())));
    }
}
