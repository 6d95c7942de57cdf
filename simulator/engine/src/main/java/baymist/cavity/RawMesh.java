package baymist.cavity;

import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What a mesh file holds, in file units, as read: triangles with corners of their own and a part each. */
final class RawMesh {
    /** More triangles than this need more memory than a desk computer has for the stages that follow. */
    static final int MOST_TRIANGLES = 3_000_000;

    /** A part as the file names it; gauge in file units, NaN where the file states none. */
    record RawPart(String name, double gauge) {}

    final List<RawPart> parts = new ArrayList<>();
    final List<String> remarks = new ArrayList<>();
    /** Corner coordinates, [9 * triangles]. */
    private double[] xyz = new double[9 * 64];

    private int[] part = new int[64];
    private int triangles;

    private static final int MOST_PARTS = 100_000;

    /** Adds a part and returns its number. */
    int addPart(String name, double gauge, SourcePlace place) {
        if (parts.size() == MOST_PARTS) {
            throw new SceneException(
                    "MSH-009", place, "more than " + MOST_PARTS + " parts; at most that many can be read");
        }
        parts.add(new RawPart(name, gauge));
        return parts.size() - 1;
    }

    void add(int partIndex, double[] nine, SourcePlace place) {
        if (triangles == MOST_TRIANGLES) {
            throw new SceneException(
                    "MSH-009",
                    place,
                    "more than " + MOST_TRIANGLES + " triangles; thin the mesh out before importing it");
        }
        if (triangles == part.length) {
            part = Arrays.copyOf(part, 2 * triangles);
            xyz = Arrays.copyOf(xyz, 18 * triangles);
        }
        System.arraycopy(nine, 0, xyz, 9 * triangles, 9);
        part[triangles++] = partIndex;
    }

    int triangles() {
        return triangles;
    }

    int part(int triangle) {
        return part[triangle];
    }

    /** Coordinate (axis 0..2) of a corner (0..2), file units. */
    double coordinate(int triangle, int corner, int axis) {
        return xyz[9 * triangle + 3 * corner + axis];
    }
}
