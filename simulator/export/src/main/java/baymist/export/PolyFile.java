package baymist.export;

import java.io.IOException;
import java.io.Writer;
import java.util.List;

/**
 * A VTK polygon file (.vtp): points, and one kind of cells over them.
 *
 * @param kind what the cells are
 * @param xyzM points, m, [3 * points]
 * @param corners points of the cells, cell after cell
 * @param ends where each cell ends in {@code corners}, [cells]
 * @param pointData [points] each
 * @param cellData [cells] each
 * @param pointScalars,cellScalars names of the arrays that a viewer shows first
 */
record PolyFile(
        Kind kind,
        double[] xyzM,
        int[] corners,
        int[] ends,
        List<VtkArray> fields,
        List<VtkArray> pointData,
        List<VtkArray> cellData,
        String pointScalars,
        String cellScalars) {
    /** Kinds of cells, in the order in which the format lists them. */
    enum Kind {
        VERTS("Verts"),
        LINES("Lines"),
        STRIPS("Strips"),
        POLYS("Polys");

        private final String word;

        Kind(String word) {
            this.word = word;
        }
    }

    /** Each point as a cell of its own. */
    static PolyFile points(double[] xyzM, List<VtkArray> fields, List<VtkArray> pointData, String scalars) {
        int n = xyzM.length / 3;
        int[] corners = new int[n];
        int[] ends = new int[n];
        for (int i = 0; i < n; i++) {
            corners[i] = i;
            ends[i] = i + 1;
        }
        return new PolyFile(Kind.VERTS, xyzM, corners, ends, fields, pointData, List.of(), scalars, "");
    }

    void write(Writer out) throws IOException {
        VtkXml xml = new VtkXml(out);
        xml.begin("PolyData");
        xml.start("PolyData");
        xml.arrays("FieldData", fields);
        StringBuilder piece = new StringBuilder("Piece NumberOfPoints=\"" + xyzM.length / 3 + "\"");
        for (Kind k : Kind.values()) {
            piece.append(" NumberOf")
                    .append(k.word)
                    .append("=\"")
                    .append(k == kind ? ends.length : 0)
                    .append('"');
        }
        xml.start(piece.toString());
        xml.arrays("PointData" + (pointData.isEmpty() ? "" : " Scalars=\"" + pointScalars + "\""), pointData);
        xml.arrays("CellData" + (cellData.isEmpty() ? "" : " Scalars=\"" + cellScalars + "\""), cellData);
        xml.arrays("Points", List.of(VtkArray.doubles("Points", 3, xyzM)));
        for (Kind k : Kind.values()) {
            boolean own = k == kind;
            xml.arrays(
                    k.word,
                    List.of(
                            VtkArray.ints("connectivity", own ? corners : new int[0]),
                            VtkArray.ints("offsets", own ? ends : new int[0])));
        }
        xml.finish();
    }
}
