package baymist.voxel;

import baymist.cavity.Opening;
import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;
import java.util.List;

/**
 * Shadow of an opening on the lattice along its dominant axis: the exact overlap with each lattice column.
 *
 * <p>The outline's polygon (area-matched) is projected along the axis on which its normal has the largest component and
 * clipped to the columns. The outermost columns reach to infinity, so nothing is lost.
 */
final class OpeningFootprint {
    /** Chords that a full circle gets. */
    static final int SEGMENTS = 96;

    /** Axis of projection, and the two others ascending. */
    final int axis;

    final int axisB;
    final int axisC;
    /** First and last column along b and c that the shadow overlaps. */
    final int firstB;

    final int lastB;
    final int firstC;
    final int lastC;
    private final double[] overlap;
    private final PlacedOutline place;

    OpeningFootprint(Opening opening, Lattice lattice) {
        place = opening.place();
        axis = dominantAxis(place.normal());
        axisB = axis == 0 ? 1 : 0;
        axisC = axis == 2 ? 1 : 2;
        double[] shadow = project(place.outline());
        double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (int p = 0; p < shadow.length; p++) {
            low[p & 1] = Math.min(low[p & 1], shadow[p]);
            high[p & 1] = Math.max(high[p & 1], shadow[p]);
        }
        Vec3 centre = place.centreM();
        firstB = lattice.locate(axisB, low[0] + centre.get(axisB));
        lastB = lattice.locate(axisB, high[0] + centre.get(axisB));
        firstC = lattice.locate(axisC, low[1] + centre.get(axisC));
        lastC = lattice.locate(axisC, high[1] + centre.get(axisC));
        overlap = clip(lattice, shadow, centre);
    }

    /** Axis of the largest component; on a tie the first. */
    static int dominantAxis(Vec3 n) {
        int best = 0;
        for (int a = 1; a < 3; a++) {
            if (Math.abs(n.get(a)) > Math.abs(n.get(best)) * (1 + 1e-9)) {
                best = a;
            }
        }
        return best;
    }

    /** Shadow's corners relative to the centre, counter-clockwise in (b, c), m. */
    private double[] project(Outline outline) {
        List<double[]> polygon = outline.polygon(SEGMENTS);
        double[] shadow = new double[2 * polygon.size()];
        for (int p = 0; p < polygon.size(); p++) {
            double u = polygon.get(p)[0];
            double v = polygon.get(p)[1];
            shadow[2 * p] = u * place.uAxis().get(axisB) + v * place.vAxis().get(axisB);
            shadow[2 * p + 1] = u * place.uAxis().get(axisC) + v * place.vAxis().get(axisC);
        }
        return shadow;
    }

    private double[] clip(Lattice lattice, double[] shadow, Vec3 centre) {
        double[] areas = new double[columns()];
        for (int c = firstC; c <= lastC; c++) {
            double[] row =
                    ColumnClip.slab(shadow, 1, edge(lattice, axisC, c, centre), edge(lattice, axisC, c + 1, centre));
            for (int b = firstB; b <= lastB; b++) {
                double[] cell =
                        ColumnClip.slab(row, 0, edge(lattice, axisB, b, centre), edge(lattice, axisB, b + 1, centre));
                areas[column(b, c)] = Math.abs(ColumnClip.area(cell));
            }
        }
        return areas;
    }

    private static double edge(Lattice lattice, int axis, int plane, Vec3 centre) {
        if (plane <= 0) {
            return Double.NEGATIVE_INFINITY;
        }
        return plane >= lattice.count(axis) ? Double.POSITIVE_INFINITY : lattice.plane(axis, plane) - centre.get(axis);
    }

    int columns() {
        return (lastB - firstB + 1) * (lastC - firstC + 1);
    }

    private int column(int b, int c) {
        return b - firstB + (lastB - firstB + 1) * (c - firstC);
    }

    /** Overlap of the shadow with a column, m². */
    double overlapM2(int b, int c) {
        return overlap[column(b, c)];
    }

    /** Height of the opening's plane along the axis at a point of the two other axes, m. */
    double planeAt(double b, double c) {
        Vec3 n = place.normal();
        Vec3 o = place.centreM();
        return o.get(axis) - (n.get(axisB) * (b - o.get(axisB)) + n.get(axisC) * (c - o.get(axisC))) / n.get(axis);
    }
}
