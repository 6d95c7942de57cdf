package baymist.access;

import baymist.geom.TriangleDistance;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * How a flexible wand can begin: straight through the hole, square to it and in a fan of tilts that the hole's size and gauge allow, until it is
 * past the entry's own sheet. The stretch within the sheet is judged by the exact outline ({@link EntryRoom}), every other sheet by distance.
 */
final class FlexStart {
    private static final int AZIMUTHS = 8;
    private static final double[] SHARES = {0.35, 0.7};
    /** Steepest tilt that is tried, tangent. */
    private static final double MOST_TANGENT = 1.2;

    private final ReachProblem problem;
    private final EntryRoom room;
    private final double radiusM;

    FlexStart(ReachProblem problem) {
        this.problem = problem;
        this.room = EntryRoom.of(problem.opening(), problem.entry(), problem.gaugeM());
        this.radiusM = 0.5 * problem.wand().thickestM();
    }

    /** Roomiest fit along the entry's direction. */
    HoleFit fit() {
        double[] t = tangents(problem.axis());
        return HoleFit.of(room, t[0], t[1], 2 * radiusM);
    }

    private double[] tangents(Vec3 axis) {
        double cos = axis.dot(room.place().normal());
        return new double[] {
            axis.dot(room.place().uAxis()) / cos, axis.dot(room.place().vAxis()) / cos
        };
    }

    /** First pieces that are free, the entry's own direction first. */
    List<PathPiece> pieces() {
        List<PathPiece> starts = new ArrayList<>();
        double[] stated = tangents(problem.axis());
        offer(starts, stated[0], stated[1]);
        offer(starts, 0, 0);
        double most = EntryRoom.largestTangent(room.place(), 2 * radiusM, MOST_TANGENT);
        for (double share : SHARES) {
            for (int k = 0; k < AZIMUTHS; k++) {
                double angle = 2 * Math.PI * k / AZIMUTHS;
                offer(starts, share * most * Math.cos(angle), share * most * Math.sin(angle));
            }
        }
        return starts;
    }

    private void offer(List<PathPiece> starts, double tu, double tv) {
        HoleFit fit = HoleFit.of(room, tu, tv, 2 * radiusM);
        if (fit.clearanceM() < 0) {
            return;
        }
        Vec3 origin = room.place().point(fit.u(), fit.v());
        Vec3 axis = room.direction(tu, tv).unit();
        double past = pastM(Math.hypot(tu, tv));
        PathPiece piece = PathPiece.straight(
                new Heading(origin, axis), Math.min(past, problem.wand().lengthM()));
        if (starts.contains(piece) || !freeOfOthers(piece)) {
            return;
        }
        starts.add(piece);
    }

    /** Length at which the wand is past the entry's own sheet, m, as for a straight wand ({@link LineProbe}). */
    private double pastM(double tan) {
        return radiusM * tan
                + Math.max(problem.gaugeM(), room.behindM())
                + 0.05 * room.place().outline().reachM();
    }

    private boolean freeOfOthers(PathPiece piece) {
        Surroundings around = problem.surroundings();
        int own = problem.opening().part();
        Vec3 a = piece.pointAt(0);
        Vec3 b = piece.end().atM();
        boolean[] free = {true};
        around.bvh().forEachNearSegment(a, b, radiusM, t -> {
            if (around.part(t) != own && free[0]) {
                double d = TriangleDistance.segmentTriangleM(
                        a,
                        b,
                        around.mesh().point(t, 0),
                        around.mesh().point(t, 1),
                        around.mesh().point(t, 2));
                free[0] = d >= radiusM;
            }
        });
        return free[0];
    }
}
