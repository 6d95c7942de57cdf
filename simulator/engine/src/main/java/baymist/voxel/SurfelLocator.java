package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.geom.Bvh;
import baymist.geom.Vec3;
import java.util.Arrays;

/**
 * Finds the surfel or the cell that belongs to a point on a sheet. Immutable; safe for many threads.
 */
public final class SurfelLocator {
    /** How far a search goes, cells. */
    private static final int REACH = 4;

    /** How far off a sheet a line of sight starts, pitches. */
    private static final double OFF = 1e-6;

    private final VoxelGrid grid;
    private final Bvh tree;
    private final ShortWays ways;
    private final SurfelSet surfels;
    /** Offsets into {@code inBin}: the surfels whose centroid lies in each lattice cell, [lattice cells + 1]. */
    private final int[] binStart;

    private final int[] inBin;
    /** Surfels of each opening's closure, [openings][..]. */
    private final int[][] ofOpening;

    /** First surfel of each cell, [cells + 1]; surfels are sorted by cell. */
    private final int[] firstOfCell;

    /** First and last lattice index along x that a cavity cell of each row has, [ny * nz]. */
    private final int[] rowFrom;

    private final int[] rowTo;

    private final double ox;
    private final double oy;
    private final double oz;
    private final double hx;
    private final double hy;
    private final double hz;

    private SurfelLocator(VoxelGrid grid, Bvh tree, int openings) {
        this.grid = grid;
        this.tree = tree;
        ways = new ShortWays(grid);
        surfels = grid.surfels();
        ox = grid.origin().x();
        oy = grid.origin().y();
        oz = grid.origin().z();
        hx = grid.sizeM().x();
        hy = grid.sizeM().y();
        hz = grid.sizeM().z();
        binStart = new int[grid.nx() * grid.ny() * grid.nz() + 1];
        int[] bin = new int[surfels.count()];
        for (int s = 0; s < bin.length; s++) {
            int i = clamp((surfels.centreX()[s] - ox) / hx, grid.nx());
            int j = clamp((surfels.centreY()[s] - oy) / hy, grid.ny());
            int k = clamp((surfels.centreZ()[s] - oz) / hz, grid.nz());
            bin[s] = i + grid.nx() * (j + grid.ny() * k);
            binStart[bin[s] + 1]++;
        }
        for (int b = 1; b < binStart.length; b++) {
            binStart[b] += binStart[b - 1];
        }
        inBin = new int[bin.length];
        int[] next = binStart.clone();
        for (int s = 0; s < bin.length; s++) {
            inBin[next[bin[s]]++] = s;
        }
        ofOpening = closuresByOpening(openings);
        firstOfCell = new int[grid.cellCount() + 1];
        for (int s = 0; s < bin.length; s++) {
            firstOfCell[surfels.cell()[s] + 1]++;
        }
        rowFrom = new int[grid.ny() * grid.nz()];
        rowTo = new int[rowFrom.length];
        Arrays.fill(rowFrom, Integer.MAX_VALUE);
        Arrays.fill(rowTo, -1);
        for (int c = 0; c < grid.cellCount(); c++) {
            firstOfCell[c + 1] += firstOfCell[c];
            int row = grid.j(c) + grid.ny() * grid.k(c);
            rowFrom[row] = Math.min(rowFrom[row], grid.i(c));
            rowTo[row] = Math.max(rowTo[row], grid.i(c));
        }
    }

    private static int clamp(double index, int count) {
        return Math.max(0, Math.min(count - 1, (int) Math.floor(index)));
    }

