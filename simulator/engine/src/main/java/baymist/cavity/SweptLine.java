package baymist.cavity;

import baymist.geom.Vec3;
import baymist.scene.BoxSectionSpec.Bend;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A bent line with axes for a section: straight legs, and bends of mitres that touch the true arc.
 *
 * <p>A bend of angle theta and radius R is m corners on the radius R / cos(theta / 2m), each turning by theta / m, so that
 * every piece between them touches the arc. The section is turned from piece to piece by the least rotation. Distances along
 * the line are those of the true line: legs and arcs R theta.
 */
final class SweptLine {
    private static final int MOST_FACETS = 90;
    private static final double STRAIGHT_RAD = 1e-6;
    private static final double SLACK_M = 1e-9;

    /** A straight piece of the true line that stations may stand on. */
    private record Leg(Vec3 start, double fromM, double lengthM, int piece) {}

    /** Direction and axes of a straight piece between corners. */
    private record Piece(Vec3 along, Vec3 right, Vec3 up) {}

    /**
     * A plane across the line with the section laid on it.
     *
     * @param normal of the plane; the axes are those of the piece before a corner
     * @param piece number of the piece that the plane begins, or stands in
     */
    record Ring(
            Vec3 origin,
            Vec3 right,
            Vec3 up,
            Vec3 along,
            @Nullable Vec3 normal,
            int piece) {
        /** Place of a point of the section: carried along its piece into the plane. */
        Vec3 at(double a, double b) {
            Vec3 p = origin.plus(a, right).plus(b, up);
            if (normal == null) {
                return p;
            }
            double s = p.minus(origin).dot(normal) / along.dot(normal);
            return p.plus(-s, along);
        }
    }

    private final List<Leg> legs = new ArrayList<>();
    private final List<Piece> pieces = new ArrayList<>();
    /** Corners of the mitred line, both ends included. [pieces + 1] */
    private final List<Vec3> corners = new ArrayList<>();
    /** Number of the stated bend at each corner, from 1. */
    private final List<Integer> bendOfCorner = new ArrayList<>();

    private double lengthM;

    private SweptLine() {}

    /**
     * @param reachM how far the section reaches from the line
     * @param check takes CAV-046 for a line that can't be laid
     */
    static @Nullable SweptLine of(List<Bend> line, Vec3 up, double reachM, SpecCheck check) {
        SweptLine swept = new SweptLine();
        List<Vec3> directions = new ArrayList<>();
        for (int i = 0; i + 1 < line.size(); i++) {
            Vec3 d = line.get(i + 1).atM().minus(line.get(i).atM());
            if (!(d.length() >= 1e-4 && d.length() <= SpecCheck.LARGEST_M)) {
                check.error(
                        "CAV-046",
                        line.get(i + 1).place(),
                        "point " + (i + 2) + " of the line lies " + SpecCheck.mm(d.length())
                                + " from the one before; 0.1 mm to 1000 m expected");
                return null;
            }
            directions.add(d.unit());
        }
        if (up.cross(directions.get(0)).length() < 1e-3 * up.length()) {
            check.error(
                    "CAV-046",
                    line.get(0).place(),
                    "the line starts along the direction that was called up; state an `up` across it");
            return null;
        }
        return swept.lay(line, directions, up, reachM, check) ? swept : null;
    }

    private boolean lay(List<Bend> line, List<Vec3> directions, Vec3 up, double reachM, SpecCheck check) {
        Vec3 t = directions.get(0);
        Vec3 b = up.plus(-up.dot(t), t).unit();
        pieces.add(new Piece(t, b.cross(t), b));
        corners.add(line.get(0).atM());
        bendOfCorner.add(0);
        double trimBefore = 0;
        for (int i = 1; i < line.size(); i++) {
            boolean last = i == line.size() - 1;
            double angle = last ? 0 : angle(directions.get(i - 1), directions.get(i));
            if (angle > Math.toRadians(170)) {
                check.error(
                        "CAV-046",
                        line.get(i).place(),
                        "the line turns back at point " + (i + 1) + "; at most 170 degrees expected");
                return false;
            }
            double radius = last || angle < STRAIGHT_RAD ? 0 : line.get(i).radiusM();
            double trim = radius * Math.tan(angle / 2);
            double leg = line.get(i).atM().distance(line.get(i - 1).atM()) - trimBefore - trim;
            if (!(leg >= -SLACK_M)) {
                check.error(
                        "CAV-046",
                        line.get(i).place(),
                        "the bends at points " + i + " and " + (i + 1) + " take " + SpecCheck.mm(-leg)
                                + " more than the length between them; smaller radii or points further apart expected");
                return false;
            }
            Vec3 start = line.get(i - 1).atM().plus(trimBefore, directions.get(i - 1));
            legs.add(new Leg(start, lengthM, Math.max(0, leg), pieces.size() - 1));
            lengthM += Math.max(0, leg);
            if (last) {
                corners.add(line.get(i).atM());
                bendOfCorner.add(0);
            } else if (angle >= STRAIGHT_RAD) {
                bend(line.get(i), i, directions.get(i - 1), directions.get(i), angle, radius, reachM);
                lengthM += radius * angle;
            } else {
                corner(line.get(i).atM(), i, directions.get(i - 1), directions.get(i));
            }
            trimBefore = trim;
        }
        return true;
    }

