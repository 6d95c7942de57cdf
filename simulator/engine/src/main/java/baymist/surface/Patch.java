package baymist.surface;

/**
 * One side of one part in one bay: a run of vertices and triangles of a {@link Surface} that no other patch uses.
 *
 * @param part index of the part in the cavity
 * @param bay index of the bay whose air it faces; -1 on {@link Side#OUTSIDE}
 * @param firstVertex,vertexCount its vertices
 * @param firstTriangle,triangleCount its triangles; their corners lie in its vertices
 */
public record Patch(
        int part, int bay, Side side, int firstVertex, int vertexCount, int firstTriangle, int triangleCount) {
    /** What a side of a sheet looks at. */
    public enum Side {
        /** Air of the job: it has surfels and carries film. */
        CAVITY,
        /** Anything else: the open, air that is no part of the job, or a gap too narrow for the voxels. No film is known there. */
        OUTSIDE
    }
}
