package baymist.viewer.draw;

/**
 * Triangles that are shown, moved and sorted together: of one part, on one side, in one bay, close together.
 *
 * @param group what the triangles have in common, an index of the caller's
 * @param triangles their numbers
 * @param centre middle of their corners, m, x y z
 */
public record Piece(int group, int[] triangles, float[] centre) {}
