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
 *
 * <p>A voxel holds what lies about its centre, not what lies beyond a rib that crosses it; and on a part whose triangles are
 * wound anyhow the normals don't tell front from back. So, in cells that another part crosses, on such parts, and for views
 * from other cells, a view counts only if its cell's centre is in sight of the piece's side.
 */
final class PieceSharer {
    /** ASSUMED: sheets of a lap, a flange or a sharp edge lie within 30 degrees of each other. */
    private static final double LAP_COS = 0.866;

    private final Cavity cavity;
    private final Lattice lattice;
    private final BlockedFaces blocked;
    private final CavityCells cells;
    private final SheetOrientation sheets;

    private final int[] ownView = new int[6];
    private final double[] ownWeight = new double[6];

    private final Sight sight;
    private final Aim aim;

    private final double offM;

    private int part;
    private boolean consistent;
    /** Whether the piece's own cell is crossed by another part. */
    private boolean crossed;

    private double px;
    private double py;
    private double pz;
    private double nx;
    private double ny;
    private double nz;

    PieceSharer(
            Cavity cavity,
            Lattice lattice,
            BlockedFaces blocked,
            CavityCells cells,
            SheetOrientation sheets,
            Sight sight) {
        this.cavity = cavity;
        this.lattice = lattice;
        this.blocked = blocked;
        this.cells = cells;
        this.sheets = sheets;
        this.sight = sight;
        aim = new Aim(lattice, blocked);
        offM = 1e-6 * Math.min(lattice.pitchM(0), Math.min(lattice.pitchM(1), lattice.pitchM(2)));
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
        px = x;
        py = y;
        pz = z;
        crossed = isCrossed(latticeCell);
        for (int side = 0; side < 2; side++) {
            if (side == sheets.withinItem(part)) {
                out.addShare(piece, side, AreaShares.OUTSIDE, area);
                continue;
            }
            if (shareInOwnCell(out, piece, side, latticeCell, area)) {
                continue;
            }
            if (isCovered(latticeCell, side)) {
                out.addShare(piece, side, AreaShares.HIDDEN, area);
            } else {
                Nearest nearest = nearestAround(latticeCell, side);
                int target = nearest.verdict();
                out.addShare(piece, side, target, area, target == AreaShares.UNKNOWN ? nearest.standIn : -1);
            }
        }
    }

    private boolean isCrossed(int latticeCell) {
        for (int d = 0; d < 6; d++) {
            int slot = blocked.slot(lattice.faceKey(latticeCell, d));
            if (slot >= 0
                    && (cavity.partOfSheet(blocked.triangle(2 * slot)) != part
                            || cavity.partOfSheet(blocked.triangle(2 * slot + 1)) != part)) {
                return true;
            }
        }
        return false;
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
                if (sees(view, slot, side)
                        && cells.kind(cellOf(view, slot)) != CavityCells.Kind.POCKET
                        && (!inDoubt(latticeCell, cellOf(view, slot)) || inSight(view, slot, side))) {
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
                if (other >= 0 && other != part && sees(view, slot, 1 - side) && isAlong(blocked.triangle(view ^ 1))) {
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

    /** Whether a sheet runs along the current one, as laps do; two walls of a corner do not. */
    private boolean isAlong(int triangle) {
        return Math.abs(sheets.dot(triangle, nx, ny, nz)) >= LAP_COS;
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

    /** Whether the air at a cell's centre need not be that at a piece in this cell or the one beside it. */
    private boolean inDoubt(int own, int viewing) {
        return !consistent || crossed || (viewing != own && isCrossed(viewing));
    }

    private boolean inSight(int view, int slot, int side) {
        double off = side == 0 ? offM : -offM;
        Vec3 from = new Vec3(px + off * nx, py + off * ny, pz + off * nz);
        return sight.clear(from, aim.at(cellOf(view, slot)));
    }

    /** Squared distances to the nearest views in sight of each kind, and the nearest ones from a cavity cell. */
    private final class Nearest {
        double cavity = Double.POSITIVE_INFINITY;
        double outside = Double.POSITIVE_INFINITY;
        double pocket = Double.POSITIVE_INFINITY;
        double unseen = Double.POSITIVE_INFINITY;
        int view = -1;
        /** Nearest view from a cavity cell, in sight or not. */
        int standIn = -1;

        void offer(CavityCells.Kind kind, int candidate, int slot, int side, double gap) {
            switch (kind) {
                case CAVITY -> {
                    if (gap < unseen) {
                        unseen = gap;
                        standIn = candidate;
                    }
                    if (gap < cavity && inSight(candidate, slot, side)) {
                        cavity = gap;
                        view = candidate;
                    }
                }
                case OUTSIDE -> outside = gap < outside && inSight(candidate, slot, side) ? gap : outside;
                case POCKET -> pocket = gap < pocket && inSight(candidate, slot, side) ? gap : pocket;
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

    private Nearest nearestAround(int latticeCell, int side) {
        Nearest nearest = new Nearest();
        int i0 = lattice.at(latticeCell, 0);
        int j0 = lattice.at(latticeCell, 1);
        int k0 = lattice.at(latticeCell, 2);
        for (int k = Math.max(0, k0 - 1); k <= Math.min(lattice.count(2) - 1, k0 + 1); k++) {
            for (int j = Math.max(0, j0 - 1); j <= Math.min(lattice.count(1) - 1, j0 + 1); j++) {
                for (int i = Math.max(0, i0 - 1); i <= Math.min(lattice.count(0) - 1, i0 + 1); i++) {
                    offerSides(lattice.index(i, j, k), side, nearest);
                }
            }
        }
        return nearest;
    }

    private void offerSides(int cell, int side, Nearest nearest) {
        for (int d = 0; d < 6; d++) {
            int slot = blocked.slot(lattice.faceKey(cell, d));
            for (int view = 2 * slot; slot >= 0 && view <= 2 * slot + 1; view++) {
                if (sees(view, slot, side)) {
                    nearest.offer(cells.kind(cellOf(view, slot)), view, slot, side, gap2(view, slot));
                }
            }
        }
    }

    /** Squared distance from the piece to the place where a face's segment meets the sheet. */
    private double gap2(int view, int slot) {
        int low = blocked.lowCell(slot);
        int axis = blocked.axis(slot);
        double step = blocked.position(view) * lattice.pitchM(axis);
        double dx = lattice.centre(0, lattice.at(low, 0)) + (axis == 0 ? step : 0) - px;
        double dy = lattice.centre(1, lattice.at(low, 1)) + (axis == 1 ? step : 0) - py;
        double dz = lattice.centre(2, lattice.at(low, 2)) + (axis == 2 ? step : 0) - pz;
        return dx * dx + dy * dy + dz * dz;
    }
}
