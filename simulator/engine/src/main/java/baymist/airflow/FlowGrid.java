package baymist.airflow;

import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Cells and faces of the resolved air: the fog's grid, or blocks of it. A cell is a part of a block that open sides connect,
 * so a sheet through a block separates two cells; the area of a face is what the fog's own faces leave open between the two.
 * Immutable.
 *
 * <p>A face's <em>share</em> is its open area over a whole side of a block; what is missing to one is wall. Vents follow the
 * faces in the numbering of fluxes: {@code faces + v}.
 */
final class FlowGrid {
    /** Openings wider than this many cells are resolved; narrower ones get the orifice loss. */
    static final double RESOLVED_CELLS = 4;

    final int cells;
    final int factor;

    /** Block of each cell, x y z, [3 * cells]. */
    final int[] block;

    /** Sides of a block, m, [3]. */
    final double[] h;

    /** Area of a whole side square to each axis, m², [3]. */
    final double[] sideM2;

    final double[] volumeM3;
    final int faces;
    final int[] low;
    final int[] high;
    final byte[] axis;
    final double[] areaM2;
    final double[] share;

    /** Extra pressure loss of a narrow opening in units of u²/2, [faces]. */
    final double[] loss;

    final int vents;
    final int[] ventCell;
    final byte[] ventAxis;
    final byte[] ventSign;
    final double[] ventAreaM2;

    /** Cell of each fog cell, [fog cells]. */
    final int[] cellOf;

    /** Face of each fog face, or -1 where it lies inside a cell or is shut, [fog faces]. */
    final int[] faceOf;

    private final int[] sideStart;
    private final int[] sideFace;

    private FlowGrid(VoxelGrid grid, double[] openingAreaM2, double[] openFraction, int factor, int[] cellOf) {
        this.factor = factor;
        this.cellOf = cellOf;
        this.cells = Arrays.stream(cellOf).max().orElse(-1) + 1;
        this.h = new double[3];
        for (int a = 0; a < 3; a++) {
            h[a] = factor * grid.sizeM().get(a);
        }
        this.sideM2 = new double[] {h[1] * h[2], h[0] * h[2], h[0] * h[1]};
        this.block = new int[3 * cells];
        this.volumeM3 = new double[cells];
        int[] from = lowest(grid);
        for (int c = 0; c < cellOf.length; c++) {
            volumeM3[cellOf[c]] += grid.volumeM3(c);
            block[3 * cellOf[c]] = (grid.i(c) - from[0]) / factor;
            block[3 * cellOf[c] + 1] = (grid.j(c) - from[1]) / factor;
            block[3 * cellOf[c] + 2] = (grid.k(c) - from[2]) / factor;
        }
        FaceSet fine = grid.faces();
        this.faceOf = new int[fine.count()];
        FaceMerger merger = new FaceMerger(fine, openFraction, cellOf, faceOf);
        this.faces = merger.count();
        this.low = Arrays.copyOf(merger.low, faces);
        this.high = Arrays.copyOf(merger.high, faces);
        this.axis = Arrays.copyOf(merger.axis, faces);
        this.areaM2 = Arrays.copyOf(merger.areaM2, faces);
        this.share = new double[faces];
        this.loss = merger.losses(openingAreaM2, h);
        this.vents = fine.vents();
        this.ventCell = new int[vents];
        this.ventAxis = fine.ventAxis();
        this.ventSign = fine.ventSign();
        this.ventAreaM2 = new double[vents];
        for (int v = 0; v < vents; v++) {
            ventCell[v] = cellOf[fine.ventCell()[v]];
            ventAreaM2[v] = fine.ventAreaM2()[v] * openFraction[fine.ventOpening()[v]];
        }
        for (int f = 0; f < faces; f++) {
            share[f] = Math.min(1, areaM2[f] / sideM2[axis[f]]);
        }
        this.sideStart = new int[6 * cells + 1];
        this.sideFace = new int[2 * faces + vents];
        fillSides();
    }

