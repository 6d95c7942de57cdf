package baymist.viewer.fx;

import baymist.geom.Vec3;
import java.util.List;
import javafx.scene.paint.Color;
import javafx.scene.shape.CullFace;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;
import javafx.scene.shape.VertexFormat;

/** Line segments as thin rods. */
final class LineMesh {
    private static final int FEW_SIDES = 3;

    private final TriangleMesh mesh = new TriangleMesh(VertexFormat.POINT_NORMAL_TEXCOORD);
    private final MeshView view = new MeshView(mesh);
    private float[] segments = {};
    private final int sides;
    private double radiusM;

    /** Lines as thin as they can be drawn. */
    LineMesh(Color colour, double radiusM) {
        this(colour, radiusM, FEW_SIDES);
    }

    /** Rods with so many sides. */
    LineMesh(Color colour, double radiusM, int sides) {
        this.radiusM = radiusM;
        this.sides = sides;
        mesh.getNormals().setAll(0, 0, 1);
        mesh.getTexCoords().setAll(0.5f, 0.5f);
        view.setMaterial(Materials.plain(colour));
        view.setCullFace(CullFace.NONE);
        view.setMouseTransparent(true);
    }

    /** Segments between points taken two by two, for {@link #set}. */
    static float[] segments(List<Vec3> ends) {
        float[] flat = new float[3 * ends.size()];
        for (int i = 0; i < ends.size(); i++) {
            flat[3 * i] = (float) ends.get(i).x();
            flat[3 * i + 1] = (float) ends.get(i).y();
            flat[3 * i + 2] = (float) ends.get(i).z();
        }
        return flat;
    }

    MeshView node() {
        return view;
    }

    void colour(Color colour) {
        view.setMaterial(Materials.plain(colour));
    }

    /** @param newSegments m, x y z of one end then of the other, [6 * segments] */
    void set(float[] newSegments) {
        segments = newSegments;
        int count = segments.length / 6;
        int[] faces = new int[count * sides * 2 * 9];
        int f = 0;
        for (int s = 0; s < count; s++) {
            for (int k = 0; k < sides; k++) {
                int a = 2 * sides * s + k;
                int b = 2 * sides * s + (k + 1) % sides;
                for (int p : new int[] {a, b, a + sides, b, b + sides, a + sides}) {
                    faces[f] = p;
                    f += 3;
                }
            }
        }
        mesh.getFaces().clear();
        points();
        mesh.getFaces().setAll(faces);
        view.setVisible(count > 0);
    }

    /** Makes the lines so thick. */
    void radius(double newRadiusM) {
        if (Math.abs(newRadiusM - radiusM) > 0.15 * radiusM) {
            radiusM = newRadiusM;
            points();
        }
    }

    private void points() {
        float[] points = new float[segments.length * sides];
        int at = 0;
        for (int s = 0; s + 5 < segments.length; s += 6) {
            Vec3 a = new Vec3(segments[s], segments[s + 1], segments[s + 2]);
            Vec3 b = new Vec3(segments[s + 3], segments[s + 4], segments[s + 5]);
            Vec3 along = b.minus(a);
            double length = along.length();
            Vec3 u = length > 0 ? along.times(1 / length).anyPerpendicular() : Vec3.X;
            Vec3 v = length > 0 ? along.times(1 / length).cross(u) : Vec3.Y;
            for (Vec3 end : new Vec3[] {a, b}) {
                for (int k = 0; k < sides; k++) {
                    double turn = 2 * Math.PI * k / sides;
                    Vec3 p = end.plus(radiusM * Math.cos(turn), u).plus(radiusM * Math.sin(turn), v);
                    points[at++] = (float) p.x();
                    points[at++] = (float) p.y();
                    points[at++] = (float) p.z();
                }
            }
        }
        mesh.getPoints().setAll(points);
    }
}
