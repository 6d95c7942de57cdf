package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.cavity.Opening;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;

/**
 * The surface that a mask or plug offers: the pieces cut out of the sheets, and for a gap without such pieces the virtual
 * caps nearest to it.
 *
 * @param openingOf opening of each triangle, [triangles]
 */
record ClosureMesh(TriangleMesh mesh, int[] openingOf) {
    static ClosureMesh of(Cavity cavity) {
        boolean[] served = new boolean[cavity.openings().size()];
        for (int t = 0; t < cavity.closures().triangleCount(); t++) {
            served[cavity.openingOfClosure(t)] = true;
        }
        DoubleList xyz = new DoubleList();
        IntList openingOf = new IntList();
        for (int t = 0; t < cavity.closures().triangleCount(); t++) {
            copy(cavity.closures(), t, xyz);
            openingOf.add(cavity.openingOfClosure(t));
        }
        for (int t = 0; t < cavity.sheets().triangleCount(); t++) {
            int gap = cavity.partOfSheet(t) < 0
                    ? nearestGap(cavity, cavity.sheets().centroid(t))
                    : -1;
            if (gap >= 0 && !served[gap]) {
                copy(cavity.sheets(), t, xyz);
                openingOf.add(gap);
            }
        }
        int[] corners = new int[xyz.size() / 3];
        for (int c = 0; c < corners.length; c++) {
            corners[c] = c;
        }
        return new ClosureMesh(new TriangleMesh(xyz.toArray(), corners), openingOf.toArray());
    }

    private static void copy(TriangleMesh from, int t, DoubleList xyz) {
        for (int k = 0; k < 9; k++) {
            xyz.add(from.coordinate(from.corner(t, k / 3), k % 3));
        }
    }

    private static int nearestGap(Cavity cavity, Vec3 p) {
        int best = -1;
        double nearest = Double.POSITIVE_INFINITY;
        for (int o = 0; o < cavity.openings().size(); o++) {
            Opening opening = cavity.openings().get(o);
            if (opening.kind() == Opening.Kind.GAP) {
                // distance beyond the outline, so that a long gap isn't beaten by a short one near its end
                double u = opening.place().u(p);
                double v = opening.place().v(p);
                double beyond = Math.max(0, -opening.place().outline().clearanceM(u, v));
                double gap = Math.hypot(beyond, opening.place().heightM(p));
                if (gap < nearest) {
                    nearest = gap;
                    best = o;
                }
            }
        }
        return best;
    }
}