    /**
     * Builds the air's grid for one state of the openings.
     *
     * @param openingAreaM2 [openings] exact areas, m²; those not given count as resolved
     * @param openFraction [openings] open share, 0..1
     * @param factor fog cells along each side of a block: 1 to 4
     */
    static FlowGrid of(VoxelGrid grid, double[] openingAreaM2, double[] openFraction, int factor) {
        if (factor < 1 || factor > 4) {
            throw new IllegalArgumentException("air blocks of " + factor + " cells a side; 1 to 4 expected");
        }
        return new FlowGrid(grid, openingAreaM2, openFraction, factor, parts(grid, factor));
    }

    /** Number of cells that {@link #of} would make. */
    static int cellCount(VoxelGrid grid, int factor) {
        return Arrays.stream(parts(grid, factor)).max().orElse(-1) + 1;
    }

    private static int[] parts(VoxelGrid grid, int factor) {
        FaceSet faces = grid.faces();
        int[] from = lowest(grid);
        UnionFind sets = new UnionFind(grid.cellCount());
        for (int f = 0; f < faces.count() && factor > 1; f++) {
            int p = faces.low()[f];
            int q = faces.high()[f];
            if (faces.opening()[f] < 0
                    && (grid.i(p) - from[0]) / factor == (grid.i(q) - from[0]) / factor
                    && (grid.j(p) - from[1]) / factor == (grid.j(q) - from[1]) / factor
                    && (grid.k(p) - from[2]) / factor == (grid.k(q) - from[2]) / factor) {
                sets.join(p, q);
            }
        }
        return sets.numbered();
    }

    /** Lowest lattice indices in use: blocks begin there, so that a cavity's own low walls are block walls. */
    private static int[] lowest(VoxelGrid grid) {
        int[] from = {Integer.MAX_VALUE, Integer.MAX_VALUE, Integer.MAX_VALUE};
        for (int c = 0; c < grid.cellCount(); c++) {
            from[0] = Math.min(from[0], grid.i(c));
            from[1] = Math.min(from[1], grid.j(c));
            from[2] = Math.min(from[2], grid.k(c));
        }
        return from;
    }

    /** Joins the fog's faces between the same two cells. */
    private static final class FaceMerger {
        private final Map<Long, Integer> number = new HashMap<>();
        private final FaceSet fine;
        private final double[] openFraction;
        private final int[] faceOf;
        private final int[] low;
        private final int[] high;
        private final byte[] axis;
        private final double[] areaM2;

        FaceMerger(FaceSet fine, double[] openFraction, int[] cellOf, int[] faceOf) {
            this.fine = fine;
            this.openFraction = openFraction;
            this.faceOf = faceOf;
            low = new int[fine.count()];
            high = new int[fine.count()];
            axis = new byte[fine.count()];
            areaM2 = new double[fine.count()];
            for (int f = 0; f < fine.count(); f++) {
                int p = cellOf[fine.low()[f]];
                int q = cellOf[fine.high()[f]];
                double area = Components.openAreaM2(fine, f, openFraction);
                faceOf[f] = p == q || area == 0 ? -1 : place(p, q, fine.axis()[f]);
                if (faceOf[f] >= 0) {
                    areaM2[faceOf[f]] += area;
                }
            }
        }

        private int place(int p, int q, byte a) {
            long key = ((long) p << 32 | q) * 3 + a;
            Integer known = number.get(key);
            if (known != null) {
                return known;
            }
            int n = number.size();
            low[n] = p;
            high[n] = q;
            axis[n] = a;
            number.put(key, n);
            return n;
        }

        int count() {
            return number.size();
        }

