package baymist.picture;

import baymist.geom.Vec3;
import baymist.voxel.VoxelGrid;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Writes each bay's name among its cells at a section's plane, where nothing else is drawn if there is such a place. */
final class BayLabels {
    private static final double SIZE = 16;

    private final VoxelGrid grid;
    private final List<Line2D> lines = new ArrayList<>();
    private final List<Rectangle2D> boxes = new ArrayList<>();

    BayLabels(VoxelGrid grid) {
        this.grid = grid;
    }

    void avoid(Line2D line) {
        lines.add(line);
    }

    void avoid(Shape shape) {
        boxes.add(shape.getBounds2D());
    }

    void draw(Canvas c, SectionPainter.Place p) throws IOException {
        int axis = p.view().axis();
        double half = 0.5 * grid.sizeM().get(axis) * (1 + 1e-9);
        List<List<Vec3>> cells = new ArrayList<>();
        for (int b = 0; b < grid.bays().size(); b++) {
            cells.add(new ArrayList<>());
        }
        for (int cell = 0; cell < grid.cellCount(); cell++) {
            Vec3 q = grid.centre(cell);
            if (Math.abs(q.get(axis) - p.view().atM()) <= half) {
                cells.get(grid.bayOfCell(cell)).add(q);
            }
        }
        for (int b = 0; b < cells.size(); b++) {
            if (!cells.get(b).isEmpty()) {
                name(c, p, grid.bays().get(b).name(), cells.get(b));
            }
        }
    }

    private void name(Canvas c, SectionPainter.Place p, String words, List<Vec3> cells) throws IOException {
        Vec3 sum = Vec3.ZERO;
        for (Vec3 q : cells) {
            sum = sum.plus(q);
        }
        Vec3 middle = sum.times(1.0 / cells.size());
        cells.sort(Comparator.comparingDouble(q -> q.distance(middle)));
        double w = c.lettering().width(words, SIZE);
        Rectangle2D fallback = box(p, cells.get(0), w);
        for (Vec3 q : cells) {
            Rectangle2D box = box(p, q, w);
            if (p.frame().contains(box) && isFree(box)) {
                write(c, words, box);
                return;
            }
        }
        if (p.frame().contains(fallback)) {
            write(c, words, fallback);
        }
    }

    private static Rectangle2D box(SectionPainter.Place p, Vec3 at, double width) {
        return new Rectangle2D.Double(p.x(at) - width / 2 - 5, p.y(at) - 11, width + 10, 22);
    }

    private boolean isFree(Rectangle2D box) {
        return lines.stream().noneMatch(l -> l.intersects(box))
                && boxes.stream().noneMatch(b -> b.intersects(box));
    }

    private void write(Canvas c, String words, Rectangle2D box) throws IOException {
        boxes.add(box);
        c.fill(box, new Color(255, 255, 255, 225));
        c.text(words, box.getCenterX(), box.getCenterY() + 6, SIZE, Canvas.INK, Canvas.Align.CENTRE);
    }
}
