package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;

/**
 * Hands one piece of sheet, front and back, to the views that face it.
 *
 * <p>First the blocked faces of the piece's own lattice cell are asked: each has a view from either side, and those that
 * see the piece's part from the piece's side share its area in proportion to |n.e| times the lattice face (on a plane each
 * face then ends up with its face area times |n.e|). Where the own cell has none, a piece that another sheet lies on is
 * hidden; otherwise the nearest view among the 26 cells round it takes all. One sharer serves one thread.
 */
final class PieceSharer {
    private final Cavity cavity;
    private final Lattice lattice;
    private final BlockedFaces blocked;
    private final CavityCells cells;
    private final SheetOrientation sheets;

    private final int[] ownView = new int[6];
    private final double[] ownWeight = new double[6];

    private int part;
    private boolean consistent;
    private double nx;
    private double ny;
    private double nz;

    PieceSharer(Cavity cavity, Lattice lattice, BlockedFaces blocked, CavityCells cells, SheetOrientation sheets) {
        this.cavity = cavity;
        this.lattice = lattice;
        this.blocked = blocked;
        this.cells = cells;
        this.sheets = sheets;
    }

    void startTriangle(int partIndex, Vec3 normal) {
        part = partIndex;
        consistent = sheets.consistent(partIndex);
        nx = normal.x();
        ny = normal.y();
        nz = normal.z();
    }

    /** Adds the shares of both sides of a piece. */
    void share(AreaShares out, int piece, int latticeCell, double area, double x, double y, double z) {
        for (int side = 0; side < 2; side++) {
            if (side == sheets.withinItem(part)) {
                out.addShare(piece, side, AreaShares.OUTSIDE, area);
            } else if (!shareInOwnCell(out, piece, side, latticeCell, area)) {
                int target =
                        isCovered(latticeCell, side) ? AreaShares.HIDDEN : nearestAround(latticeCell, side, x, y, z);
                out.addShare(piece, side, target, area);
            }
        }
    }

    private boolean shareInOwnCell(AreaShares out, int piece, int side, int latticeCell, double area) {
        int found = 0;
        double total = 0;
        for (int d = 0; d < 6; d++) {
            int slot = blocked.slot(lattice.faceKey(latticeCell, d));
            if (slot < 0) {
                continue;
            }
            for (int view = 2 * slot; view <= 2 * slot + 1; view++) {
                if (sees(view, slot, side) && cells.kind(cellOf(view, slot)) != CavityCells.Kind.POCKET) {
                    int axis = blocked.axis(slot);
                    ownView[found] = view;
                    ownWeight[found] = Math.abs(sheets.normal(blocked.triangle(view), axis)) * lattice.faceAreaM2(axis);
                    total += ownWeight[found++];
                    break;
                }
            }
        }
        for (int i = 0; i < found; i++) {
            int view = ownView[i];
            boolean mine = cells.kind(cellOf(view, view >> 1)) == CavityCells.Kind.CAVITY;
            out.addShare(piece, side, mine ? view : AreaShares.OUTSIDE, area * (ownWeight[i] / total));
        }
        return found > 0;
    }

