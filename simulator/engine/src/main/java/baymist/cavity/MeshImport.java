package baymist.cavity;

import baymist.geom.Vec3;
import java.util.List;

/**
 * What was found and changed while a mesh file was brought in.
 *
 * @param triangles triangles of the mesh as it is used
 * @param flat triangles without area, left out
 * @param twice triangles given twice, one of each kept
 * @param welded free vertices joined with one across a gap, on request
 * @param zipped free vertices set into an edge across a gap, on request
 * @param widestM largest of the gaps closed, m
 * @param closedM length of free edges that closing made whole, m
 */
public record MeshImport(
        int triangles, Dropped flat, Dropped twice, int welded, int zipped, double widestM, double closedM) {
    /** Triangles of one sort: how many, and where the first few are, m. */
    public record Dropped(int count, List<Vec3> places) {
        public static final Dropped NONE = new Dropped(0, List.of());

        public Dropped {
            places = List.copyOf(places);
        }
    }

    MeshImport withClosed(int trianglesNow, int weldedNow, int zippedNow, double widestNowM, double closedNowM) {
        return new MeshImport(trianglesNow, flat, twice, weldedNow, zippedNow, widestNowM, closedNowM);
    }
}
