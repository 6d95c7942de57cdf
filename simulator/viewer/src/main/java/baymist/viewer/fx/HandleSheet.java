package baymist.viewer.fx;

import baymist.geom.Vec3;
import baymist.viewer.draw.Camera;
import baymist.viewer.draw.PassHandle;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Polyline;
import javafx.scene.text.Text;
import org.jspecify.annotations.Nullable;

/** Handles of one pass over the picture: a dot at either end of the tip's way and a ring with a dot for the pin. */
final class HandleSheet extends Pane {
    /** What came of a drag. */
    interface Dragged {
        void to(PassHandle.Grip grip, PassHandle handle);
    }

    private final Circle from = new Circle(7);
    private final Circle to = new Circle(5);
    private final Circle pin = new Circle(5.5);
    private final Polyline ring = new Polyline();
    private final Polyline way = new Polyline();
    private final Text reads = new Text();
    private Dragged dragged = (g, h) -> {};
    private Consumer<String> entered = o -> {};
    private @Nullable PassHandle handle;
    private PassHandle.@Nullable Grip held;

    HandleSheet(Theme theme) {
        Color halo = theme.dark() ? Color.BLACK : Color.WHITE;
        for (Circle c : new Circle[] {from, to, pin}) {
            c.setFill(c == to ? halo : theme.lit());
            c.setStroke(theme.text());
            c.setStrokeWidth(1.6);
        }
        for (Polyline l : new Polyline[] {ring, way}) {
            l.setStroke(theme.text());
            l.setStrokeWidth(l == way ? 2.4 : 1.3);
            l.setFill(null);
        }
        reads.setFill(theme.text());
        reads.setStyle("-fx-font-weight: bold;");
        getChildren().addAll(way, ring, to, from, pin, reads);
        setMouseTransparent(true);
        setManaged(false);
        setVisible(false);
    }

    /** Who is told when a drag has ended, and when an opening was clicked. */
    void onDragged(Dragged listener, Consumer<String> openingClicked) {
        dragged = listener;
        entered = openingClicked;
    }

    /** Shows the handles of a pass, or none. */
    void show(@Nullable PassHandle newHandle) {
        handle = newHandle;
        held = null;
        reads.setText("");
        setVisible(newHandle != null);
    }

    @Nullable
    PassHandle handle() {
        return handle;
    }

    /** An opening was clicked while handles are out. */
    void enter(String opening) {
        entered.accept(opening);
    }

    /** Takes hold of what is under the pointer; whether there is anything. */
    boolean press(Camera camera, double xPx, double yPx) {
        PassHandle h = handle;
        held = h == null ? null : h.gripAt(camera, xPx, yPx, getWidth(), getHeight());
        return held != null;
    }

    /** Whether something is held. */
    boolean holds() {
        return held != null;
    }

    void drag(Camera camera, double xPx, double yPx) {
        PassHandle h = handle;
        PassHandle.Grip g = held;
        if (h != null && g != null) {
            handle = h.dragged(g, camera, xPx, yPx, getWidth(), getHeight());
            reads.setText(words(g, handle));
            reads.setX(xPx + 14);
            reads.setY(yPx - 10);
            update(camera);
        }
    }

    /** Lets go, and tells what came of it. */
    void release() {
        PassHandle h = handle;
        PassHandle.Grip g = held;
        held = null;
        reads.setText("");
        if (h != null && g != null) {
            dragged.to(g, h);
        }
    }

    static String words(PassHandle.Grip grip, PassHandle h) {
        return switch (grip) {
            case FROM -> String.format(Locale.ROOT, "from %.0f mm", 1e3 * h.fromM());
            case TO -> String.format(Locale.ROOT, "to %.0f mm", 1e3 * h.toM());
            case CLOCK -> String.format(Locale.ROOT, "pin at %.0f deg", Math.toDegrees(h.clockRad()));
        };
    }

    /** Moves the handles to where an eye sees them. */
    void update(Camera camera) {
        PassHandle h = handle;
        if (h == null) {
            return;
        }
        place(from, camera, h.fromPlace());
        place(to, camera, h.toPlace());
        place(pin, camera, h.pinPlace());
        line(ring, camera, h.ring());
        line(way, camera, h.stretch());
    }

    private void place(Circle c, Camera camera, Vec3 p) {
        Camera.Spot spot = camera.project(p, getWidth(), getHeight());
        c.setVisible(spot != null);
        if (spot != null) {
            c.setCenterX(spot.x());
            c.setCenterY(spot.y());
        }
    }

    private void line(Polyline l, Camera camera, List<Vec3> points) {
        Double[] flat = points.stream()
                .map(p -> camera.project(p, getWidth(), getHeight()))
                .filter(java.util.Objects::nonNull)
                .flatMap(s -> java.util.stream.Stream.of(s.x(), s.y()))
                .toArray(Double[]::new);
        l.getPoints().setAll(flat);
    }
}
