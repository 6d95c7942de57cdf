package baymist.surface;

import java.util.HashMap;
import java.util.Map;

/**
 * Fewer triangles for sheets that have more than can be drawn: points of a part that fall in one cell of a lattice become their mean, and
 * triangles whose corners fall together go (vertex clustering: Rossignac and Borrel 1993, Multi-resolution 3D approximations; from memory).
 * A point moves by less than a cell's diagonal.
 */
final class Simplifier {
    private Simplifier() {}

    static Pieces merged(Pieces sheets, double cellM) {
        Map<Cell, Integer> cells = new HashMap<>();
        int[] cellOf = new int[sheets.vertices()];
        int[] parts = partOfVertex(sheets);
        double[] sum = new double[3 * sheets.vertices()];
        int[] count = new int[sheets.vertices()];
        for (int v = 0; v < cellOf.length; v++) {
            Cell cell = new Cell(parts[v], at(sheets, v, 0, cellM), at(sheets, v, 1, cellM), at(sheets, v, 2, cellM));
            int c = cells.computeIfAbsent(cell, k -> cells.size());
            cellOf[v] = c;
            count[c]++;
            for (int axis = 0; axis < 3; axis++) {
                sum[3 * c + axis] += sheets.coordinate(v, axis);
            }
        }
        Pieces merged = new Pieces();
        for (int c = 0; c < cells.size(); c++) {
            merged.addVertex(sum[3 * c] / count[c], sum[3 * c + 1] / count[c], sum[3 * c + 2] / count[c]);
        }
        for (int t = 0; t < sheets.triangles(); t++) {
            int a = cellOf[sheets.corner(t, 0)];
            int b = cellOf[sheets.corner(t, 1)];
            int c = cellOf[sheets.corner(t, 2)];
            if (a != b && b != c && c != a) {
                merged.add(a, b, c, sheets.part(t), -1);
            }
        }
        return merged;
    }

    private static int[] partOfVertex(Pieces sheets) {
        int[] parts = new int[sheets.vertices()];
        for (int t = 0; t < sheets.triangles(); t++) {
            for (int k = 0; k < 3; k++) {
                parts[sheets.corner(t, k)] = sheets.part(t);
            }
        }
        return parts;
    }

    private static int at(Pieces sheets, int vertex, int axis, double cellM) {
        return (int) Math.floor(sheets.coordinate(vertex, axis) / cellM);
    }

    private record Cell(int part, int i, int j, int k) {}
}
