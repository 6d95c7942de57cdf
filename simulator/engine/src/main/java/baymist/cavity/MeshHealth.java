package baymist.cavity;

import baymist.geom.Vec3;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a mesh suffers from, to be shown before anything is computed; caps of gaps are not counted.
 *
 * @param imported what was left out and closed on the way in
 * @param freeEdges edges of exactly one triangle, and their length
 * @param gaps closed loops of free edges that became openings
 * @param branchEdges edges of more than two triangles (a rib on a skin; non-manifold to a modeller)
 * @param opposed edges at which two neighbours of one part face opposite ways; harmless, since both sides of every sheet count
 * @param edgeJoints free vertices that lie on another triangle's edge without being its corner (T-joints)
 * @param faceJoints free vertices that lie on another triangle's face (a frame that stands on a skin)
 * @param nearJoints free vertices that lie on another triangle's corner without being the same vertex
 * @param toleranceM how near counts as on it, m
 * @param bodies pieces that hang together by shared vertices, largest area first
 */
public record MeshHealth(
        MeshImport imported,
        int freeEdges,
        double freeEdgeM,
        int gaps,
        int branchEdges,
        Spots opposed,
        Spots edgeJoints,
        Spots faceJoints,
        Spots nearJoints,
        double toleranceM,
        List<Body> bodies) {
    public MeshHealth {
        bodies = List.copyOf(bodies);
    }

    /** Looks a cavity over; null if it does not come from a mesh. */
    public static @Nullable MeshHealth of(Cavity cavity) {
        MeshImport imported = cavity.imported();
        return imported == null ? null : MeshExaminer.examine(cavity, imported);
    }

    /**
     * Places of one sort: how many, and where the first few are, m.
     *
     * @param widestM largest distance bridged, m
     */
    public record Spots(int count, List<Vec3> places, double widestM) {
        public Spots {
            places = List.copyOf(places);
        }
    }

    /** A piece of the mesh. */
    public record Body(int triangles, double areaM2, Vec3 centreM, String part) {}
}
