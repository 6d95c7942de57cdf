package baymist.access;

import baymist.cavity.Opening;
import baymist.geom.PlacedOutline;
import baymist.geom.RayHit;
import baymist.geom.TriangleFilter;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * How far the lines of a cell can reach at most. All lines of a cell lie in a beam: at height s above the opening, in the
 * rectangle about the middle line with half sides hu + s ha and hv + s hb. Three arguments bound it (docs/theory/access.md, 3):
 *
 * <ol>
 *   <li>Core: what the middle rod would still meet if it were thinner by the beam's stray, every rod of the cell meets.
 *   <li>Sheet across: walk over the sides of sheets that bound the air in front of what the middle line meets, from edge to edge, as far as
 *       they lie in the beam. If no open hole is met, this surface has no border inside the beam; the number of times that a line crosses it,
 *       against its facing less along it, is the same for all lines of the cell. If it is not 0, none gets through.
 *   <li>Hull: a beam that has left the hull of the structure, has gone through a sheet, or out by another port, which ends a line too.
 * </ol>
 *
 * <p>Keeps scratch arrays: one object for one search.
 */
final class Beam {
    /** Most sides of sheets that are looked at. */
    private static final int MOST = 512;

    /** Most sheets along the middle line that are tried. */
    private static final int CROSSINGS = 8;

    /** Allowance for rounding, m. */
    private static final double SLACK_M = 1e-9;

    private final LineProbe probe;
    private final double radiusM;
    private final double lengthM;
    private final SheetSides sides;
    /** Corners of each triangle in opening coordinates u, v, s: [9 * triangle + 3 * corner + axis], m. */
    private final double[] corners;
    /** Normals of half spaces that hold the structure, [k][3], and how far they reach, m, [k]. */
    private final double[][] hullNormals;

    private final double[] hullReachM;

    /** Openings: u, v, s of the middle and reach, m. */
    private final double[][] openings;

    /** Whether a line may go on through an opening, [openings]. */
    private final boolean[] pierceable;

    private final int[] stamp;
    private int round;
    private final int[] stack = new int[MOST];
    private final double[] span = new double[2];
    /** Sign: whether the triangle that was last pierced has its normal along the line. */
    private double facing;

