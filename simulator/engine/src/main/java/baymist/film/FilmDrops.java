package baymist.film;

import baymist.geom.Vec3;
import baymist.scene.ProductSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * Drops that hang below ceilings and fall: which surfels can drip, how fast, and what lies below them. Immutable.
 */
final class FilmDrops {
    /** Where a drop lands if nothing is below it: it goes out of the cavity. */
    static final int OUT = -1;

    /** Where a drop lands if the grid does not know: it stays. */
    static final int NOWHERE = -2;

    private final VoxelGrid grid;
    private final ProductSpec product;
    private final FilmEdges edges;

    /** Surfels that face down, ascending. */
    private final int[] ceilings;

    /** Component of gravity into the air at each of them, m/s². */
    private final double[] pull;

    /** Largest surfel on the lower side of each cell, sheet and closure, or -1, [cells]. */
    private final int[] sheetBelow;

    private final int[] closureBelow;
    private final int downwards;

    FilmDrops(VoxelGrid grid, ProductSpec product, Vec3 gravity, FilmEdges edges) {
        this.grid = grid;
        this.product = product;
        this.edges = edges;
        SurfelSet f = grid.surfels();
        int axis = 0;
        for (int a = 1; a < 3; a++) {
            axis = Math.abs(gravity.get(a)) > Math.abs(gravity.get(axis)) ? a : axis;
        }
        downwards = 2 * axis + (gravity.get(axis) > 0 ? 1 : 0);
        sheetBelow = new int[grid.cellCount()];
        closureBelow = new int[grid.cellCount()];
        Arrays.fill(sheetBelow, -1);
        Arrays.fill(closureBelow, -1);
        int[] facing = new int[f.count()];
        double[] pulls = new double[f.count()];
        int count = 0;
        for (int s = 0; s < f.count(); s++) {
            int[] of = f.closure()[s] < 0 ? sheetBelow : closureBelow;
            int cell = f.cell()[s];
            if (f.direction()[s] == downwards && (of[cell] < 0 || f.areaM2()[s] > f.areaM2()[of[cell]])) {
                of[cell] = s;
            }
            double away = f.normalX()[s] * gravity.x() + f.normalY()[s] * gravity.y() + f.normalZ()[s] * gravity.z();
            if (f.closure()[s] < 0 && away > FilmRuns.LEVEL * gravity.length()) {
                facing[count] = s;
                pulls[count++] = away;
            }
        }
        ceilings = Arrays.copyOf(facing, count);
        pull = Arrays.copyOf(pulls, count);
    }

    /** Lets drops fall for a time; the exact exponential, so any length of step is safe. */
    void fall(FilmState film, FilmSettings settings, double[] openFraction, double stepS) {
        for (int i = 0; i < ceilings.length; i++) {
            int s = ceilings[i];
            double build = film.wetBuildM(s);
            if (build <= settings.residualM()) {
                continue;
            }
            double growth = FilmFormulas.hangingGrowthPerS(
                    build, product.viscosityPaS(), product.surfaceTensionNPerM(), product.densityKgPerM3(), pull[i]);
            double share = -Math.expm1(-growth * stepS / settings.growthTimes());
            double massKg = film.massKg(s) * (1 - settings.residualM() / build) * share;
            int target = below(grid.surfels().cell()[s], openFraction);
            if (target != NOWHERE && massKg > 0) {
                film.move(s, target, massKg);
                film.fallenKg += target == OUT ? 0 : massKg;
            }
        }
    }

    /** Surfel that a drop from this cell lands on, going down cell by cell along the axis nearest to gravity. */
    private int below(int cell, double[] openFraction) {
        int at = cell;
        while (true) {
            int next = grid.neighbour(at, downwards);
            if (next < 0) {
                int sheet = sheetBelow[at];
                int closure = closureBelow[at];
                boolean onClosure = closure >= 0 && (sheet < 0 || largerThan(closure, sheet));
                if (!onClosure) {
                    return sheet >= 0 ? sheet : NOWHERE;
                }
                int opening = grid.surfels().closure()[closure];
                if (openFraction[opening] < 0.5) {
                    return closure;
                }
                if (edges.vented(opening)) {
                    return OUT;
                }
                next = beyond(at);
                if (next < 0) {
                    return NOWHERE;
                }
            }
            at = next;
        }
    }

    private boolean largerThan(int surfel, int other) {
        return grid.surfels().areaM2()[surfel] > grid.surfels().areaM2()[other];
    }

    /** Cell on the other side of an open hole below. */
    private int beyond(int cell) {
        int[] at = {grid.i(cell), grid.j(cell), grid.k(cell)};
        at[downwards / 2] += downwards % 2 == 0 ? -1 : 1;
        return grid.cellAt(at[0], at[1], at[2]);
    }
}
