package baymist.voxel;

import baymist.cavity.Cavity;
import baymist.geom.TriangleMesh;
import baymist.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * Sums of the shared-out pieces, in the fixed order of the triangles: area, centroid and normal of every target; interior
 * area that found no cell; and the volume that the interior surface encloses (divergence theorem).
 */
final class SurfaceTotals {
    /** Unresolved pieces of one part within such a cube become one record, m. */
    static final double BIN_M = 0.05;

    /** Relative size of the sum of area vectors below which the interior surface counts as closed. */
    private static final double CLOSED = 1e-9;

    private final Cavity cavity;
    private final Lattice lattice;
    private final CavityCells cells;
    private final Vec3 reference;

    /** [targets] */
    final double[] areaM2;
    /** Area times centroid and area times normal into the air, [3 * targets]. */
    final double[] moment;

    final double[] vector;
    private final TreeMap<String, Bin> bins = new TreeMap<>();
    private final List<UnresolvedArea> unresolved = new ArrayList<>();
    private final double[] vectorSum = new double[3];
    private double interiorM2;
    private double volumeM3;

    SurfaceTotals(Cavity cavity, Lattice lattice, CavityCells cells, int targets) {
        this.cavity = cavity;
        this.lattice = lattice;
        this.cells = cells;
        reference = lattice.origin();
        areaM2 = new double[targets];
        moment = new double[3 * targets];
        vector = new double[3 * targets];
    }

    /** Adds the shares of the closures; all of them have a face or lie outside. */
    void addClosures(ClosureMesh closures, AreaShares[] blocks) {
        for (AreaShares block : blocks) {
            for (int s = 0; s < block.shares(); s++) {
                if (block.target.get(s) >= 0) {
                    add(closures.mesh(), block, s, block.target.get(s));
                }
            }
        }
    }

    /**
     * Adds the shares of the sheets. A side of a piece that nothing faces counts as interior if a line from it leads to air
     * that is ({@link SideProbe}); where no line tells, it is judged by the rest of its triangle, then of its part (majority
     * by area on the same side), last by whether it lies in or next to a cell of the cavity.
     */
    void addSheets(AreaShares[] blocks, UnseenSides unseen) {
        TriangleMesh mesh = cavity.cutSheets();
        // interior less exterior area of each side
        double[] balance = new double[2 * mesh.triangleCount()];
        double[] partBalance = new double[2 * cavity.parts().size()];
        for (AreaShares block : blocks) {
            for (int s = 0; s < block.shares(); s++) {
                int target = block.target.get(s);
                int triangle = block.triangle.get(block.piece.get(s));
                int side = block.side.get(s);
                if (target >= 0) {
                    add(mesh, block, s, target);
                }
                boolean tells =
                        target != AreaShares.UNKNOWN && (target != AreaShares.HIDDEN || cavity.inside() == null);
                if (tells) {
                    double signed = target == AreaShares.OUTSIDE ? -block.areaM2.get(s) : block.areaM2.get(s);
                    balance[2 * triangle + side] += signed;
                    partBalance[2 * cavity.partOfCut(triangle) + side] += signed;
                }
            }
        }
        for (int u = 0; u < unseen.count(); u++) {
            AreaShares block = blocks[unseen.block(u)];
            SideProbe.Reason reason = unseen.reason(u);
            boolean undecided = unseen.verdict(u) == UnseenSides.UNDECIDED;
            if (reason == null && unseen.verdict(u) == UnseenSides.INTERIOR) {
                add(mesh, block, unseen.share(u), block.standIn.get(unseen.share(u)));
            } else if (reason != null && (!undecided || isInterior(block, unseen.share(u), balance, partBalance))) {
                addHidden(mesh, block, unseen.share(u), reason);
            }
        }
        for (Bin b : bins.values()) {
            unresolved.add(b.close());
        }
    }

    private boolean isInterior(AreaShares block, int s, double[] balance, double[] partBalance) {
        int piece = block.piece.get(s);
        int triangle = block.triangle.get(piece);
        int side = block.side.get(s);
        double verdict = balance[2 * triangle + side];
        if (verdict == 0) {
            verdict = partBalance[2 * cavity.partOfCut(triangle) + side];
        }
        if (verdict != 0) {
            return verdict > 0;
        }
        int cell = lattice.cellHolding(block.x.get(piece), block.y.get(piece), block.z.get(piece));
        return nearCavity(cell);
    }

