package baymist.cavity;

import baymist.geom.PlacedOutline;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A rigid motion: turns about the fixed axes x, then y, then z, then a shift. Immutable. It moves points, directions, outlines
 * (centre, both axes and normal), meshes and whole cavities alike. Whole right angles turn without rounding.
 */
public final class Placement {
    private final double[] sine = new double[3];
    private final double[] cosine = new double[3];
    private final Vec3 shiftM;

    private Placement(Vec3 rotationDeg, Vec3 shiftM) {
        for (int axis = 0; axis < 3; axis++) {
            boolean right = rotationDeg.get(axis) / 90 == Math.rint(rotationDeg.get(axis) / 90);
            double angle = Math.toRadians(rotationDeg.get(axis));
            sine[axis] = right ? Math.rint(Math.sin(angle)) : Math.sin(angle);
            cosine[axis] = right ? Math.rint(Math.cos(angle)) : Math.cos(angle);
        }
        this.shiftM = shiftM;
    }

    /**
     * A motion from its turns and its shift.
     *
     * @param rotationDeg turns about x, y and z, degrees, right-handed, done in this order about fixed axes
     * @param shiftM where the origin goes, m
     */
    public static Placement of(Vec3 rotationDeg, Vec3 shiftM) {
        return new Placement(rotationDeg, shiftM);
    }

    public Vec3 direction(Vec3 d) {
        Vec3 a = new Vec3(d.x(), cosine[0] * d.y() - sine[0] * d.z(), sine[0] * d.y() + cosine[0] * d.z());
        Vec3 b = new Vec3(cosine[1] * a.x() + sine[1] * a.z(), a.y(), -sine[1] * a.x() + cosine[1] * a.z());
        return new Vec3(cosine[2] * b.x() - sine[2] * b.y(), sine[2] * b.x() + cosine[2] * b.y(), b.z());
    }

    public Vec3 point(Vec3 p) {
        return direction(p).plus(shiftM);
    }

    public PlacedOutline outline(PlacedOutline o) {
        return new PlacedOutline(
                o.outline(), point(o.centreM()), direction(o.uAxis()), direction(o.vAxis()), direction(o.normal()));
    }

    public TriangleMesh mesh(TriangleMesh mesh) {
        double[] xyz = new double[3 * mesh.vertexCount()];
        for (int v = 0; v < mesh.vertexCount(); v++) {
            Vec3 p = point(mesh.vertex(v));
            for (int axis = 0; axis < 3; axis++) {
                xyz[3 * v + axis] = p.get(axis);
            }
        }
        int[] corners = new int[3 * mesh.triangleCount()];
        for (int c = 0; c < corners.length; c++) {
            corners[c] = mesh.corner(c / 3, c % 3);
        }
        return new TriangleMesh(xyz, corners);
    }

    /** The cavity moved as a whole; names, areas, states and numbers of parts and openings stay. */
    public Cavity cavity(Cavity c) {
        List<Opening> openings = c.openings().stream()
                .map(o -> new Opening(o.name(), o.part(), o.kind(), outline(o.place()), o.states(), o.exterior()))
                .toList();
        @Nullable Vec3 inside = c.inside();
        return new Cavity(
                c.name(),
                c.parts(),
                openings,
                mesh(c.sheets()),
                numbers(c.sheets(), c::partOfSheet),
                mesh(c.cutSheets()),
                numbers(c.cutSheets(), c::partOfCut),
                mesh(c.closures()),
                numbers(c.closures(), c::openingOfClosure),
                inside == null ? null : point(inside),
                c.remarks());
    }

    private static int[] numbers(TriangleMesh mesh, java.util.function.IntUnaryOperator ofTriangle) {
        int[] numbers = new int[mesh.triangleCount()];
        for (int t = 0; t < numbers.length; t++) {
            numbers[t] = ofTriangle.applyAsInt(t);
        }
        return numbers;
    }
}