    private int[][] closuresByOpening(int openings) {
        IntList[] lists = new IntList[openings];
        for (int o = 0; o < openings; o++) {
            lists[o] = new IntList();
        }
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.closure()[s] >= 0) {
                lists[surfels.closure()[s]].add(s);
            }
        }
        int[][] closures = new int[openings][];
        for (int o = 0; o < openings; o++) {
            closures[o] = lists[o].toArray();
        }
        return closures;
    }

    public static SurfelLocator of(VoxelGrid grid, Cavity cavity) {
        return new SurfelLocator(
                grid, Bvh.of(cavity.sheets()), cavity.openings().size());
    }

    /**
     * Nearest surfel of a part whose normal agrees with {@code towardsAir} (positive dot product) and that bounds the air on that side
     * of the point, within some {@value #REACH} cells, else -1. The surfel's cell is joined to the cell of {@link #cellNear} by a {@link
     * ShortWays short way} that no sheet blocks, so that a surfel just behind a rib or baffle is never taken for one in front of it.
     */
    public int surfelNear(Vec3 point, int part, Vec3 towardsAir) {
        int nearest = search(point, part, -1, towardsAir);
        int air = cellNear(point, towardsAir);
        if (air < 0) {
            return nearest >= 0 && sees(point, towardsAir, nearest) ? nearest : -1;
        }
        if (nearest >= 0 && ways.joins(air, surfels.cell()[nearest])) {
            return nearest;
        }
        return onThisSide(point, part, towardsAir, air);
    }

    /** Nearest wanted surfel of the cells that short ways join to a cell. */
    private int onThisSide(Vec3 point, int part, Vec3 towardsAir, int air) {
        int best = -1;
        double nearest = Double.POSITIVE_INFINITY;
        for (int dk = -REACH; dk <= REACH; dk++) {
            for (int dj = -REACH; dj <= REACH; dj++) {
                for (int di = -REACH; di <= REACH; di++) {
                    int cell = grid.cellAt(grid.i(air) + di, grid.j(air) + dj, grid.k(air) + dk);
                    for (int s = cell < 0 ? 0 : firstOfCell[cell]; cell >= 0 && s < firstOfCell[cell + 1]; s++) {
                        boolean wanted = surfels.closure()[s] < 0 && surfels.part()[s] == part && agrees(s, towardsAir);
                        if (wanted && gap2(s, point) < nearest && ways.joins(air, cell)) {
                            nearest = gap2(s, point);
                            best = s;
                        }
                    }
                }
            }
        }
        return best;
    }

    /** Whether a point on a sheet sees a surfel's centre. */
    private boolean sees(Vec3 point, Vec3 towardsAir, int s) {
        double off = OFF * Math.min(hx, Math.min(hy, hz));
        Vec3 centre = new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]);
        Vec3 normal = new Vec3(surfels.normalX()[s], surfels.normalY()[s], surfels.normalZ()[s]);
        return new Sight(tree).clear(point.plus(off, towardsAir), centre.plus(off, normal));
    }

    /** Nearest closure surfel of an opening on the side of {@code towardsAir}, else -1. */
    public int closureNear(Vec3 point, int opening, Vec3 towardsAir) {
        int near = search(point, -1, opening, towardsAir);
        if (near >= 0) {
            return near;
        }
        // the opening may have been laid on faces farther off, where its own place was too thin
        double nearest = Double.POSITIVE_INFINITY;
        for (int s : ofOpening[opening]) {
            double gap = gap2(s, point);
            if (agrees(s, towardsAir) && gap < nearest) {
                nearest = gap;
                near = s;
            }
        }
        return near;
    }

    /** Grows cubes of bins round the point; ends when no centroid beyond the cube can be nearer than the best one. */
    private int search(Vec3 point, int part, int closure, Vec3 towardsAir) {
        double x = (point.x() - ox) / hx;
        double y = (point.y() - oy) / hy;
        double z = (point.z() - oz) / hz;
        int i = (int) Math.floor(x);
        int j = (int) Math.floor(y);
        int k = (int) Math.floor(z);
        double margin = Math.min(
                hx * Math.min(x - i, i + 1 - x),
                Math.min(hy * Math.min(y - j, j + 1 - y), hz * Math.min(z - k, k + 1 - z)));
        double step = Math.min(hx, Math.min(hy, hz));
        int best = -1;
        for (int ring = 0; ring <= REACH; ring++) {
            for (int kk = Math.max(0, k - ring); kk <= Math.min(grid.nz() - 1, k + ring); kk++) {
                for (int jj = Math.max(0, j - ring); jj <= Math.min(grid.ny() - 1, j + ring); jj++) {
                    int row = grid.nx() * (jj + grid.ny() * kk);
                    if (ring == 0 || Math.abs(kk - k) == ring || Math.abs(jj - j) == ring) {
                        best = nearer(row, i - ring, i + ring, point, part, closure, towardsAir, best);
                    } else {
                        best = nearer(row, i - ring, i - ring, point, part, closure, towardsAir, best);
                        best = nearer(row, i + ring, i + ring, point, part, closure, towardsAir, best);
                    }
                }
            }
            // a point on a plane of the lattice has no margin; one ring more then settles it
            double reached = margin + ring * step;
            if (best >= 0 && gap2(best, point) <= reached * reached) {
                return best;
            }
        }
        return best;
    }

    /** The nearest of {@code best} and the wanted surfels in a run of bins; ties go to the earlier one. */
    private int nearer(int row, int from, int to, Vec3 point, int part, int closure, Vec3 towardsAir, int best) {
        int first = Math.max(0, from);
        int last = Math.min(grid.nx() - 1, to);
        if (first > last) {
            return best;
        }
        int nearest = best;
        double gap = best < 0 ? Double.POSITIVE_INFINITY : gap2(best, point);
        for (int at = binStart[row + first]; at < binStart[row + last + 1]; at++) {
            int s = inBin[at];
            int own = surfels.closure()[s];
            boolean wanted = closure >= 0 ? own == closure : own < 0 && surfels.part()[s] == part;
            if (wanted && agrees(s, towardsAir)) {
                double g = gap2(s, point);
                if (g < gap) {
                    gap = g;
                    nearest = s;
                }
            }
        }
        return nearest;
    }

    private boolean agrees(int s, Vec3 d) {
        return surfels.normalX()[s] * d.x() + surfels.normalY()[s] * d.y() + surfels.normalZ()[s] * d.z() > 0;
    }

    private double gap2(int s, Vec3 p) {
        double x = surfels.centreX()[s] - p.x();
        double y = surfels.centreY()[s] - p.y();
        double z = surfels.centreZ()[s] - p.z();
        return x * x + y * y + z * z;
    }

    /**
     * Cavity cell on the air side of a point on a sheet: of those within {@value #REACH} cells whose centre lies on that
     * side of the sheet's plane and in sight of the point, no sheet between, the one that holds the point, else the
     * nearest; -1 if there is none. Centres on the sheet's plane count by the same shift of the lattice as the sheets
     * (docs/theory/voxels.md section 2). A cell beyond a second sheet is never returned.
     *
     * @param towardsAir unit normal of the sheet at the point, towards the air
     */
    public int cellNear(Vec3 point, Vec3 towardsAir) {
        int i = (int) Math.floor((point.x() - ox) / hx);
        int j = (int) Math.floor((point.y() - oy) / hy);
        int k = (int) Math.floor((point.z() - oz) / hz);
        Vec3 start = point.plus(OFF * Math.min(hx, Math.min(hy, hz)), towardsAir);
        Sight sight = new Sight(tree);
        int best = -1;
        double nearest = Double.POSITIVE_INFINITY;
        int last = REACH;
        for (int ring = 0; ring <= last; ring++) {
            for (int dk = -ring; dk <= ring; dk++) {
                for (int dj = -ring; dj <= ring; dj++) {
                    if (!holdsCells(j + dj, k + dk, i - ring, i + ring)) {
                        continue;
                    }
                    boolean shell = Math.abs(dk) == ring || Math.abs(dj) == ring;
                    for (int di = -ring; di <= ring; di += shell || ring == 0 ? 1 : 2 * ring) {
                        int cell = grid.cellAt(i + di, j + dj, k + dk);
                        if (cell < 0) {
                            continue;
                        }
                        double x = ox + (i + di + 0.5) * hx - point.x();
                        double y = oy + (j + dj + 0.5) * hy - point.y();
                        double z = oz + (k + dk + 0.5) * hz - point.z();
                        double gap = x * x + y * y + z * z;
                        if (gap < nearest && onAirSide(x, y, z, towardsAir) && sees(sight, start, cell)) {
                            nearest = gap;
                            best = cell;
                        }
                    }
                }
            }
            if (best >= 0 && ring == 0) {
                return best;
            }
            if (best >= 0 && last == REACH) {
                last = Math.min(REACH, ring + 1);
            }
        }
        return best;
    }

    /** Whether cavity cells may lie in a stretch of a row: most rows round a point outside of the cavity hold none. */
    private boolean holdsCells(int j, int k, int from, int to) {
        if (j < 0 || k < 0 || j >= grid.ny() || k >= grid.nz()) {
            return false;
        }
        int row = j + grid.ny() * k;
        return from <= rowTo[row] && to >= rowFrom[row];
    }

    private boolean sees(Sight sight, Vec3 start, int cell) {
        return sight.clear(start, aim(cell));
    }

    /** The cell's centre, moved off sheets of its own that pass through it ({@link Aim}). */
    private Vec3 aim(int cell) {
        Vec3 centre = grid.centre(cell);
        Vec3 aim = centre;
        double near = Aim.NEAR * Math.min(hx, Math.min(hy, hz));
        for (int s = firstOfCell[cell]; s < firstOfCell[cell + 1]; s++) {
            double x = centre.x() - surfels.centreX()[s];
            double y = centre.y() - surfels.centreY()[s];
            double z = centre.z() - surfels.centreZ()[s];
            double height = x * surfels.normalX()[s] + y * surfels.normalY()[s] + z * surfels.normalZ()[s];
            if (Math.abs(height) < near) {
                aim = aim.plus(near, new Vec3(surfels.normalX()[s], surfels.normalY()[s], surfels.normalZ()[s]));
            }
        }
        return aim;
    }

    private boolean onAirSide(double x, double y, double z, Vec3 d) {
        double height = x * d.x() + y * d.y() + z * d.z();
        double rounding = 1e-9 * (hx * Math.abs(d.x()) + hy * Math.abs(d.y()) + hz * Math.abs(d.z()));
        if (Math.abs(height) > rounding) {
            return height > 0;
        }
        return d.x() != 0 ? d.x() > 0 : d.y() != 0 ? d.y() > 0 : d.z() >= 0;
    }
}
