package baymist.seam;

import baymist.cavity.Cavity;
import baymist.geom.Bvh;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Finds along which triangles a straight line runs, and cuts it into pieces with the same sheets round them. */
final class LineContacts {
    /** Steepest slope of a line against a sheet that it runs along: sine of 5°, ASSUMED. */
    private static final double SLOPE = Math.sin(Math.toRadians(5));
    /** Edges of a triangle this parallel to the line are widened by the tolerance; others end the contact as they are. */
    private static final double SIDEWAYS = 0.1;
    /** Shortest piece, m. */
    private static final double SHORT_M = 1e-6;

    private static final double ROUNDING_M = 1e-11;

    private final Cavity cavity;
    private final TriangleMesh mesh;
    private final Bvh tree;
    private final boolean[] counts;
    /** Unit normals, [triangles]. */
    private final Vec3[] normals;

    LineContacts(Cavity cavity, Bvh tree) {
        this.cavity = cavity;
        this.mesh = cavity.cutSheets();
        this.tree = tree;
        counts = new boolean[mesh.triangleCount()];
        normals = new Vec3[counts.length];
        for (int t = 0; t < counts.length; t++) {
            counts[t] = MeshEdges.counts(cavity, t);
            normals[t] = mesh.normal(t);
        }
    }

    /** A piece of line and the sheets round it. */
    record Piece(Vec3 from, Vec3 to, SheetFan fan) {}

    private record Contact(int part, double start, double end, List<Vec3> away) {}

    /**
     * Pieces of a line, in turn.
     *
     * @param toleranceM how far off a sheet the line may run
     * @param alone whether pieces with sheet of one part alone are wanted; if not, a line of which no other is near has none
     */
    List<Piece> along(Vec3 from, Vec3 to, double toleranceM, boolean alone) {
        double length = from.distance(to);
        if (!(length > SHORT_M)) {
            return List.of();
        }
        Vec3 unit = to.minus(from).times(1 / length);
        List<Integer> near = new ArrayList<>();
        tree.forEachNearSegment(from, to, toleranceM, t -> {
            if (counts[t]) {
                near.add(t);
            }
        });
        if (!alone && near.stream().mapToInt(cavity::partOfCut).distinct().count() < 2) {
            return List.of();
        }
        near.sort(null);
        List<Contact> contacts = new ArrayList<>();
        for (int t : near) {
            Contact c = contact(from, unit, length, t, toleranceM);
            if (c != null) {
                contacts.add(c);
            }
        }
        double[] cuts = cuts(contacts, length);
        List<Piece> pieces = new ArrayList<>();
        for (int i = 0; i + 1 < cuts.length; i++) {
            double middle = 0.5 * (cuts[i] + cuts[i + 1]);
            SheetFan fan = new SheetFan(unit);
            for (Contact c : contacts) {
                if (c.start < middle && middle < c.end) {
                    c.away.forEach(a -> fan.add(c.part, a));
                }
            }
            Vec3 a = i == 0 ? from : from.plus(cuts[i], unit);
            Vec3 b = i + 2 == cuts.length ? to : from.plus(cuts[i + 1], unit);
            pieces.add(new Piece(a, b, fan));
        }
        return pieces;
    }

    /** Ends of all contacts, ascending, without pieces too short to matter; the line's own ends always. */
    private static double[] cuts(List<Contact> contacts, double length) {
        double[] all = new double[2 * contacts.size()];
        for (int i = 0; i < contacts.size(); i++) {
            all[2 * i] = contacts.get(i).start;
            all[2 * i + 1] = contacts.get(i).end;
        }
        Arrays.sort(all);
        double[] kept = new double[all.length + 2];
        int count = 1;
        for (double s : all) {
            if (s - kept[count - 1] > SHORT_M && length - s > SHORT_M) {
                kept[count++] = s;
            }
        }
        kept[count++] = length;
        return Arrays.copyOf(kept, count);
    }

    /** Where the line runs along a triangle, and to which sides the triangle lies, or null. */
    private @Nullable Contact contact(Vec3 from, Vec3 unit, double length, int t, double tolerance) {
        Vec3 n = normals[t];
        double rise = unit.dot(n);
        if (Math.abs(rise) > SLOPE) {
            return null;
        }
        double[] span = {0, length};
        double height = from.minus(mesh.point(t, 0)).dot(n);
        keep(span, tolerance - height, -rise);
        keep(span, tolerance + height, rise);
        for (int k = 0; k < 3; k++) {
            Vec3 a = mesh.point(t, k);
            Vec3 inward = n.cross(mesh.point(t, (k + 1) % 3).minus(a)).unit();
            double rate = unit.dot(inward);
            double slack = Math.abs(rate) < SIDEWAYS ? tolerance : ROUNDING_M;
            keep(span, from.minus(a).dot(inward) + slack, rate);
        }
        if (!(span[1] - span[0] > SHORT_M)) {
            return null;
        }
        Vec3 away = n.cross(unit).unit();
        double low = 0;
        double high = 0;
        for (int k = 0; k < 3; k++) {
            double d = mesh.point(t, k).minus(from).dot(away);
            low = Math.min(low, d);
            high = Math.max(high, d);
        }
        List<Vec3> sides = new ArrayList<>();
        double wide = 2 * tolerance;
        if (high > wide || high >= -low) {
            sides.add(away);
        }
        if (-low > wide || -low > high) {
            sides.add(away.negate());
        }
        return new Contact(cavity.partOfCut(t), span[0], span[1], sides);
    }

    /** Keeps of a span where {@code value + rate s >= 0}. */
    private static void keep(double[] span, double value, double rate) {
        if (rate > 0) {
            span[0] = Math.max(span[0], -value / rate);
        } else if (rate < 0) {
            span[1] = Math.min(span[1], -value / rate);
        } else if (value < 0) {
            span[1] = span[0];
        }
    }
}
