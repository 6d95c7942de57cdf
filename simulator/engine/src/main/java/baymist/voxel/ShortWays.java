package baymist.voxel;

/**
 * Tells whether two cells near each other lie on the same side of every sheet between them: whether one of the shortest ways along the
 * lattice joins them without crossing a blocked face or an opening.
 *
 * <p>Cells on one side of a flat sheet, however it slopes, are joined so: of the steps of a shortest way those that lead off the sheet
 * are taken first. Cells on either side of a sheet's free edge are not, since the way round the edge is longer. Immutable.
 */
final class ShortWays {
    private final VoxelGrid grid;

    ShortWays(VoxelGrid grid) {
        this.grid = grid;
    }

    /** Whether a shortest way of open faces joins two cavity cells. */
    boolean joins(int from, int to) {
        int di = grid.i(to) - grid.i(from);
        int dj = grid.j(to) - grid.j(from);
        int dk = grid.k(to) - grid.k(from);
        int ni = Math.abs(di) + 1;
        int nj = Math.abs(dj) + 1;
        int nk = Math.abs(dk) + 1;
        // reached[a + ni * (b + nj * c)]: the cell a, b, c steps towards the other one, if some way leads there
        int[] reached = new int[ni * nj * nk];
        for (int n = 0; n < reached.length; n++) {
            int a = n % ni;
            int b = n / ni % nj;
            int c = n / (ni * nj);
            int cell = n == 0 ? from : -1;
            if (a > 0 && cell < 0) {
                cell = step(reached[n - 1], di > 0 ? 1 : 0);
            }
            if (b > 0 && cell < 0) {
                cell = step(reached[n - ni], dj > 0 ? 3 : 2);
            }
            if (c > 0 && cell < 0) {
                cell = step(reached[n - ni * nj], dk > 0 ? 5 : 4);
            }
            reached[n] = cell;
        }
        return reached[reached.length - 1] == to;
    }

    private int step(int cell, int direction) {
        return cell < 0 ? -1 : grid.neighbour(cell, direction);
    }
}