    /** Whether, in the piece's own cell, another part lies on this side of it, closer than the two gauges. */
    private boolean isCovered(int latticeCell, int side) {
        for (int d = 0; d < 6; d++) {
            int slot = blocked.slot(lattice.faceKey(latticeCell, d));
            for (int view = 2 * slot; slot >= 0 && view <= 2 * slot + 1; view++) {
                int other = cavity.partOfSheet(blocked.triangle(view ^ 1));
                if (other >= 0 && other != part && sees(view, slot, 1 - side)) {
                    double gauges = cavity.parts().get(part).gaugeM()
                            + cavity.parts().get(other).gaugeM();
                    double apart = blocked.spread(slot) * lattice.pitchM(blocked.axis(slot));
                    if (apart <= BlockedFaces.TOUCHING_M + gauges) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private int cellOf(int view, int slot) {
        int low = blocked.lowCell(slot);
        return (view & 1) == 0 ? low : low + lattice.stride(blocked.axis(slot));
    }

    /** Whether the view shows the current part from the given side. */
    private boolean sees(int view, int slot, int side) {
        int triangle = blocked.triangle(view);
        if (cavity.partOfSheet(triangle) != part) {
            return false;
        }
        double along = sheets.normal(triangle, blocked.axis(slot));
        // the low cell looks along the axis: it sees the front where the normal points back at it
        boolean front = (view & 1) == 0 ? along < 0 : along > 0;
        double alike = sheets.dot(triangle, nx, ny, nz);
        boolean wantFront = side == 0;
        return consistent ? alike > 0 && front == wantFront : alike > 0 == (front == wantFront) && alike != 0;
    }

    /** Squared distances to the nearest views of each kind, and the nearest one from a cavity cell. */
    private static final class Nearest {
        double cavity = Double.POSITIVE_INFINITY;
        double outside = Double.POSITIVE_INFINITY;
        double pocket = Double.POSITIVE_INFINITY;
        int view = -1;

        void offer(CavityCells.Kind kind, int candidate, double gap) {
            switch (kind) {
                case CAVITY -> {
                    view = gap < cavity ? candidate : view;
                    cavity = Math.min(cavity, gap);
                }
                case OUTSIDE -> outside = Math.min(outside, gap);
                case POCKET -> pocket = Math.min(pocket, gap);
            }
        }

        int verdict() {
            if (view >= 0 && cavity <= outside) {
                return view;
            }
            if (Double.isInfinite(outside) && Double.isInfinite(pocket)) {
                return AreaShares.UNKNOWN;
            }
            return pocket < outside ? AreaShares.HIDDEN : AreaShares.OUTSIDE;
        }
    }

    private int nearestAround(int latticeCell, int side, double x, double y, double z) {
        Nearest nearest = new Nearest();
        int i0 = lattice.at(latticeCell, 0);
        int j0 = lattice.at(latticeCell, 1);
        int k0 = lattice.at(latticeCell, 2);
        for (int k = Math.max(0, k0 - 1); k <= Math.min(lattice.count(2) - 1, k0 + 1); k++) {
            for (int j = Math.max(0, j0 - 1); j <= Math.min(lattice.count(1) - 1, j0 + 1); j++) {
                for (int i = Math.max(0, i0 - 1); i <= Math.min(lattice.count(0) - 1, i0 + 1); i++) {
                    offerSides(lattice.index(i, j, k), side, x, y, z, nearest);
                }
            }
        }
        return nearest.verdict();
    }

    private void offerSides(int cell, int side, double x, double y, double z, Nearest nearest) {
        for (int d = 0; d < 6; d++) {
            int slot = blocked.slot(lattice.faceKey(cell, d));
            for (int view = 2 * slot; slot >= 0 && view <= 2 * slot + 1; view++) {
                if (sees(view, slot, side)) {
                    nearest.offer(cells.kind(cellOf(view, slot)), view, gap2(view, slot, x, y, z));
                }
            }
        }
    }

    /** Squared distance from a point to the place where a face's segment meets the sheet. */
    private double gap2(int view, int slot, double x, double y, double z) {
        int low = blocked.lowCell(slot);
        int axis = blocked.axis(slot);
        double step = blocked.position(view) * lattice.pitchM(axis);
        double dx = lattice.centre(0, lattice.at(low, 0)) + (axis == 0 ? step : 0) - x;
        double dy = lattice.centre(1, lattice.at(low, 1)) + (axis == 1 ? step : 0) - y;
        double dz = lattice.centre(2, lattice.at(low, 2)) + (axis == 2 ? step : 0) - z;
        return dx * dx + dy * dy + dz * dz;
    }
}
