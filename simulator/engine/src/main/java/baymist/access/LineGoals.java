package baymist.access;

import baymist.geom.Box3;
import baymist.geom.Vec3;

/** What lines can be good for. */
final class LineGoals {
    /** Room beyond which more is no better, m (ASSUMED: the breadth of a hand's tremble at a long wand several times over). */
    static final double ENOUGH_M = 0.025;

    private LineGoals() {}

    /** As deep as possible, to within a tolerance. */
    static RigidSearch.Goal deepest(double toleranceM) {
        return new RigidSearch.Goal() {
            @Override
            public double score(RodLine line) {
                return line.depthM();
            }

            @Override
            public double bound(LineCell cell) {
                return cell.depthM();
            }

            @Override
            public double tolerance() {
                return toleranceM;
            }
        };
    }

    /** As much room as possible round the wand down to a depth; a line that does not reach it counts by what it lacks, below -1. */
    static RigidSearch.Goal central(LineProbe probe, double depthM, double toleranceM) {
        return new RigidSearch.Goal() {
            @Override
            public double score(RodLine line) {
                return line.depthM() >= depthM ? probe.roomM(line, depthM, ENOUGH_M) : -1 - (depthM - line.depthM());
            }

            @Override
            public double bound(LineCell cell) {
                if (cell.depthM() < depthM) {
                    return -1 - (depthM - cell.depthM());
                }
                double move = Math.hypot(cell.half()[0], cell.half()[1]);
                double turn = Math.hypot(cell.half()[2], cell.half()[3]);
                double stray = Math.max(
                        cell.strayM(Math.min(depthM, cell.heightM())),
                        probe.room().growthM(move, turn));
                double more = stray + 0.5 * probe.rodM() * turn;
                return Math.min(ENOUGH_M, probe.roomM(cell.middle(), depthM, ENOUGH_M + more) + more);
            }

            @Override
            public double tolerance() {
                return toleranceM;
            }
        };
    }

    /** The tip as near as possible to a region at some depth. */
    static RigidSearch.Goal near(Box3 region, double toleranceM) {
        return new RigidSearch.Goal() {
            @Override
            public double score(RodLine line) {
                return -distanceM(line.originM(), line.axis(), line.depthM(), region);
            }

            @Override
            public double bound(LineCell cell) {
                RodLine m = cell.middle();
                double sec = Math.sqrt(1 + m.tu() * m.tu() + m.tv() * m.tv());
                double far = Math.min(cell.heightM() * sec, cell.depthM() + cell.strayM());
                return -Math.max(0, distanceM(m.originM(), m.axis(), far, region) - cell.strayM());
            }

            @Override
            public double tolerance() {
                return toleranceM;
            }
        };
    }

    /** Least distance of the region from the points of a line down to a depth, m. */
    static double distanceM(Vec3 origin, Vec3 axis, double depthM, Box3 region) {
        return distance(origin.plus(nearestM(origin, axis, depthM, region), axis), region);
    }

    /** Depth between 0 and the given one at which a line is nearest to the region, m: the distance from a box is convex along a line. */
    static double nearestM(Vec3 origin, Vec3 axis, double depthM, Box3 region) {
        double low = 0;
        double high = depthM;
        for (int i = 0; i < 60; i++) {
            double a = low + (high - low) / 3;
            double b = high - (high - low) / 3;
            if (distance(origin.plus(a, axis), region) <= distance(origin.plus(b, axis), region)) {
                high = b;
            } else {
                low = a;
            }
        }
        return 0.5 * (low + high);
    }

    private static double distance(Vec3 p, Box3 box) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double d = Math.max(
                    0,
                    Math.max(box.min().get(i) - p.get(i), p.get(i) - box.max().get(i)));
            sum += d * d;
        }
        return Math.sqrt(sum);
    }
}
