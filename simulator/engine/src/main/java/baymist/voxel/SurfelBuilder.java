package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.cavity.PartKind;
import java.util.Arrays;

/**
 * Turns the summed areas into surfels in ascending order of cell, direction and closure, and finds which of them share an
 * edge.
 */
final class SurfelBuilder {
    private final Lattice lattice;
    private final BlockedFaces blocked;
    private final CavityCells cells;
    private final OpeningFaces openings;
    private final SurfaceTotals totals;

    private final IntList cellOf = new IntList();
    private final IntList directionOf = new IntList();
    private final IntList partOf = new IntList();
    private final IntList closureOf = new IntList();
    private final IntList targetOf = new IntList();
    /** First surfel of each side, [6 * cells + 1]. */
    private final int[] startOfSide;

    private SurfelBuilder(
            Lattice lattice, BlockedFaces blocked, CavityCells cells, OpeningFaces openings, SurfaceTotals totals) {
        this.lattice = lattice;
        this.blocked = blocked;
        this.cells = cells;
        this.openings = openings;
        this.totals = totals;
        startOfSide = new int[6 * cells.count() + 1];
    }

    static SurfelSet build(
            Cavity cavity,
            Lattice lattice,
            BlockedFaces blocked,
            CavityCells cells,
            OpeningFaces openings,
            SurfaceTotals totals,
            int[] neighbour) {
        SurfelBuilder b = new SurfelBuilder(lattice, blocked, cells, openings, totals);
        b.list(cavity);
        return b.fill(neighbour);
    }

    private void list(Cavity cavity) {
        for (int cell = 0; cell < cells.count(); cell++) {
            int latticeCell = cells.latticeOf(cell);
            for (int d = 0; d < 6; d++) {
                int slot = blocked.slot(lattice.faceKey(latticeCell, d));
                int high = (d & 1) == 1 ? 0 : 1;
                if (slot >= 0) {
                    int view = 2 * slot + high;
                    int part = cavity.partOfSheet(blocked.triangle(view));
                    add(cell, d, part, sort(cavity, part), view);
                    for (int e = openings.start()[slot]; e < openings.start()[slot + 1]; e++) {
                        int opening = openings.opening()[e];
                        int target = 2 * blocked.count() + 2 * e + high;
                        add(cell, d, cavity.openings().get(opening).part(), opening, target);
                    }
                }
                startOfSide[6 * cell + d + 1] = cellOf.size();
            }
        }
    }

    private static int sort(Cavity cavity, int part) {
        boolean item = part >= 0 && cavity.parts().get(part).kind() == PartKind.PROTECTED;
        return item ? SurfelSet.PROTECTED : SurfelSet.STRUCTURE;
    }

    /** A side that no piece fell to is left out: it has nothing to carry. */
    private void add(int cell, int d, int part, int closure, int target) {
        if (totals.areaM2[target] > 0) {
            cellOf.add(cell);
            directionOf.add(d);
            partOf.add(part);
            closureOf.add(closure);
            targetOf.add(target);
        }
    }

    private SurfelSet fill(int[] neighbour) {
        int n = cellOf.size();
        double[] area = new double[n];
        double[][] normal = new double[3][n];
        double[][] centre = new double[3][n];
        for (int s = 0; s < n; s++) {
            int t = targetOf.get(s);
            area[s] = totals.areaM2[t];
            double nx = totals.vector[3 * t];
            double ny = totals.vector[3 * t + 1];
            double nz = totals.vector[3 * t + 2];
            double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
            for (int a = 0; a < 3; a++) {
                centre[a][s] = totals.moment[3 * t + a] / area[s];
                normal[a][s] = length > 0 ? totals.vector[3 * t + a] / length : inward(directionOf.get(s), a);
            }
        }
        int[] start = new int[n + 1];
        IntList adjacent = new IntList();
        int[] scratch = new int[64];
        for (int s = 0; s < n; s++) {
            int count = neighboursOf(s, neighbour, scratch);
            for (int i = 0; i < count; i++) {
                adjacent.add(scratch[i]);
            }
            start[s + 1] = adjacent.size();
        }
        return new SurfelSet(
                cellOf.toArray(),
                FaceSetBuilder.bytes(directionOf),
                partOf.toArray(),
                closureOf.toArray(),
                area,
                normal[0],
                normal[1],
                normal[2],
                centre[0],
                centre[1],
                centre[2],
                start,
                adjacent.toArray());
    }

    private static double inward(int direction, int axis) {
        return direction >> 1 != axis ? 0 : (direction & 1) == 1 ? -1 : 1;
    }

    /** Ascending surfels that share a lattice edge (or the whole face) with s; returns how many. */
    private int neighboursOf(int s, int[] neighbour, int[] into) {
        int cell = cellOf.get(s);
        int d = directionOf.get(s);
        int count = append(cell, d, into, 0);
        for (int f = 0; f < 6; f++) {
            if (f >> 1 == d >> 1) {
                continue;
            }
            // the sheet turns towards the air: another side of the same cell
            count = append(cell, f, into, count);
            int beside = neighbour[6 * cell + f];
            if (beside >= 0) {
                // it goes straight on, or turns away round the edge through two open faces
                count = append(beside, d, into, count);
                int diagonal = neighbour[6 * beside + d];
                if (diagonal >= 0) {
                    count = append(diagonal, f ^ 1, into, count);
                }
            }
        }
        Arrays.sort(into, 0, count);
        int kept = 0;
        for (int i = 0; i < count; i++) {
            if (into[i] != s && (kept == 0 || into[kept - 1] != into[i])) {
                into[kept++] = into[i];
            }
        }
        return kept;
    }

    private int append(int cell, int d, int[] into, int count) {
        int at = count;
        for (int s = startOfSide[6 * cell + d]; s < startOfSide[6 * cell + d + 1] && at < into.length; s++) {
            into[at++] = s;
        }
        return at;
    }
}
