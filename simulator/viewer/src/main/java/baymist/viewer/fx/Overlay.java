package baymist.viewer.fx;

import baymist.geom.Vec3;
import baymist.viewer.draw.Camera;
import baymist.viewer.draw.LabelPlaces;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.shape.Line;
import javafx.scene.text.Text;
import org.jspecify.annotations.Nullable;

/** Lettering over the picture: names with leaders, axes, a scale bar, and a caption. */
final class Overlay extends Pane {
    /** A name at a place, m, of an opening. */
    record Label(String text, Vec3 placeM, int bay, boolean strong, String opening) {}

    private record Drawn(Label label, javafx.scene.control.Label node, Line leader) {}

    private final Theme theme;
    private final Pane names = new Pane();
    private final List<Drawn> drawn = new ArrayList<>();
    private final Line[] axes = {new Line(), new Line(), new Line()};
    private final Text[] axisNames = {new Text("aft"), new Text("right"), new Text("up")};
    private final Line bar = new Line();
    private final Line barLeft = new Line();
    private final Line barRight = new Line();
    private final Text barText = new Text();
    private javafx.scene.control.@Nullable Label caption;

    Overlay(Theme theme) {
        this.theme = theme;
        getChildren().add(names);
        Color[] colours = {theme.text(), theme.text(), theme.text()};
        for (int a = 0; a < 3; a++) {
            axes[a].setStroke(colours[a]);
            axes[a].setStrokeWidth(1.5);
            axisNames[a].setFill(theme.text());
            axisNames[a].getStyleClass().add("small");
        }
        for (Line l : new Line[] {bar, barLeft, barRight}) {
            l.setStroke(theme.text());
            l.setStrokeWidth(1.5);
        }
        barText.setFill(theme.text());
        barText.getStyleClass().add("small");
        getChildren().addAll(axes);
        getChildren().addAll(axisNames);
        getChildren().addAll(bar, barLeft, barRight, barText);
    }

    /** A line of text at the top left corner. */
    void caption(javafx.scene.control.Label label) {
        caption = label;
        label.setManaged(false);
        getChildren().add(label);
    }

    void labels(List<Label> labels) {
        drawn.clear();
        names.getChildren().clear();
        for (Label label : labels) {
            javafx.scene.control.Label node = new javafx.scene.control.Label(label.text());
            node.getStyleClass().addAll("place-name", label.strong() ? "place-name-strong" : "place-name-plain");
            node.setManaged(false);
            Line leader = new Line();
            leader.setStroke(theme.text());
            leader.setStrokeWidth(0.8);
            names.getChildren().addAll(leader, node);
            drawn.add(new Drawn(label, node, leader));
        }
    }

    /** Rectangles of the names that are shown, pixels of the picture. */
    List<LabelPlaces.Box> shownNames() {
        List<LabelPlaces.Box> boxes = new ArrayList<>();
        for (Drawn d : drawn) {
            if (d.node().isVisible()) {
                boxes.add(box(d.node()));
            }
        }
        return boxes;
    }

    /** The name that is shown at a pixel, or null. */
    @Nullable
    Label nameAt(double xPx, double yPx) {
        for (Drawn d : drawn) {
            if (d.node().isVisible() && d.node().getBoundsInParent().contains(xPx, yPx)) {
                return d.label();
            }
        }
        return null;
    }

    private static LabelPlaces.Box box(Node node) {
        Bounds b = node.getBoundsInParent();
        return new LabelPlaces.Box(b.getMinX(), b.getMinY(), b.getWidth(), b.getHeight());
    }

    /** Moves everything to where an eye sees it. */
    void update(Camera camera, Function<Label, @Nullable Vec3> placeOf) {
        placeCaption();
        axes(camera);
        scaleBar(camera);
        names(camera, placeOf);
    }

    private void placeCaption() {
        if (caption != null) {
            caption.setMaxWidth(Math.max(200, getWidth() - 20));
            caption.autosize();
            caption.relocate(10, 10);
        }
    }