        double[] losses(double[] openingAreaM2, double[] h) {
            double[] loss = new double[count()];
            double[] held = new double[count()];
            for (int f = 0; f < fine.count(); f++) {
                int o = fine.opening()[f];
                if (faceOf[f] < 0 || o < 0 || o >= openingAreaM2.length) {
                    continue;
                }
                double acrossM = 2 * Math.sqrt(openingAreaM2[o] / Math.PI);
                if (acrossM < RESOLVED_CELLS * Math.max(h[0], Math.max(h[1], h[2]))) {
                    held[faceOf[f]] += Components.openAreaM2(fine, f, openFraction);
                }
            }
            // The link's own momentum exchange takes u²/2; the rest of the orifice's u²/(2 Cd²) is left.
            double extra = 1 / (Orifice.DISCHARGE * Orifice.DISCHARGE) - 1;
            for (int f = 0; f < loss.length; f++) {
                loss[f] = extra * Math.min(1, held[f] / areaM2[f]);
            }
            return loss;
        }
    }

    private void fillSides() {
        for (int f = 0; f < faces; f++) {
            sideStart[6 * low[f] + 2 * axis[f] + 2]++;
            sideStart[6 * high[f] + 2 * axis[f] + 1]++;
        }
        for (int v = 0; v < vents; v++) {
            sideStart[6 * ventCell[v] + ventSide(v) + 1]++;
        }
        for (int s = 0; s < 6 * cells; s++) {
            sideStart[s + 1] += sideStart[s];
        }
        int[] fill = sideStart.clone();
        for (int f = 0; f < faces; f++) {
            sideFace[fill[6 * low[f] + 2 * axis[f] + 1]++] = f;
            sideFace[fill[6 * high[f] + 2 * axis[f]]++] = f;
        }
        for (int v = 0; v < vents; v++) {
            sideFace[fill[6 * ventCell[v] + ventSide(v)]++] = faces + v;
        }
    }

    private int ventSide(int v) {
        return 2 * ventAxis[v] + (ventSign[v] > 0 ? 1 : 0);
    }

    /** Faces (and {@code faces + v} for vents) on side d of a cell, ascending. */
    int[] side(int cell, int d) {
        return Arrays.copyOfRange(sideFace, sideStart[6 * cell + d], sideStart[6 * cell + d + 1]);
    }

    int sideCount(int cell, int d) {
        return sideStart[6 * cell + d + 1] - sideStart[6 * cell + d];
    }

    int sideAt(int cell, int d, int n) {
        return sideFace[sideStart[6 * cell + d] + n];
    }

    /** Share of a whole side that a face or vent leaves open. */
    double shareOf(int faceOrVent) {
        return faceOrVent < faces
                ? share[faceOrVent]
                : Math.min(1, ventAreaM2[faceOrVent - faces] / sideM2[ventAxis[faceOrVent - faces]]);
    }

    /** Open share of a side of a cell, at most 1. */
    double openShare(int cell, int d) {
        double sum = 0;
        for (int n = 0; n < sideCount(cell, d); n++) {
            sum += shareOf(sideAt(cell, d, n));
        }
        return Math.min(1, sum);
    }

    /** Mass of a face's control volume over density, m³. */
    double faceVolumeM3(int face) {
        return areaM2[face] * h[axis[face]];
    }

    /** Open area over distance, m: the conductance of the pressure equation. */
    double conductanceM(int face) {
        return areaM2[face] / h[axis[face]];
    }

    /** The graph that the pressure is solved on. */
    FaceGraph graph() {
        double[] g = new double[faces];
        for (int f = 0; f < faces; f++) {
            g[f] = conductanceM(f);
        }
        return new FaceGraph(cells, low, high, axis, g, block, h.clone());
    }

    /** Cells that air can move between. */
    Components groups() {
        return Components.of(cells, low, high, volumeM3);
    }

    /** Outgoing face fluxes of each cell, m³/s, [cells]. */
    double[] outflow(double[] fluxM3PerS) {
        double[] out = new double[cells];
        for (int f = 0; f < faces; f++) {
            out[low[f]] += fluxM3PerS[f];
            out[high[f]] -= fluxM3PerS[f];
        }
        return out;
    }
}
