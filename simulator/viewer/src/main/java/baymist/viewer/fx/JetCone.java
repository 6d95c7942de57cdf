package baymist.viewer.fx;

import baymist.geom.Vec3;
import baymist.recording.Jet;
import java.util.List;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import javafx.scene.paint.PhongMaterial;
import javafx.scene.shape.CullFace;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;
import javafx.scene.shape.VertexFormat;

/** Jets as cones, one inside another, that fade along the way and towards the rim. */
final class JetCone {
    private static final int AROUND = 20;
    /** Widths of the cones over the jet's own. The spray goes on, thinner, beyond the half-width. */
    private static final double[] WIDTHS = {1.6, 1.0, 0.5};

    private static final int SHADES = 64;
    private static final double DENSEST = 0.42;

    private final TriangleMesh mesh = new TriangleMesh(VertexFormat.POINT_NORMAL_TEXCOORD);
    private final MeshView view = new MeshView(mesh);

    JetCone(Color colour) {
        mesh.getNormals().setAll(0, 0, 1);
        mesh.getTexCoords().setAll(0.5f / SHADES, 0.5f, 1 - 0.5f / SHADES, 0.5f);
        WritableImage fade = new WritableImage(SHADES, 1);
        int[] argb = new int[SHADES];
        for (int i = 0; i < SHADES; i++) {
            double a = DENSEST * (1 - i / (SHADES - 1.0));
            Color c = Color.color(colour.getRed(), colour.getGreen(), colour.getBlue(), a);
            argb[i] = (int) Math.round(255 * a) << 24
                    | (int) Math.round(255 * c.getRed()) << 16
                    | (int) Math.round(255 * c.getGreen()) << 8
                    | (int) Math.round(255 * c.getBlue());
        }
        fade.getPixelWriter().setPixels(0, 0, SHADES, 1, PixelFormat.getIntArgbInstance(), argb, 0, SHADES);
        PhongMaterial paint = new PhongMaterial(Color.WHITE);
        paint.setDiffuseMap(fade);
        view.setMaterial(paint);
        view.setCullFace(CullFace.BACK);
        view.setVisible(false);
    }

    MeshView node() {
        return view;
    }

    void set(List<Jet> jets) {
        int cones = jets.size() * WIDTHS.length;
        float[] points = new float[cones * (AROUND + 1) * 3];
        int[] faces = new int[cones * AROUND * 9];
        int p = 0;
        int f = 0;
        for (double width : WIDTHS) {
            for (Jet jet : jets) {
                int apex = p / 3;
                p = put(points, p, jet.originM());
                Vec3 u = jet.direction().anyPerpendicular();
                Vec3 v = jet.direction().cross(u);
                double r = jet.reachM() * Math.tan(Math.min(1.2, width * jet.halfAngleRad()));
                for (int k = 0; k < AROUND; k++) {
                    double turn = 2 * Math.PI * k / AROUND;
                    Vec3 rim = jet.originM()
                            .plus(jet.reachM(), jet.direction())
                            .plus(r * Math.cos(turn), u)
                            .plus(r * Math.sin(turn), v);
                    p = put(points, p, rim);
                    int[] corners = {apex, apex + 1 + (k + 1) % AROUND, apex + 1 + k};
                    for (int c = 0; c < 3; c++) {
                        faces[f] = corners[c];
                        faces[f + 2] = c == 0 ? 0 : 1;
                        f += 3;
                    }
                }
            }
        }
        mesh.getFaces().clear();
        mesh.getPoints().setAll(points);
        mesh.getFaces().setAll(faces);
        view.setVisible(cones > 0);
    }

    private static int put(float[] points, int at, Vec3 p) {
        points[at] = (float) p.x();
        points[at + 1] = (float) p.y();
        points[at + 2] = (float) p.z();
        return at + 3;
    }
}
