package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.geom.Box3;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import baymist.voxel.UnresolvedArea.Cause;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Tells which air lies on a side of a piece of sheet that no voxel faces, and why none does.
 *
 * <p>A line from the piece that reaches a cell's centre without meeting a sheet proves that the piece faces that cell's air;
 * a line that leaves the bounding box proves that it faces outside air. Where no centre is in sight from the piece itself,
 * lines of two legs are tried. One probe serves one thread.
 */
final class SideProbe {
    /** How far off the sheet a line starts, pitches (ASSUMED: above rounding, below any gap that matters). */
    private static final double OFF = 1e-6;

    /** The free way is measured this far off the sheet, pitches, or in the middle of a narrower gap. */
    private static final double MEASURE_OFF = 1e-3;

    /** Longest second leg, steps of the shortest pitch. */
    private static final int STEPS = 24;

    /** Cosine above which another sheet lies along this one rather than across it. */
    private static final double ALONG = 0.8;

    private final Cavity cavity;
    private final Lattice lattice;
    private final CavityCells cells;
    private final Aim aim;
    private final Sight sight;
    private final double shortestM;
    private final double farM;
    private final double thickestM;
    private final List<Vec3> ways = new ArrayList<>();
    /** Extent of each part along the axes, m. */
    private final double[][] extentM;

    /** Whether the cavity is what joins a stated point, not all that is enclosed. */
    private final boolean chosenOnly;

    private int part;
    private Vec3 point = Vec3.ZERO;
    private Vec3 normal = Vec3.Z;

    SideProbe(Cavity cavity, Lattice lattice, CavityCells cells, Aim aim, Sight sight, double[][] extentM) {
        this.cavity = cavity;
        this.lattice = lattice;
        this.cells = cells;
        this.aim = aim;
        this.sight = sight;
        this.extentM = extentM;
        chosenOnly = cavity.inside() != null;
        shortestM = Math.min(lattice.pitchM(0), Math.min(lattice.pitchM(1), lattice.pitchM(2)));
        farM = 2 * cavity.sheets().bounds().size().length();
        thickestM =
                2 * cavity.parts().stream().mapToDouble(p -> p.gaugeM()).max().orElse(0) + BlockedFaces.TOUCHING_M;
        for (int k = 0; k < 27; k++) {
            if (k != 13) {
                ways.add(new Vec3(k % 3 - 1, k / 3 % 3 - 1, k / 9 - 1).unit());
            }
        }
    }