    Beam(ReachProblem p, LineProbe probe) {
        this.probe = probe;
        this.radiusM = 0.5 * probe.rodM();
        this.lengthM = p.wand().lengthM();
        Surroundings around = p.surroundings();
        this.sides = around.sides();
        PlacedOutline place = probe.room().place();
        TriangleMesh mesh = sides.mesh();
        this.corners = new double[9 * mesh.triangleCount()];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            for (int k = 0; k < 3; k++) {
                Vec3 x = mesh.point(t, k);
                corners[9 * t + 3 * k] = place.u(x);
                corners[9 * t + 3 * k + 1] = place.v(x);
                corners[9 * t + 3 * k + 2] = place.heightM(x);
            }
        }
        this.hullNormals = normals();
        this.hullReachM = reaches();
        int count = p.cavity().openings().size();
        this.openings = new double[count][];
        this.pierceable = new boolean[count];
        for (int i = 0; i < count; i++) {
            Opening o = p.cavity().openings().get(i);
            Vec3 c = o.place().centreM();
            openings[i] = new double[] {
                place.u(c),
                place.v(c),
                place.heightM(c),
                1.02 * o.place().outline().reachM()
            };
            // a line that leaves by another port ends there, as it would at the sheet
            pierceable[i] = around.open(i) && (i == p.openingIndex() || !o.exterior());
        }
        this.stamp = new int[2 * mesh.triangleCount()];
    }

    /** The 26 directions from the middle of a cube to its faces, edges and corners. */
    private static double[][] normals() {
        List<double[]> all = new ArrayList<>();
        for (int i = 0; i < 27; i++) {
            int a = i % 3 - 1;
            int b = i / 3 % 3 - 1;
            int c = i / 9 - 1;
            if (a != 0 || b != 0 || c != 0) {
                all.add(new double[] {a, b, c});
            }
        }
        return all.toArray(new double[0][]);
    }

    private double[] reaches() {
        double[] reach = new double[hullNormals.length];
        for (int k = 0; k < reach.length; k++) {
            double[] n = hullNormals[k];
            double most = Double.NEGATIVE_INFINITY;
            for (int t = 0; t < corners.length / 9; t++) {
                for (int c = 9 * t; c < 9 * t + 9; c += 3) {
                    most = Math.max(most, n[0] * corners[c] + n[1] * corners[c + 1] + n[2] * corners[c + 2]);
                }
            }
            reach[k] = most;
        }
        return reach;
    }

    /** The cell about a line with what bounds it; {@code parent} bounds it too. */
    LineCell cell(RodLine middle, double[] half, double parentHeightM, double parentDepthM) {
        double mostTan = Math.hypot(Math.abs(middle.tu()) + half[2], Math.abs(middle.tv()) + half[3]);
        double sec = Math.sqrt(1 + mostTan * mostTan);
        double sine = mostTan / sec;
        LineCell open = new LineCell(middle, half, parentHeightM, parentDepthM);
        double height = Math.min(parentHeightM, hullExit(open));
        double depth = Math.min(parentDepthM, height * sec);
        RayHit ahead = middle.ahead();
        double cos = 1 / Math.sqrt(1 + middle.tu() * middle.tu() + middle.tv() * middle.tv());
        double at = ahead == null ? height : Math.min(height, ahead.t() * cos);
        double core = radiusM - open.strayM(at);
        if (core >= 0) {
            double met = probe.thinDepthM(middle, core * cos, at / cos);
            double turn = Math.hypot(half[2], half[3]);
            depth = Math.min(depth, met + radiusM * turn + Math.hypot(half[0], half[1]) * sine);
            height = Math.min(height, met * cos + 2 * radiusM * sine);
        } else if (at < height) {
            double across = sheetAcross(open, at / cos, height / cos);
            height = Math.min(height, across);
            depth = Math.min(depth, across * sec);
        }
        return new LineCell(middle, half, Math.min(height, lengthM), Math.min(depth, lengthM));
    }

    /** Height at which the whole beam is outside the hull of the structure. */
    private double hullExit(LineCell c) {
        RodLine m = c.middle();
        double[] h = c.half();
        double exit = Double.POSITIVE_INFINITY;
        for (int k = 0; k < hullNormals.length; k++) {
            double[] n = hullNormals[k];
            double start = n[0] * m.u() + n[1] * m.v() - Math.abs(n[0]) * h[0] - Math.abs(n[1]) * h[1];
            double slope = n[0] * m.tu() + n[1] * m.tv() + n[2] - Math.abs(n[0]) * h[2] - Math.abs(n[1]) * h[3];
            if (slope > 0) {
                exit = Math.min(exit, Math.max(0, (hullReachM[k] - start) / slope));
            }
        }
        return exit + SLACK_M;
    }

    /** Whether the beam may meet the sphere about an opening; true in doubt. */
    private static boolean meets(LineCell c, double[] sphere) {
        RodLine m = c.middle();
        double[] h = c.half();
        double reach = sphere[3];
        double s = sphere[2];
        return s + reach >= 0
                && Math.abs(sphere[0] - m.u() - s * m.tu())
                        <= h[0] + (s + reach) * h[2] + reach * Math.sqrt(1 + m.tu() * m.tu())
                && Math.abs(sphere[1] - m.v() - s * m.tv())
                        <= h[1] + (s + reach) * h[3] + reach * Math.sqrt(1 + m.tv() * m.tv());
    }

    /** Height below which every line of the cell has met a sheet, tried on all that the middle line meets; infinite if none tells. */
    private double sheetAcross(LineCell c, double fromM, double toM) {
        RodLine m = c.middle();
        double from = fromM - 1e-6;
        for (int i = 0; i < CROSSINGS && from < toM; i++) {
            RayHit whole = sides.bvh().closestHit(m.originM(), m.axis(), from, toM, TriangleFilter.ALL);
            if (whole == null) {
                break;
            }
            double across = across(c, whole.triangle());
            if (across < Double.POSITIVE_INFINITY) {
                return across;
            }
            from = whole.t() + 1e-6;
        }
        return Double.POSITIVE_INFINITY;
    }

    /** The same for the sheet that holds a triangle of the whole sheets. */
    private double across(LineCell c, int start) {
        RodLine m = c.middle();
        double most = 0;
        int crossings = 0;
        int top = 0;
        int seen = 1;
        round++;
        int first = 2 * start + (sides.mesh().normal(start).dot(m.axis()) < 0 ? 0 : 1);
        stamp[first] = round;
        stack[top++] = first;
        while (top > 0) {
            int side = stack[--top];
            int t = side / 2;
            if (pierceable(c, t)) {
                return Double.POSITIVE_INFINITY;
            }
            double lowest = Math.max(2 * SLACK_M, probe.startM(sides.part(t), c.largestTangent()));
            for (int k = 0; k < 3; k++) {
                if (!clip(c, 9 * t + 3 * k, 9 * t + 3 * ((k + 1) % 3))) {
                    continue;
                }
                most = Math.max(most, span[1]);
                int next = sides.across(side, k);
                if (span[0] <= lowest || (stamp[next] != round && seen == MOST)) {
                    return Double.POSITIVE_INFINITY;
                }
                if (stamp[next] != round) {
                    stamp[next] = round;
                    seen++;
                    stack[top++] = next;
                }
            }
            most = Math.max(most, cornersOfBeam(c, t));
            crossings += crossing(c, side);
        }
        return crossings != 0 ? most + SLACK_M : Double.POSITIVE_INFINITY;
    }

    /** Whether a triangle is a mere cap, or has an open hole that the beam may meet. */
    private boolean pierceable(LineCell c, int t) {
        if (sides.part(t) < 0) {
            return true;
        }
        for (int o : sides.openingsAt(t)) {
            if (pierceable[o] && meets(c, openings[o])) {
                return true;
            }
        }
        return false;
    }

    /** 1 where a line of the cell that meets no edge by chance crosses a side against its facing, -1 along it, 0 past it. */
    private int crossing(LineCell c, int side) {
        RodLine m = c.middle();
        double[] h = c.half();
        int t = side / 2;
        double s = pierced(t, m.u() + 0.31 * h[0], m.v() - 0.17 * h[1], m.tu() + 0.23 * h[2], m.tv() - 0.29 * h[3]);
        if (!(s > 0)) {
            return 0;
        }
        // the three weights have the sign of the normal's component along the line
        boolean along = facing > 0;
        return along == (side % 2 == 0) ? -1 : 1;
    }

    /** Clips the edge between two corners by the beam; true if something is left, then {@link #span} holds its heights. */
    private boolean clip(LineCell c, int a, int b) {
        double from = 0;
        double to = 1;
        for (int side = 0; side < 5; side++) {
            double fa = inside(c, a, side);
            double fb = inside(c, b, side);
            if (fa < 0 && fb < 0) {
                return false;
            }
            if (fa < 0) {
                from = Math.max(from, fa / (fa - fb));
            } else if (fb < 0) {
                to = Math.min(to, fa / (fa - fb));
            }
        }
        if (from > to) {
            return false;
        }
        double sa = corners[a + 2] + from * (corners[b + 2] - corners[a + 2]);
        double sb = corners[a + 2] + to * (corners[b + 2] - corners[a + 2]);
        span[0] = Math.min(sa, sb);
        span[1] = Math.max(sa, sb);
        return true;
    }

    /** Distance of a corner inside one of the beam's four sides, along the plate, or above the plate. */
    private double inside(LineCell c, int a, int side) {
        double s = corners[a + 2];
        if (side == 4) {
            return s + SLACK_M;
        }
        RodLine m = c.middle();
        double[] h = c.half();
        double off = side < 2 ? corners[a] - m.u() - s * m.tu() : corners[a + 1] - m.v() - s * m.tv();
        double half = side < 2 ? h[0] + s * h[2] : h[1] + s * h[3];
        return half + SLACK_M + (side % 2 == 0 ? off : -off);
    }

    /** Greatest height at which one of the beam's four edges goes through a triangle. */
    private double cornersOfBeam(LineCell c, int t) {
        RodLine m = c.middle();
        double[] h = c.half();
        double most = 0;
        for (int i = 0; i < 4; i++) {
            double a = i % 2 == 0 ? 1 : -1;
            double b = i < 2 ? 1 : -1;
            most = Math.max(most, pierced(t, m.u() + a * h[0], m.v() + b * h[1], m.tu() + a * h[2], m.tv() + b * h[3]));
        }
        return most;
    }

    /** Height at which a line goes through a triangle, minus infinity if it passes by. */
    private double pierced(int t, double u, double v, double tu, double tv) {
        int a = 9 * t;
        // seen along the line: coordinates at height 0
        double ax = corners[a] - u - corners[a + 2] * tu;
        double ay = corners[a + 1] - v - corners[a + 2] * tv;
        double bx = corners[a + 3] - u - corners[a + 5] * tu;
        double by = corners[a + 4] - v - corners[a + 5] * tv;
        double cx = corners[a + 6] - u - corners[a + 8] * tu;
        double cy = corners[a + 7] - v - corners[a + 8] * tv;
        double wa = bx * cy - by * cx;
        double wb = cx * ay - cy * ax;
        double wc = ax * by - ay * bx;
        if ((wa < 0 || wb < 0 || wc < 0) && (wa > 0 || wb > 0 || wc > 0)) {
            return Double.NEGATIVE_INFINITY;
        }
        double sum = wa + wb + wc;
        facing = sum;
        return sum == 0
                ? Double.NEGATIVE_INFINITY
                : (wa * corners[a + 2] + wb * corners[a + 5] + wc * corners[a + 8]) / sum;
    }
}
