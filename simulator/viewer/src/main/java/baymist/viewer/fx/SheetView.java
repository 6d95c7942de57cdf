package baymist.viewer.fx;

import baymist.geom.Vec3;
import baymist.viewer.draw.Camera;
import baymist.viewer.draw.DrawOrder;
import baymist.viewer.draw.PieceSorter;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Group;
import javafx.scene.Node;
import org.jspecify.annotations.Nullable;

/** See-through pieces, kept in drawing order: pieces among each other for every picture, triangles within a piece as time allows. */
final class SheetView {
    /** Triangles sorted for one picture at most; takes some milliseconds. ASSUMED: half of what a picture may take at 30 a second. */
    private static final int SORTED_PER_PICTURE = 12_000;

    private final Group group = new Group();
    private final List<PieceMesh> pieces;
    private final PieceSorter sorter;
    private final float[] depth;
    private int[] order = {};

    SheetView(List<PieceMesh> pieces, float[] xyz, int[] corners) {
        this.pieces = List.copyOf(pieces);
        float[][] centroids = new float[pieces.size()][];
        for (int p = 0; p < centroids.length; p++) {
            int[] triangles = pieces.get(p).piece().triangles();
            centroids[p] = new float[3 * triangles.length];
            for (int i = 0; i < centroids[p].length; i++) {
                int c = 3 * triangles[i / 3];
                int axis = i % 3;
                centroids[p][i] =
                        (xyz[3 * corners[c] + axis] + xyz[3 * corners[c + 1] + axis] + xyz[3 * corners[c + 2] + axis])
                                / 3;
            }
        }
        boolean[] leave = new boolean[centroids.length];
        for (int p = 0; p < leave.length; p++) {
            leave[p] = pieces.get(p).sight().neverHidesItself();
        }
        sorter = new PieceSorter(centroids, leave);
        depth = new float[pieces.size()];
    }

    Group node() {
        return group;
    }

    /**
     * Brings the order up to date for an eye.
     *
     * @return pieces whose own triangles still wait to be sorted
     */
    int sort(Camera camera) {
        Vec3 eye = camera.eye();
        Vec3 ahead = camera.forward();
        @Nullable Vec3[] towards = new Vec3[pieces.size()];
        for (int p = 0; p < towards.length; p++) {
            PieceMesh piece = pieces.get(p);
            float[] c = piece.piece().centre();
            Node view = piece.view();
            Vec3 from = new Vec3(c[0] + view.getTranslateX(), c[1] + view.getTranslateY(), c[2] + view.getTranslateZ())
                    .minus(eye);
            depth[p] = (float) from.dot(ahead);
            piece.look(eye);
            // what is not drawn needs no order until it is
            towards[p] = view.isVisible() ? from.times(1 / from.length()) : null;
        }
        int[] now = DrawOrder.farthestFirst(depth);
        if (!java.util.Arrays.equals(now, order)) {
            order = now;
            List<Node> nodes = new ArrayList<>();
            for (int p : now) {
                nodes.add(pieces.get(p).view());
            }
            group.getChildren().setAll(nodes);
        }
        return sorter.sort(towards, SORTED_PER_PICTURE, (p, o) -> pieces.get(p).reorder(o));
    }
}
