package baymist.export;

import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/** Gathers polylines into the points and cells of a file. One builder, one thread. */
final class Lines {
    private final List<Vec3> points = new ArrayList<>();
    private final List<Integer> ends = new ArrayList<>();

    void add(List<Vec3> line) {
        points.addAll(line);
        ends.add(points.size());
    }

    PolyFile file(List<VtkArray> fields, List<VtkArray> cellData, String scalars) {
        double[] xyz = new double[3 * points.size()];
        int[] corners = new int[points.size()];
        for (int i = 0; i < corners.length; i++) {
            corners[i] = i;
            xyz[3 * i] = points.get(i).x();
            xyz[3 * i + 1] = points.get(i).y();
            xyz[3 * i + 2] = points.get(i).z();
        }
        int[] end = ends.stream().mapToInt(i -> i).toArray();
        return new PolyFile(PolyFile.Kind.LINES, xyz, corners, end, fields, List.of(), cellData, "", scalars);
    }
}
