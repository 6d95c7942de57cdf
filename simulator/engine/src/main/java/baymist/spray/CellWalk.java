package baymist.spray;

import baymist.geom.Vec3;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * Cavity cells along a straight line that crosses no sheet (Amanatides and Woo 1987).
 *
 * <p>The exact sheet lies up to half a voxel from the blocked faces that stand for it, so the line may enter a lattice cell
 * that belongs to the air behind a sheet. The walk then stays with the cells of its own side: it follows the line's moves
 * only across faces that no sheet blocks, and falls back in step as soon as the cell that holds the line is a free neighbour
 * of the one it is in.
 */
final class CellWalk {
    private final VoxelGrid grid;
    private int[] cell = new int[64];
    private double[] endM = new double[64];
    private int count;

    CellWalk(VoxelGrid grid) {
        this.grid = grid;
    }

    /** Number of pieces. */
    int count() {
        return count;
    }

    /** Cavity cell of a piece, or -1 outside. */
    int cell(int piece) {
        return cell[piece];
    }

    /** Distance along the line at which a piece begins, m. */
    double startM(int piece) {
        return piece == 0 ? firstM : endM[piece - 1];
    }

    /** Distance along the line at which a piece ends, m. */
    double endM(int piece) {
        return endM[piece];
    }

    private double firstM;

    /** Forgets the pieces; the next line begins at {@code startM}. */
    void clear(double startM) {
        count = 0;
        firstM = startM;
    }

    /** Piece that holds the distance; the last one beyond the end, -1 without pieces. */
    int pieceAt(double distanceM) {
        int at = Arrays.binarySearch(endM, 0, count, distanceM);
        return Math.min(at < 0 ? -at - 1 : at, count - 1);
    }

    /** Cell of the last piece, or -1. */
    int lastCell() {
        return count == 0 ? -1 : cell[count - 1];
    }

    /**
     * Adds the stretch from {@code fromM} to {@code toM} of a line.
     *
     * @param startCell cavity cell that holds its beginning on the right side of any sheet, or -1 if none
     */
    void add(Vec3 origin, Vec3 direction, double fromM, double toM, int startCell) {
        double[] next = new double[3];
        double[] per = new double[3];
        int[] at = new int[3];
        int[] step = new int[3];
        for (int a = 0; a < 3; a++) {
            double size = grid.sizeM().get(a);
            double d = direction.get(a);
            double position = (origin.get(a) + fromM * d - grid.origin().get(a)) / size;
            at[a] = (int) Math.floor(position);
            step[a] = d > 0 ? 1 : -1;
            per[a] = d == 0 ? Double.POSITIVE_INFINITY : size / Math.abs(d);
            double share = d > 0 ? at[a] + 1 - position : position - at[a];
            next[a] = d == 0 ? Double.POSITIVE_INFINITY : fromM + share * per[a];
        }
        int here = startCell >= 0 ? startCell : grid.cellAt(at[0], at[1], at[2]);
        while (true) {
            int a = next[0] <= next[1] && next[0] <= next[2] ? 0 : next[1] <= next[2] ? 1 : 2;
            if (next[a] >= toM) {
                push(here, toM);
                return;
            }
            push(here, next[a]);
            next[a] += per[a];
            at[a] += step[a];
            here = moved(here, 2 * a + (step[a] > 0 ? 1 : 0), grid.cellAt(at[0], at[1], at[2]));
        }
    }

    private int moved(int here, int direction, int holding) {
        if (here < 0 || here == holding) {
            return holding;
        }
        int ahead = grid.neighbour(here, direction);
        if (holding >= 0 && ahead != holding) {
            for (int e = 0; e < 6; e++) {
                if (grid.neighbour(here, e) == holding) {
                    return holding;
                }
            }
        }
        return ahead >= 0 ? ahead : here;
    }

    private void push(int c, double end) {
        if (count > 0 && cell[count - 1] == c) {
            endM[count - 1] = end;
            return;
        }
        if (count == cell.length) {
            cell = Arrays.copyOf(cell, 2 * count);
            endM = Arrays.copyOf(endM, 2 * count);
        }
        cell[count] = c;
        endM[count++] = end;
    }
}
