package baymist.viewer.fx;

import javafx.scene.paint.Color;
import javafx.scene.shape.CullFace;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;
import javafx.scene.shape.VertexFormat;

/** Dots as small tetrahedra, which look alike from all sides. */
final class DotMesh {
    private static final float[] CORNERS = {1, 1, 1, 1, -1, -1, -1, 1, -1, -1, -1, 1};
    private static final int[] FACES = {0, 1, 2, 0, 3, 1, 0, 2, 3, 1, 3, 2};

    private final TriangleMesh mesh = new TriangleMesh(VertexFormat.POINT_NORMAL_TEXCOORD);
    private final MeshView view = new MeshView(mesh);
    private float[] places = {};
    private double radiusM;

    DotMesh(Color colour, double radiusM) {
        this.radiusM = radiusM;
        mesh.getNormals().setAll(0, 0, 1);
        mesh.getTexCoords().setAll(0.5f, 0.5f);
        view.setMaterial(Materials.plain(colour));
        view.setCullFace(CullFace.BACK);
        view.setVisible(false);
    }

    MeshView node() {
        return view;
    }

    /** @param newPlaces m, [3 * dots] */
    void set(float[] newPlaces) {
        boolean sameCount = newPlaces.length == places.length;
        places = newPlaces;
        if (sameCount) {
            points();
            return;
        }
        int[] faces = new int[places.length / 3 * FACES.length * 3];
        for (int i = 0; i < faces.length / 3; i++) {
            faces[3 * i] = i / FACES.length * 4 + FACES[i % FACES.length];
        }
        mesh.getFaces().clear();
        points();
        mesh.getFaces().setAll(faces);
        view.setVisible(places.length > 0);
    }

    void radius(double newRadiusM) {
        if (Math.abs(newRadiusM - radiusM) > 0.15 * radiusM) {
            radiusM = newRadiusM;
            points();
        }
    }

    private void points() {
        float r = (float) (radiusM / Math.sqrt(3));
        float[] points = new float[4 * places.length];
        for (int i = 0; i < points.length; i++) {
            points[i] = places[i / 12 * 3 + i % 3] + r * CORNERS[i % 12];
        }
        mesh.getPoints().setAll(points);
    }
}
