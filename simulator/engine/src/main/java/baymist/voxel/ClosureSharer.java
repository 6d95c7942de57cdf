package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import java.util.Arrays;

/**
 * Hands the pieces cut out for openings to the faces that the openings overlap: the nearest face of the same opening, its
 * high view to the side that looks along the axis, its low view to the other. Closure targets follow the sheet views:
 * target = 2 * slots + 2 * entry + (0 low, 1 high).
 */
final class ClosureSharer {
    private final Cavity cavity;
    private final Lattice lattice;
    private final BlockedFaces blocked;
    private final CavityCells cells;
    private final OpeningFaces openings;
    /** Entries of each opening, [openings][..], ascending. */
    private final int[][] entries;

    ClosureSharer(Cavity cavity, Lattice lattice, BlockedFaces blocked, CavityCells cells, OpeningFaces openings) {
        this.cavity = cavity;
        this.lattice = lattice;
        this.blocked = blocked;
        this.cells = cells;
        this.openings = openings;
        IntList[] lists = new IntList[cavity.openings().size()];
        Arrays.setAll(lists, o -> new IntList());
        for (int e = 0; e < openings.count(); e++) {
            lists[openings.opening()[e]].add(e);
        }
        entries = new int[lists.length][];
        for (int o = 0; o < lists.length; o++) {
            entries[o] = lists[o].toArray();
        }
    }

    void share(
            AreaShares out,
            int piece,
            int opening,
            Vec3 normal,
            int latticeCell,
            double area,
            double x,
            double y,
            double z) {
        int entry = entryFor(opening, latticeCell, x, y, z);
        if (entry < 0) {
            // an opening with outside air on both sides carries nothing
            out.addShare(piece, 0, AreaShares.OUTSIDE, area);
            out.addShare(piece, 1, AreaShares.OUTSIDE, area);
            return;
        }
        int slot = openings.slot()[entry];
        int axis = blocked.axis(slot);
        double along = normal.get(axis);
        if (along == 0) {
            along = normal.dot(cavity.openings().get(opening).place().normal())
                    * cavity.openings().get(opening).place().normal().get(axis);
        }
        for (int side = 0; side < 2; side++) {
            int high = side == 0 == along >= 0 ? 1 : 0;
            int cell = blocked.lowCell(slot) + high * lattice.stride(axis);
            boolean mine = cells.kind(cell) == CavityCells.Kind.CAVITY;
            out.addShare(piece, side, mine ? 2 * blocked.count() + 2 * entry + high : AreaShares.OUTSIDE, area);
        }
    }

    private int entryFor(int opening, int latticeCell, double x, double y, double z) {
        for (int d = 0; d < 6; d++) {
            int slot = blocked.slot(lattice.faceKey(latticeCell, d));
            for (int e = slot < 0 ? 0 : openings.start()[slot]; slot >= 0 && e < openings.start()[slot + 1]; e++) {
                if (openings.opening()[e] == opening) {
                    return e;
                }
            }
        }
        int best = -1;
        double nearest = Double.POSITIVE_INFINITY;
        for (int e : entries[opening]) {
            int slot = openings.slot()[e];
            int axis = blocked.axis(slot);
            Vec3 low = lattice.centre(blocked.lowCell(slot));
            double step = blocked.position(2 * slot) * lattice.pitchM(axis);
            double dx = low.x() + (axis == 0 ? step : 0) - x;
            double dy = low.y() + (axis == 1 ? step : 0) - y;
            double dz = low.z() + (axis == 2 ? step : 0) - z;
            double gap = dx * dx + dy * dy + dz * dz;
            if (gap < nearest) {
                nearest = gap;
                best = e;
            }
        }
        return best;
    }
}