    private static double angle(Vec3 a, Vec3 b) {
        return Math.atan2(a.cross(b).length(), a.dot(b));
    }

    private void bend(Bend bend, int number, Vec3 in, Vec3 out, double angle, double radius, double reachM) {
        int m = radius > 0 ? bend.facets() : 1;
        if (m == 0) {
            m = 1;
            while (m < MOST_FACETS && (radius + reachM) * (1 / Math.cos(angle / 2 / m) - 1) > ShellSections.CHORD_M) {
                m++;
            }
        }
        Vec3 axis = in.cross(out).unit();
        Vec3 outward = in.cross(axis).unit();
        Vec3 centre = bend.atM().plus(-radius * Math.tan(angle / 2), in).plus(-radius, outward);
        Vec3 before = in;
        for (int j = 0; j < m; j++) {
            Vec3 after = j + 1 == m ? out : turned(in, axis, angle * (j + 1) / m);
            Vec3 spoke = turned(outward, axis, angle * (j + 0.5) / m);
            Vec3 at = m == 1 ? bend.atM() : centre.plus(radius / Math.cos(angle / 2 / m), spoke);
            corner(at, number, before, after);
            before = after;
        }
    }

    private void corner(Vec3 at, int number, Vec3 before, Vec3 after) {
        corners.add(at);
        bendOfCorner.add(number);
        Piece piece = pieces.get(pieces.size() - 1);
        double turn = angle(before, after);
        if (turn < STRAIGHT_RAD) {
            Vec3 up = piece.up.plus(-piece.up.dot(after), after).unit();
            pieces.add(new Piece(after, up.cross(after), up));
            return;
        }
        Vec3 axis = before.cross(after).unit();
        pieces.add(new Piece(after, turned(piece.right, axis, turn), turned(piece.up, axis, turn)));
    }

    /** Turned about a unit axis (Rodrigues 1840). */
    private static Vec3 turned(Vec3 p, Vec3 axis, double angle) {
        double c = Math.cos(angle);
        return p.times(c).plus(Math.sin(angle), axis.cross(p)).plus((1 - c) * axis.dot(p), axis);
    }

    /** Length of the true line, m. */
    double lengthM() {
        return lengthM;
    }

    int pieces() {
        return pieces.size();
    }

    /** Number of the stated point (from 1) whose bend begins the piece. */
    int pointOfPiece(int piece) {
        return bendOfCorner.get(piece) + 1;
    }

    /** The plane that begins piece {@code k}; {@code k = pieces()} is the far end. */
    Ring joint(int k) {
        Piece piece = pieces.get(Math.max(0, k - 1));
        boolean end = k == 0 || k == pieces.size();
        Vec3 normal = end ? null : piece.along.plus(pieces.get(k).along);
        return new Ring(corners.get(k), piece.right, piece.up, piece.along, normal, k);
    }

    /** The plane square to the line at a distance along it, or null in a bend or beyond the ends. */
    @Nullable
    Ring station(double alongM) {
        for (Leg leg : legs) {
            double s = alongM - leg.fromM;
            if (s >= -SLACK_M && s <= leg.lengthM + SLACK_M) {
                Piece piece = pieces.get(leg.piece);
                return new Ring(leg.start.plus(s, piece.along), piece.right, piece.up, piece.along, null, leg.piece);
            }
        }
        return null;
    }

    /** "0 to 300 mm, 412 to 900 mm": where stations may stand. */
    String straights() {
        List<String> words = new ArrayList<>();
        for (Leg leg : legs) {
            words.add(SpecCheck.mm(leg.fromM) + " to " + SpecCheck.mm(leg.fromM + leg.lengthM));
        }
        return String.join(", ", words);
    }
}
