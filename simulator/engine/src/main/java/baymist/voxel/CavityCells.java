package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.cavity.PartKind;
import baymist.geom.Vec3;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The lattice cells that belong to the job, and what all others are.
 *
 * <p>Kept are the enclosed compartments that connect through openings to the stated inside point, or all of them if none
 * is stated. A pocket is an isolated compartment of less than {@value #POCKET_CELLS} cells and {@value #POCKET_SHARE} of
 * all enclosed cells, as appears where two sheets close up towards a sharp edge: its air is joined to the cavity through a
 * slit that the voxels can't hold, so it is not stored, and its surface is counted as unresolved rather than as bare.
 */
final class CavityCells {
    static final int POCKET_CELLS = 8;
    static final double POCKET_SHARE = 0.002;

    /** What a lattice cell is. */
    enum Kind {
        CAVITY,
        OUTSIDE,
        POCKET
    }

    private final Enclosure enclosure;
    private final Kind[] kindOfCompartment;
    /** Cavity cell or -1, [lattice cells]. */
    private final int[] cellOfLattice;
    /** [cavity cells], ascending. */
    private final int[] latticeOfCell;

    private CavityCells(Enclosure enclosure, Kind[] kindOfCompartment, int cells) {
        this.enclosure = enclosure;
        this.kindOfCompartment = kindOfCompartment;
        cellOfLattice = new int[cells];
        IntList kept = new IntList();
        for (int cell = 0; cell < cells; cell++) {
            boolean mine = kind(cell) == Kind.CAVITY;
            cellOfLattice[cell] = mine ? kept.size() : -1;
            if (mine) {
                kept.add(cell);
            }
        }
        latticeOfCell = kept.toArray();
    }

    static CavityCells choose(
            Cavity cavity, Lattice lattice, BlockedFaces blocked, Enclosure enclosure, OpeningFaces openings) {
        int n = enclosure.compartments();
        int target = targetCell(cavity, lattice, enclosure);
        if (n == 0 || target < 0) {
            throw notEnclosed(cavity, lattice, blocked);
        }
        Groups groups = new Groups(n);
        boolean[] hasOpening = new boolean[n];
        for (int e = 0; e < openings.count(); e++) {
            int low = blocked.lowCell(openings.slot()[e]);
            int a = enclosure.of(low);
            int b = enclosure.of(low + lattice.stride(blocked.axis(openings.slot()[e])));
            if (a >= 0) {
                hasOpening[a] = true;
            }
            if (b >= 0) {
                hasOpening[b] = true;
            }
            if (a >= 0 && b >= 0) {
                groups.join(a, b);
            }
        }
        long enclosed = 0;
        for (int c = 0; c < n; c++) {
            enclosed += enclosure.size(c);
        }
        boolean[] withinItem = withinItems(cavity, lattice, blocked, enclosure);
        Kind[] kinds = new Kind[n];
        int wanted = cavity.inside() == null ? -1 : groups.of(enclosure.of(target));
        for (int c = 0; c < n; c++) {
            int size = enclosure.size(c);
            boolean chosen = wanted < 0 || groups.of(c) == wanted;
            boolean pocket = !hasOpening[c] && size < POCKET_CELLS && size < POCKET_SHARE * enclosed;
            boolean inside = cavity.inside() != null && c == enclosure.of(target);
            kinds[c] = withinItem[c]
                    ? Kind.OUTSIDE
                    : pocket && !inside ? Kind.POCKET : chosen ? Kind.CAVITY : Kind.OUTSIDE;
        }
        return new CavityCells(enclosure, kinds, lattice.cells());
    }

    /** Compartments that see nothing but protected items: the insides of those. */
    private static boolean[] withinItems(Cavity cavity, Lattice lattice, BlockedFaces blocked, Enclosure enclosure) {
        boolean[] within = new boolean[enclosure.compartments()];
        Arrays.fill(within, cavity.parts().stream().anyMatch(p -> p.kind() == PartKind.PROTECTED));
        for (int slot = 0; slot < blocked.count(); slot++) {
            for (int side = 0; side < 2; side++) {
                int c = enclosure.of(blocked.lowCell(slot) + side * lattice.stride(blocked.axis(slot)));
                int part = cavity.partOfSheet(blocked.triangle(2 * slot + side));
                if (c >= 0 && (part < 0 || cavity.parts().get(part).kind() != PartKind.PROTECTED)) {
                    within[c] = false;
                }
            }
        }
        return within;
    }

    /** An enclosed cell at or next to the inside point; any if no point is stated; -1 if the point is outside. */
    private static int targetCell(Cavity cavity, Lattice lattice, Enclosure enclosure) {
        Vec3 inside = cavity.inside();
        if (inside == null) {
            return 0;
        }
        int i0 = lattice.locate(0, inside.x());
        int j0 = lattice.locate(1, inside.y());
        int k0 = lattice.locate(2, inside.z());
        int own = lattice.index(i0, j0, k0);
        if (enclosure.encloses(own)) {
            return own;
        }
        int best = -1;
        double nearest = Double.POSITIVE_INFINITY;
        for (int k = Math.max(0, k0 - 1); k <= Math.min(lattice.count(2) - 1, k0 + 1); k++) {
            for (int j = Math.max(0, j0 - 1); j <= Math.min(lattice.count(1) - 1, j0 + 1); j++) {
                for (int i = Math.max(0, i0 - 1); i <= Math.min(lattice.count(0) - 1, i0 + 1); i++) {
                    int cell = lattice.index(i, j, k);
                    double gap = lattice.centre(cell).distance(inside);
                    if (enclosure.encloses(cell) && gap < nearest) {
                        nearest = gap;
                        best = cell;
                    }
                }
            }
        }
        return best;
    }

    private static SceneException notEnclosed(Cavity cavity, Lattice lattice, BlockedFaces blocked) {
        @Nullable Vec3 inside = cavity.inside();
        Vec3 target = inside != null ? inside : cavity.sheets().bounds().centre();
        int cell = lattice.cellHolding(target.x(), target.y(), target.z());
        List<Leak> ways = new LeakFinder(cavity, lattice, blocked).leaksInto(cell);
        StringBuilder text = new StringBuilder(
                inside != null
                        ? "the sheets enclose no air at the inside point " + millimetres(inside)
                        : "the sheets enclose no air");
        for (int w = 0; w < ways.size(); w++) {
            text.append(w == 0 ? "; outside air comes in at " : ", and at ")
                    .append(millimetres(ways.get(w).positionM()))
                    .append(' ')
                    .append(ways.get(w).where())
                    .append(way(ways.get(w)));
        }
        text.append("; closing the gap, or stating it as an opening, would be right");
        return new SceneException("VOX-001", new SourcePlace(cavity.name(), 0, "sheets"), text.toString());
    }

    private static String way(Leak leak) {
        List<Vec3> way = leak.wayM();
        StringBuilder text = new StringBuilder(way.size() < 2 ? "" : " (its way: ");
        for (int i = 0; i < way.size() && way.size() > 1; i++) {
            text.append(i == 0 ? "" : " to ").append(millimetres(way.get(i)).replace(" mm", ""));
        }
        return text.append(way.size() < 2 ? "" : " mm)").toString();
    }

    static String millimetres(Vec3 p) {
        return String.format(Locale.ROOT, "(%.0f, %.0f, %.0f) mm", 1e3 * p.x(), 1e3 * p.y(), 1e3 * p.z());
    }

    Kind kind(int latticeCell) {
        int c = enclosure.of(latticeCell);
        return c < 0 ? Kind.OUTSIDE : kindOfCompartment[c];
    }

    int count() {
        return latticeOfCell.length;
    }

    /** Cavity cell, or -1. */
    int cellAt(int latticeCell) {
        return cellOfLattice[latticeCell];
    }

    int latticeOf(int cell) {
        return latticeOfCell[cell];
    }

    int[] latticeOfCell() {
        return Arrays.copyOf(latticeOfCell, latticeOfCell.length);
    }

    int[] cellOfLattice() {
        return Arrays.copyOf(cellOfLattice, cellOfLattice.length);
    }
}
