package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;

/**
 * Finds the surfel or the cell that belongs to a point on a sheet. Immutable; safe for many threads; allocates nothing.
 */
public final class SurfelLocator {
    /** How far a search goes, cells. */
    private static final int REACH = 4;

    private final VoxelGrid grid;
    private final SurfelSet surfels;
    /** First surfel of each cavity cell, [cells + 1]. */
    private final int[] start;
    /** Surfels of each opening's closure, [openings][..]. */
    private final int[][] ofOpening;

    private final double ox;
    private final double oy;
    private final double oz;
    private final double hx;
    private final double hy;
    private final double hz;

    private SurfelLocator(VoxelGrid grid, int openings) {
        this.grid = grid;
        surfels = grid.surfels();
        start = new int[grid.cellCount() + 1];
        IntList[] lists = new IntList[openings];
        for (int o = 0; o < openings; o++) {
            lists[o] = new IntList();
        }
        for (int s = 0; s < surfels.count(); s++) {
            start[surfels.cell()[s] + 1]++;
            if (surfels.closure()[s] >= 0) {
                lists[surfels.closure()[s]].add(s);
            }
        }
        for (int c = 0; c < grid.cellCount(); c++) {
            start[c + 1] += start[c];
        }
        ofOpening = new int[openings][];
        for (int o = 0; o < openings; o++) {
            ofOpening[o] = lists[o].toArray();
        }
        ox = grid.origin().x();
        oy = grid.origin().y();
        oz = grid.origin().z();
        hx = grid.sizeM().x();
        hy = grid.sizeM().y();
        hz = grid.sizeM().z();
    }

    public static SurfelLocator of(VoxelGrid grid, Cavity cavity) {
        return new SurfelLocator(grid, cavity.openings().size());
    }

    /**
     * Nearest surfel of a part whose normal agrees with {@code towardsAir} (positive dot product), within some
     * {@value #REACH} cells of the point's cell, else -1.
     */
    public int surfelNear(Vec3 point, int part, Vec3 towardsAir) {
        return search(point, part, -1, towardsAir);
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

    private int search(Vec3 point, int part, int closure, Vec3 towardsAir) {
        int i = (int) Math.floor((point.x() - ox) / hx);
        int j = (int) Math.floor((point.y() - oy) / hy);
        int k = (int) Math.floor((point.z() - oz) / hz);
        int best = -1;
        double nearest = Double.POSITIVE_INFINITY;
        int last = REACH;
        for (int ring = 0; ring <= last; ring++) {
            for (int dk = -ring; dk <= ring; dk++) {
                for (int dj = -ring; dj <= ring; dj++) {
                    boolean shell = Math.abs(dk) == ring || Math.abs(dj) == ring;
                    for (int di = -ring; di <= ring; di += shell || ring == 0 ? 1 : 2 * ring) {
                        int cell = grid.cellAt(i + di, j + dj, k + dk);
                        for (int s = cell < 0 ? 0 : start[cell]; cell >= 0 && s < start[cell + 1]; s++) {
                            boolean wanted =
                                    surfels.closure()[s] == closure && (closure >= 0 || surfels.part()[s] == part);
                            double gap = wanted && agrees(s, towardsAir) ? gap2(s, point) : Double.POSITIVE_INFINITY;
                            if (gap < nearest) {
                                nearest = gap;
                                best = s;
                            }
                        }
                    }
                }
            }
            // a surfel's centroid may lie one cell off its cell: one ring beyond the first hit settles it
            if (best >= 0 && last == REACH) {
                last = Math.min(REACH, ring + 1);
            }
        }
        return best;
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
     * Cavity cell on the air side of a point on a sheet: the cell that holds the point if its centre lies on that side,
     * else the nearest within {@value #REACH} cells whose centre does; -1 if there is none. Centres on the sheet's plane
     * count by the same shift of the lattice as the sheets (docs/theory/voxels.md section 2).
     *
     * @param towardsAir normal of the sheet at the point, towards the air
     */
    public int cellNear(Vec3 point, Vec3 towardsAir) {
        int i = (int) Math.floor((point.x() - ox) / hx);
        int j = (int) Math.floor((point.y() - oy) / hy);
        int k = (int) Math.floor((point.z() - oz) / hz);
        int best = -1;
        double nearest = Double.POSITIVE_INFINITY;
        int last = REACH;
        for (int ring = 0; ring <= last; ring++) {
            for (int dk = -ring; dk <= ring; dk++) {
                for (int dj = -ring; dj <= ring; dj++) {
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
                        if (gap < nearest && onAirSide(x, y, z, towardsAir)) {
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

    private boolean onAirSide(double x, double y, double z, Vec3 d) {
        double height = x * d.x() + y * d.y() + z * d.z();
        double rounding = 1e-9 * (hx * Math.abs(d.x()) + hy * Math.abs(d.y()) + hz * Math.abs(d.z()));
        if (Math.abs(height) > rounding) {
            return height > 0;
        }
        return d.x() != 0 ? d.x() > 0 : d.y() != 0 ? d.y() > 0 : d.z() >= 0;
    }
}
