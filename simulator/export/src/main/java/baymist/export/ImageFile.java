package baymist.export;

import baymist.geom.Vec3;
import java.io.IOException;
import java.io.Writer;
import java.util.List;

/**
 * A VTK image file (.vti): numbers on the cells of a box of voxels.
 *
 * @param cells number of voxels along x, y, z
 * @param originM low corner of the box, m
 * @param sizeM voxel size, m
 * @param fields arrays of the file as a whole
 * @param cellData [nx*ny*nz] each, x fastest
 * @param scalars name of the array that a viewer shows first
 * @param vectors name of the array of vectors that a viewer offers first
 */
record ImageFile(
        int[] cells,
        Vec3 originM,
        Vec3 sizeM,
        List<VtkArray> fields,
        List<VtkArray> cellData,
        String scalars,
        String vectors) {
    void write(Writer out) throws IOException {
        VtkXml xml = new VtkXml(out);
        String extent = "0 " + cells[0] + " 0 " + cells[1] + " 0 " + cells[2];
        xml.begin("ImageData");
        xml.start("ImageData WholeExtent=\"" + extent + "\" Origin=\"" + text(originM) + "\" Spacing=\"" + text(sizeM)
                + "\"");
        xml.arrays("FieldData", fields);
        xml.start("Piece Extent=\"" + extent + "\"");
        xml.empty("PointData");
        xml.arrays("CellData Scalars=\"" + scalars + "\" Vectors=\"" + vectors + "\"", cellData);
        xml.finish();
    }

    private static String text(Vec3 v) {
        return v.x() + " " + v.y() + " " + v.z();
    }
}
