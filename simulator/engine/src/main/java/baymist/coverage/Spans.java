package baymist.coverage;

import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;

/** Measures where some surfels lie on the surface that they belong to. */
final class Spans {
    private final VoxelGrid grid;
    private final SurfelSet surfels;
    private final Ends ends;

    Spans(VoxelGrid grid, Ends ends) {
        this.grid = grid;
        this.surfels = grid.surfels();
        this.ends = ends;
    }

    /**
     * The span of {@code region} on {@code surface} along each axis asked for.
     *
     * @param region surfels of one part
     * @param surface all surfels of that part's face in the bays concerned
     */
    Span[] along(int[] region, int[] surface, int part, int... axes) {
        Span[] spans = new Span[axes.length];
        for (int i = 0; i < axes.length; i++) {
            spans[i] = along(region, surface, part, axes[i]);
        }
        return spans;
    }

    private Span along(int[] region, int[] surface, int part, int axis) {
        double[] whole = range(surface, axis);
        double[] own = range(region, axis);
        Ends.Member low = ends.find(surface, part, axis, false);
        Ends.Member high = ends.find(surface, part, axis, true);
        double length = Math.max(whole[1] - whole[0], Double.MIN_NORMAL);
        double cell = grid.sizeM().get(axis);
        boolean touchesLow = low == null ? own[0] - whole[0] < cell : ends.touches(region, part, low, axis, false);
        boolean touchesHigh = high == null ? whole[1] - own[1] < cell : ends.touches(region, part, high, axis, true);
        return new Span(
                axis,
                own[0],
                own[1],
                (own[0] - whole[0]) / length,
                (own[1] - whole[0]) / length,
                (mean(region, axis) - whole[0]) / length,
                low,
                high,
                touchesLow,
                touchesHigh);
    }

    /** Share of the surface within the region's extents that is the region's, 0..1. */
    double filled(int[] region, int[] surface, Span[] spans) {
        double within = 0;
        for (int s : surface) {
            boolean inside = true;
            for (Span span : spans) {
                double x = coordinate(s, span.axis());
                inside &= x >= span.lowM() && x <= span.highM();
            }
            within += inside ? surfels.areaM2()[s] : 0;
        }
        double own = 0;
        for (int s : region) {
            own += surfels.areaM2()[s];
        }
        return within > 0 ? Math.min(1, own / within) : 1;
    }

    /** Extent along an axis, half a cell beyond the outermost centres where the surfel lies along the axis. */
    private double[] range(int[] of, int axis) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int s : of) {
            double n = normal(s, axis);
            double half = 0.5 * grid.sizeM().get(axis) * Math.sqrt(Math.max(0, 1 - n * n));
            low = Math.min(low, coordinate(s, axis) - half);
            high = Math.max(high, coordinate(s, axis) + half);
        }
        return new double[] {low, high};
    }

    private double mean(int[] of, int axis) {
        double sum = 0;
        double area = 0;
        for (int s : of) {
            sum += surfels.areaM2()[s] * coordinate(s, axis);
            area += surfels.areaM2()[s];
        }
        return area > 0 ? sum / area : coordinate(of[0], axis);
    }

    double normal(int s, int axis) {
        return axis == 0 ? surfels.normalX()[s] : axis == 1 ? surfels.normalY()[s] : surfels.normalZ()[s];
    }

    double coordinate(int s, int axis) {
        return axis == 0 ? surfels.centreX()[s] : axis == 1 ? surfels.centreY()[s] : surfels.centreZ()[s];
    }
}
