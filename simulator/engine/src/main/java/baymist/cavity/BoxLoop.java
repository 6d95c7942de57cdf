package baymist.cavity;

import baymist.scene.BoxSectionSpec;
import baymist.scene.BoxSectionSpec.Plate;
import baymist.scene.BoxSectionSpec.Wall;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The section of a box in its own plane: a to the right, b up, m, about the middle of the width at half of the height.
 * Counter-clockwise: bottom, right wall, top, left wall.
 */
final class BoxLoop {
    /** A corner, or the place where a plate meets a wall; {@code wall} begins here. */
    record Point(double a, double b, Wall wall) {}

    private final double[][] corners;
    private final List<Point> points = new ArrayList<>();

    BoxLoop(BoxSectionSpec shape) {
        double h = shape.heightM() / 2;
        double top = shape.topM() / 2;
        double bottom = shape.bottomM() / 2;
        corners = new double[][] {{-bottom, -h}, {bottom, -h}, {top, h}, {-top, h}};
        for (Wall wall : Wall.values()) {
            List<Point> here = new ArrayList<>();
            here.add(new Point(start(wall)[0], start(wall)[1], wall));
            for (Plate p : shape.plates()) {
                if (p.widthM() == 0 && p.wall() != wall && plateWidthM(p.wall(), p.gapM()) > 0) {
                    for (double[] q : plate(p.wall(), p.gapM(), 0)) {
                        double way = along(wall, q);
                        if (Math.abs(off(wall, q)) < 1e-9 && way > 1e-9 && way < length(wall) - 1e-9) {
                            here.add(new Point(q[0], q[1], wall));
                        }
                    }
                }
            }
            here.sort(Comparator.comparingDouble(p -> along(p.wall(), new double[] {p.a(), p.b()})));
            Point before = null;
            for (Point p : here) {
                if (before == null || Math.hypot(p.a() - before.a(), p.b() - before.b()) > 1e-9) {
                    points.add(p);
                    before = p;
                }
            }
        }
    }

    private double[] start(Wall wall) {
        return corners[wall.side()];
    }

    private double[] direction(Wall wall) {
        double[] a = start(wall);
        double[] b = corners[(wall.side() + 1) % 4];
        double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
        return new double[] {(b[0] - a[0]) / length, (b[1] - a[1]) / length};
    }

    private double length(Wall wall) {
        double[] a = start(wall);
        double[] b = corners[(wall.side() + 1) % 4];
        return Math.hypot(b[0] - a[0], b[1] - a[1]);
    }

    private double along(Wall wall, double[] q) {
        double[] d = direction(wall);
        return d[0] * (q[0] - start(wall)[0]) + d[1] * (q[1] - start(wall)[1]);
    }

    private double off(Wall wall, double[] q) {
        double[] n = inward(wall);
        return n[0] * (q[0] - start(wall)[0]) + n[1] * (q[1] - start(wall)[1]);
    }

    /** Corners and places where plates meet walls, in turn. */
    List<Point> points() {
        return points;
    }

    /** The four corners. */
    List<double[]> corners() {
        return List.of(corners);
    }

    /** Unit vector from a wall into the section. */
    double[] inward(Wall wall) {
        double[] d = direction(wall);
        return new double[] {-d[1], d[0]};
    }

    /** Unit vector across a wall: to the right on top and bottom, up on the side walls. */
    double[] across(Wall wall) {
        double[] d = direction(wall);
        boolean turned = wall == Wall.TOP || wall == Wall.LEFT;
        return turned ? new double[] {-d[0], -d[1]} : d;
    }

    /** A point of a wall at a distance from its middle. */
    double[] onWall(Wall wall, double acrossM) {
        double[] a = start(wall);
        double[] b = corners[(wall.side() + 1) % 4];
        double[] d = across(wall);
        return new double[] {(a[0] + b[0]) / 2 + acrossM * d[0], (a[1] + b[1]) / 2 + acrossM * d[1]};
    }

    /** Width of the section at a gap off a wall; 0 or less where there is none. */
    double plateWidthM(Wall wall, double gapM) {
        double[] range = range(wall, gapM);
        return range[1] - range[0];
    }

    /** Ends of a plate: its line off the wall, clipped by the other walls, and narrowed about its middle. */
    double[][] plate(Wall wall, double gapM, double widthM) {
        double[] range = range(wall, gapM);
        double middle = 0.5 * (range[0] + range[1]);
        double from = widthM > 0 ? middle - widthM / 2 : range[0];
        double to = widthM > 0 ? middle + widthM / 2 : range[1];
        double[] d = direction(wall);
        double[] n = inward(wall);
        double[] o = {start(wall)[0] + gapM * n[0], start(wall)[1] + gapM * n[1]};
        return new double[][] {{o[0] + from * d[0], o[1] + from * d[1]}, {o[0] + to * d[0], o[1] + to * d[1]}};
    }

    private double[] range(Wall wall, double gapM) {
        double[] d = direction(wall);
        double[] n = inward(wall);
        double[] o = {start(wall)[0] + gapM * n[0], start(wall)[1] + gapM * n[1]};
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        for (Wall other : Wall.values()) {
            if (other == wall) {
                continue;
            }
            double[] m = inward(other);
            double height = off(other, o);
            double slope = m[0] * d[0] + m[1] * d[1];
            if (Math.abs(slope) < 1e-12) {
                high = height < 0 ? low : high;
            } else if (slope > 0) {
                low = Math.max(low, -height / slope);
            } else {
                high = Math.min(high, -height / slope);
            }
        }
        return new double[] {low, high};
    }
}
