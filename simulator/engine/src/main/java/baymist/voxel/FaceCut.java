package baymist.voxel;

import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/**
 * Faces of the cells that are kept of a grid; a face of which one cell is kept has become a vent. Order as {@link FaceSetBuilder} has it.
 *
 * @param openings those that were cut, ascending
 */
record FaceCut(FaceSet faces, List<Integer> openings) {
    /** @param cellOf number of each cell in the part, or -1 */
    static FaceCut of(FaceSet f, int[] cellOf) {
        int inner = 0;
        int cut = 0;
        for (int e = 0; e < f.count(); e++) {
            boolean low = cellOf[f.low()[e]] >= 0;
            boolean high = cellOf[f.high()[e]] >= 0;
            inner += low && high ? 1 : 0;
            cut += low != high ? 1 : 0;
        }
        int old = 0;
        for (int cell : f.ventCell()) {
            old += cellOf[cell] >= 0 ? 1 : 0;
        }
        Vents vents = new Vents(old + cut);
        for (int v = 0; v < f.vents(); v++) {
            if (cellOf[f.ventCell()[v]] >= 0) {
                vents.add(
                        cellOf[f.ventCell()[v]],
                        f.ventAxis()[v],
                        f.ventSign()[v],
                        f.ventAreaM2()[v],
                        f.ventOpening()[v]);
            }
        }
        TreeSet<Integer> openings = new TreeSet<>();
        int[] low = new int[inner];
        int[] high = new int[inner];
        byte[] axis = new byte[inner];
        double[] area = new double[inner];
        int[] opening = new int[inner];
        int at = 0;
        for (int e = 0; e < f.count(); e++) {
            int a = cellOf[f.low()[e]];
            int b = cellOf[f.high()[e]];
            if (a >= 0 && b >= 0) {
                low[at] = a;
                high[at] = b;
                axis[at] = f.axis()[e];
                area[at] = f.areaM2()[e];
                opening[at++] = f.opening()[e];
            } else if (a >= 0 || b >= 0) {
                vents.add(a >= 0 ? a : b, f.axis()[e], (byte) (a >= 0 ? 1 : -1), f.areaM2()[e], f.opening()[e]);
                openings.add(f.opening()[e]);
            }
        }
        return new FaceCut(vents.with(low, high, axis, area, opening), List.copyOf(openings));
    }

    /** Vents in any order, sorted at the end by cell, side and opening. */
    private static final class Vents {
        private final long[] key;
        private final int[] cell;
        private final byte[] axis;
        private final byte[] sign;
        private final double[] areaM2;
        private final int[] opening;
        private int count;

        Vents(int most) {
            key = new long[most];
            cell = new int[most];
            axis = new byte[most];
            sign = new byte[most];
            areaM2 = new double[most];
            opening = new int[most];
        }

        void add(int inCell, byte onAxis, byte outward, double area, int by) {
            cell[count] = inCell;
            axis[count] = onAxis;
            sign[count] = outward;
            areaM2[count] = area;
            opening[count] = by;
            key[count] = (6L * inCell + 2 * onAxis + (outward > 0 ? 1 : 0));
            count++;
        }

        FaceSet with(int[] low, int[] high, byte[] faceAxis, double[] faceAreaM2, int[] faceOpening) {
            Integer[] order = new Integer[count];
            Arrays.setAll(order, i -> i);
            Arrays.sort(
                    order,
                    (a, b) ->
                            key[a] != key[b] ? Long.compare(key[a], key[b]) : Integer.compare(opening[a], opening[b]));
            int[] c = new int[count];
            byte[] x = new byte[count];
            byte[] s = new byte[count];
            double[] m = new double[count];
            int[] o = new int[count];
            for (int i = 0; i < count; i++) {
                c[i] = cell[order[i]];
                x[i] = axis[order[i]];
                s[i] = sign[order[i]];
                m[i] = areaM2[order[i]];
                o[i] = opening[order[i]];
            }
            return new FaceSet(low, high, faceAxis, faceAreaM2, faceOpening, c, x, s, m, o);
        }
    }
}