    private void axes(Camera camera) {
        double cx = 72;
        double cy = getHeight() - 58;
        Vec3[] units = {Vec3.X, Vec3.Y, Vec3.Z};
        for (int a = 0; a < 3; a++) {
            double dx = units[a].dot(camera.right());
            double dy = -units[a].dot(camera.up());
            axes[a].setStartX(cx);
            axes[a].setStartY(cy);
            axes[a].setEndX(cx + 30 * dx);
            axes[a].setEndY(cy + 30 * dy);
            boolean seen = Math.hypot(dx, dy) > 0.25;
            axisNames[a].setVisible(seen);
            Bounds b = axisNames[a].getLayoutBounds();
            double length = Math.max(1e-9, Math.hypot(dx, dy));
            double out = 34 * length + 6;
            axisNames[a].setX(cx + out * dx / length - b.getWidth() / 2 + (b.getWidth() / 2) * dx / length);
            axisNames[a].setY(cy + out * dy / length + b.getHeight() / 4 + 4 * dy / length);
            for (int other = 0; other < a; other++) {
                boolean meets = axisNames[other].getBoundsInParent().intersects(axisNames[a].getBoundsInParent());
                axisNames[a].setVisible(axisNames[a].isVisible() && !(meets && axisNames[other].isVisible()));
            }
        }
    }

    private void scaleBar(Camera camera) {
        double perPixel = camera.mPerPixel(getHeight());
        double most = 180 * perPixel;
        double power = Math.pow(10, Math.floor(Math.log10(most)));
        double length = power * (most / power >= 5 ? 5 : most / power >= 2 ? 2 : 1);
        double px = length / perPixel;
        double x = 160;
        double y = getHeight() - 22;
        set(bar, x, y, x + px, y);
        set(barLeft, x, y - 4, x, y + 4);
        set(barRight, x + px, y - 4, x + px, y + 4);
        barText.setText(
                length >= 1
                        ? String.format(Locale.ROOT, "%.0f m", length)
                        : String.format(Locale.ROOT, "%.0f mm", 1000 * length));
        barText.setX(x + px + 10);
        barText.setY(y + 4);
    }

    private static void set(Line line, double x0, double y0, double x1, double y1) {
        line.setStartX(x0);
        line.setStartY(y0);
        line.setEndX(x1);
        line.setEndY(y1);
    }

    private void names(Camera camera, Function<Label, @Nullable Vec3> placeOf) {
        List<LabelPlaces.Wish> wishes = new ArrayList<>();
        List<Drawn> wishing = new ArrayList<>();
        for (Drawn d : drawn) {
            Vec3 place = placeOf.apply(d.label());
            Camera.@Nullable Spot spot = place == null ? null : camera.project(place, getWidth(), getHeight());
            boolean onPicture =
                    spot != null && spot.x() > 0 && spot.y() > 0 && spot.x() < getWidth() && spot.y() < getHeight();
            d.node().setVisible(false);
            d.leader().setVisible(false);
            if (onPicture && spot != null) {
                d.node().applyCss();
                wishes.add(new LabelPlaces.Wish(
                        spot.x(), spot.y(), d.node().prefWidth(-1), d.node().prefHeight(-1)));
                wishing.add(d);
            }
        }
        List<LabelPlaces.Box> taken = new ArrayList<>();
        if (caption != null) {
            taken.add(box(caption));
        }
        taken.add(new LabelPlaces.Box(0, getHeight() - 120, 145, 120));
        taken.add(new LabelPlaces.Box(145, getHeight() - 40, 280, 40));
        List<LabelPlaces.@Nullable Box> places = LabelPlaces.of(wishes, taken, getWidth(), getHeight());
        for (int i = 0; i < places.size(); i++) {
            LabelPlaces.Box b = places.get(i);
            if (b != null) {
                put(wishing.get(i), wishes.get(i), b);
            }
        }
    }

    private static void put(Drawn d, LabelPlaces.Wish wish, LabelPlaces.Box b) {
        d.node().resizeRelocate(b.x(), b.y(), b.width(), b.height());
        d.node().setVisible(true);
        d.leader().setVisible(true);
        double toX = Math.max(b.x(), Math.min(b.x() + b.width(), wish.x()));
        double toY = Math.max(b.y(), Math.min(b.y() + b.height(), wish.y()));
        set(d.leader(), wish.x(), wish.y(), toX, toY);
    }
}