    private boolean nearCavity(int cell) {
        boolean near = isInside(cell);
        for (int d = 0; d < 6 && !near; d++) {
            near = lattice.faceKey(cell, d) >= 0 && isInside(lattice.behind(cell, d));
        }
        return near;
    }

    private boolean isInside(int cell) {
        CavityCells.Kind kind = cells.kind(cell);
        return kind == CavityCells.Kind.CAVITY || (kind == CavityCells.Kind.POCKET && cavity.inside() == null);
    }

    private void add(TriangleMesh mesh, AreaShares block, int s, int target) {
        int piece = block.piece.get(s);
        double area = block.areaM2.get(s);
        Vec3 n = airSide(mesh, block, s);
        areaM2[target] += area;
        moment[3 * target] += area * block.x.get(piece);
        moment[3 * target + 1] += area * block.y.get(piece);
        moment[3 * target + 2] += area * block.z.get(piece);
        vector[3 * target] += area * n.x();
        vector[3 * target + 1] += area * n.y();
        vector[3 * target + 2] += area * n.z();
        enclose(block, piece, area, n);
    }

    private void addHidden(TriangleMesh mesh, AreaShares block, int s, SideProbe.Reason reason) {
        int piece = block.piece.get(s);
        int part = cavity.partOfCut(block.triangle.get(piece));
        double area = block.areaM2.get(s);
        double x = block.x.get(piece);
        double y = block.y.get(piece);
        double z = block.z.get(piece);
        String key = String.join(
                ":",
                padded(part),
                bin(z - reference.z()),
                bin(y - reference.y()),
                bin(x - reference.x()),
                reason.cause().name(),
                Integer.toString(reason.axis()));
        bins.computeIfAbsent(key, k -> new Bin(part, reason.cause(), reason.axis()))
                .add(area, x, y, z, reason.spanM());
        enclose(block, piece, area, airSide(mesh, block, s));
    }

    /** Unresolved pieces of one part in one place, for one cause. */
    private static final class Bin {
        private final int part;
        private final UnresolvedArea.Cause cause;
        private final int axis;
        private double areaM2;
        private double x;
        private double y;
        private double z;
        private double span;

        Bin(int part, UnresolvedArea.Cause cause, int axis) {
            this.part = part;
            this.cause = cause;
            this.axis = axis;
        }

        void add(double area, double px, double py, double pz, double spanM) {
            areaM2 += area;
            x += area * px;
            y += area * py;
            z += area * pz;
            span += area * spanM;
        }

        UnresolvedArea close() {
            Vec3 centroid = new Vec3(x / areaM2, y / areaM2, z / areaM2);
            return new UnresolvedArea(part, areaM2, centroid, cause, axis, span / areaM2);
        }
    }

    private static String bin(double offsetM) {
        return padded((int) Math.max(0, Math.floor(offsetM / BIN_M)));
    }

    private static String padded(int n) {
        String digits = Integer.toString(n);
        return "0".repeat(Math.max(0, 10 - digits.length())) + digits;
    }

    private static Vec3 airSide(TriangleMesh mesh, AreaShares block, int s) {
        Vec3 n = mesh.normal(block.triangle.get(block.piece.get(s)));
        return block.side.get(s) == 0 ? n : n.negate();
    }

    /** Adds a piece to the closed surface; its normal points into the enclosed air. */
    private void enclose(AreaShares block, int piece, double area, Vec3 n) {
        double height = (block.x.get(piece) - reference.x()) * n.x()
                + (block.y.get(piece) - reference.y()) * n.y()
                + (block.z.get(piece) - reference.z()) * n.z();
        volumeM3 -= area * height / 3;
        interiorM2 += area;
        vectorSum[0] += area * n.x();
        vectorSum[1] += area * n.y();
        vectorSum[2] += area * n.z();
    }

    List<UnresolvedArea> unresolved() {
        return unresolved;
    }

    /** Volume inside the interior surface, m³, or NaN if that surface isn't closed. */
    double enclosedM3() {
        double open = Math.hypot(vectorSum[0], Math.hypot(vectorSum[1], vectorSum[2]));
        return open <= CLOSED * interiorM2 && volumeM3 > 0 ? volumeM3 : Double.NaN;
    }
}