    /** Extent of each part's bounding box, m, [parts][3]. */
    static double[][] extents(Cavity cavity) {
        TriangleMesh mesh = cavity.cutSheets();
        Box3[] boxes = new Box3[cavity.parts().size()];
        Arrays.fill(boxes, Box3.EMPTY);
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int p = cavity.partOfCut(t);
            boxes[p] = boxes[p].including(mesh.point(t, 0))
                    .including(mesh.point(t, 1))
                    .including(mesh.point(t, 2));
        }
        double[][] extents = new double[boxes.length][3];
        for (int p = 0; p < boxes.length; p++) {
            for (int a = 0; a < 3 && !boxes[p].isEmpty(); a++) {
                extents[p][a] = boxes[p].size().get(a);
            }
        }
        return extents;
    }

    /**
     * Turns to one side of a piece.
     *
     * @param n unit normal on that side
     */
    void look(int partIndex, Vec3 centroid, Vec3 n) {
        part = partIndex;
        point = centroid;
        normal = n;
    }

    /**
     * What the side faces, or null if it can't be told. A side that another sheet touches counts as facing a pocket. Where
     * the cavity is only what joins a stated point, a pocket or a lap may belong to another one: then neither tells.
     */
    CavityCells.@Nullable Kind facing() {
        if (apartM() <= BlockedFaces.TOUCHING_M) {
            return pocket();
        }
        Vec3 start = point.plus(OFF * shortestM, normal);
        CavityCells.Kind seen = seenFrom(start, 1);
        double gap = sight.freeM(start, normal, farM);
        Vec3 middle = start.plus(Math.min(0.5 * gap, shortestM), normal);
        for (int w = 0; seen == null && w < ways.size(); w++) {
            seen = seenAlong(middle, ways.get(w));
        }
        return seen == null && isLap() ? pocket() : seen;
    }

    private CavityCells.@Nullable Kind pocket() {
        return chosenOnly ? null : CavityCells.Kind.POCKET;
    }

    private CavityCells.@Nullable Kind seenAlong(Vec3 from, Vec3 way) {
        double free = sight.freeM(from, way, farM);
        if (free >= farM) {
            return CavityCells.Kind.OUTSIDE;
        }
        for (int step = 1; step <= STEPS && step * shortestM < free; step++) {
            CavityCells.Kind seen = seenFrom(from.plus(step * shortestM, way), 0);
            if (seen != null) {
                return seen;
            }
        }
        return null;
    }

    /** What a point's air is, by the first centre in sight within so many cells of the cell that holds it. */
    private CavityCells.@Nullable Kind seenFrom(Vec3 from, int reach) {
        int i0 = lattice.locate(0, from.x());
        int j0 = lattice.locate(1, from.y());
        int k0 = lattice.locate(2, from.z());
        for (int k = Math.max(0, k0 - reach); k <= Math.min(lattice.count(2) - 1, k0 + reach); k++) {
            for (int j = Math.max(0, j0 - reach); j <= Math.min(lattice.count(1) - 1, j0 + reach); j++) {
                for (int i = Math.max(0, i0 - reach); i <= Math.min(lattice.count(0) - 1, i0 + reach); i++) {
                    int cell = lattice.index(i, j, k);
                    boolean tells = !chosenOnly || cells.kind(cell) != CavityCells.Kind.POCKET;
                    if (tells && sight.clear(from, aim.at(cell))) {
                        return cells.kind(cell);
                    }
                }
            }
        }
        return null;
    }

    /** Distance to another part that lies along this side of the piece, m; infinite beyond the gauges. */
    private double apartM() {
        double off = OFF * shortestM;
        TriangleMesh mesh = cavity.sheets();
        double t = sight.freeM(point.plus(-off, normal), normal, off + thickestM, (triangle, d, x, y, z) -> {
            int other = cavity.partOfSheet(triangle);
            return other >= 0
                    && other != part
                    && Math.abs(mesh.normal(triangle).dot(normal)) > ALONG
                    && d - off <= BlockedFaces.TOUCHING_M + gaugeM(part) + gaugeM(other);
        });
        return t < off + thickestM ? Math.max(0, t - off) : Double.POSITIVE_INFINITY;
    }

    private double gaugeM(int index) {
        return cavity.parts().get(index).gaugeM();
    }

    private boolean isLap() {
        return apartM() < Double.POSITIVE_INFINITY;
    }

    /** Why no voxel faces the side, and what size would. */
    record Reason(Cause cause, int axis, double spanM) {}

    Reason reason() {
        if (isLap()) {
            return new Reason(Cause.LAP, -1, Double.NaN);
        }
        Vec3 start = point.plus(OFF * shortestM, normal);
        double gap = sight.freeM(start, normal, farM);
        Vec3 middle = start.plus(Math.min(0.5 * gap, MEASURE_OFF * shortestM), normal);
        int axis = 0;
        double span = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int a = 0; a < 3; a++) {
            Vec3 way = a == 0 ? Vec3.X : a == 1 ? Vec3.Y : Vec3.Z;
            double free = sight.freeM(middle, way, farM) + sight.freeM(middle, way.negate(), farM);
            if (free / lattice.pitchM(a) < least) {
                least = free / lattice.pitchM(a);
                axis = a;
                span = free;
            }
        }
        return least < 1 ? new Reason(Cause.NARROW, axis, span) : small();
    }

    /** The part is narrower than the voxels along an axis that doesn't run through the sheet. */
    private Reason small() {
        int axis = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int a = 0; a < 3; a++) {
            double ratio = extentM[part][a] / lattice.pitchM(a);
            if (extentM[part][a] > 0 && ratio < least) {
                least = ratio;
                axis = a;
            }
        }
        return new Reason(
                Cause.SMALL, axis, axis < 0 ? Double.NaN : Math.min(extentM[part][axis], lattice.pitchM(axis)));
    }
}
