package baymist.viewer.fx;

import baymist.geom.Vec3;
import baymist.viewer.draw.Cut;
import baymist.viewer.draw.CutPiece;
import baymist.viewer.draw.Piece;
import baymist.viewer.draw.PieceSight;
import java.util.Arrays;
import javafx.scene.paint.Material;
import javafx.scene.shape.CullFace;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;
import javafx.scene.shape.VertexFormat;
import org.jspecify.annotations.Nullable;

/**
 * One piece of surface as a mesh whose corners take their colours from one line of a texture, whose triangles can be reordered, and
 * which a plane can cut.
 */
final class PieceMesh {
    private static final int PER_FACE = 9;

    private final Piece piece;
    private final float[] xyz;
    private final int[] corners;
    private final TriangleMesh mesh = new TriangleMesh(VertexFormat.POINT_NORMAL_TEXCOORD);
    private final MeshView view = new MeshView(mesh);
    private final PieceSight sight;
    private boolean wanted = true;
    private boolean behind;
    private CutPiece shape;
    private @Nullable Cut cut;
    private float[] places = {};
    private int[] order;

    PieceMesh(Piece piece, float[] xyz, int[] corners, Material material) {
        this.piece = piece;
        this.xyz = xyz;
        this.corners = corners;
        sight = new PieceSight(piece, xyz, corners);
        order = new int[piece.triangles().length];
        Arrays.setAll(order, i -> i);
        mesh.getNormals().setAll(0, 0, 1);
        view.setMaterial(material);
        view.setCullFace(CullFace.BACK);
        shape = CutPiece.of(piece, xyz, corners, null);
        build();
    }

    Piece piece() {
        return piece;
    }

    MeshView view() {
        return view;
    }

    PieceSight sight() {
        return sight;
    }

    /** Whether the piece is shown, where it is not seen from behind. */
    void wanted(boolean newWanted) {
        wanted = newWanted;
        view.setVisible(wanted && !behind);
    }

    boolean wanted() {
        return wanted;
    }

    /** Leaves the piece out where an eye, m, sees all of it from behind. */
    void look(Vec3 eye) {
        behind = sight.fromBehind(new Vec3(
                eye.x() - view.getTranslateX(), eye.y() - view.getTranslateY(), eye.z() - view.getTranslateZ()));
        view.setVisible(wanted && !behind);
    }

    /** Colours the corners; a place is 0..1 on the texture's line, [vertices of the surface]. */
    void colour(float[] placeOfVertex) {
        places = placeOfVertex;
        mesh.getTexCoords().setAll(coords());
    }

    /** Puts the triangles into this order. */
    void reorder(int[] newOrder) {
        order = newOrder;
        mesh.getFaces().setAll(faces());
    }

    /** Cuts the piece, or makes it whole again; does nothing where the plane does not come near. */
    void cut(@Nullable Cut plane) {
        boolean reaches = plane != null && crosses(plane);
        if (!reaches && cut == null) {
            return;
        }
        cut = reaches ? plane : null;
        shape = CutPiece.of(piece, xyz, corners, cut);
        mesh.getFaces().clear();
        build();
    }

    private boolean crosses(Cut plane) {
        for (int t : piece.triangles()) {
            for (int k = 0; k < 3; k++) {
                int v = 3 * corners[3 * t + k];
                if (plane.beyondM(xyz[v], xyz[v + 1], xyz[v + 2]) > 0) {
                    return true;
                }
            }
        }
        return false;
    }

    private void build() {
        float[] points = new float[3 * shape.points()];
        for (int i = 0; i < shape.points(); i++) {
            for (int a = 0; a < 3; a++) {
                points[3 * i + a] = shape.at(i, xyz[3 * shape.from()[i] + a], xyz[3 * shape.to()[i] + a]);
            }
        }
        mesh.getPoints().setAll(points);
        mesh.getTexCoords().setAll(coords());
        mesh.getFaces().setAll(faces());
    }

    private float[] coords() {
        float[] coords = new float[2 * shape.points()];
        for (int i = 0; i < shape.points(); i++) {
            coords[2 * i] = places.length == 0 ? 0.5f : shape.at(i, places[shape.from()[i]], places[shape.to()[i]]);
            coords[2 * i + 1] = 0.5f;
        }
        return coords;
    }

    private int[] faces() {
        int[] faces = new int[PER_FACE * shape.triangles()];
        int at = 0;
        for (int t : order) {
            for (int c = 3 * shape.start()[t]; c < 3 * shape.start()[t + 1]; c++) {
                faces[at] = shape.corners()[c];
                faces[at + 2] = shape.corners()[c];
                at += 3;
            }
        }
        return faces;
    }
}
