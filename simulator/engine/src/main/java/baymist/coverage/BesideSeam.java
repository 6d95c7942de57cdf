package baymist.coverage;

import baymist.geom.Vec3;
import baymist.seam.SeamSegment;
import baymist.seam.SeamWedge;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Finds the surfels of one sheet beside a point of a seam, on one side of it. A surfel counts by its nearest rim, not by its centre: it is
 * as wide as its voxel. The nearest one counts at any creep distance, for what it holds lies at the seam.
 */
final class BesideSeam {
    /** How squarely a surfel must look the way of the sheet at the seam: cosine of 60°, ASSUMED. */
    private static final double LOOKS = 0.5;
    /** Wedges wider than this are told apart by the way along the sheet, not by the planes of both: 170°. */
    private static final double FLAT_RAD = Math.toRadians(170);
    /** How far off the nearest surfel may be, pitches. */
    private static final double REACH = 1.5;

    private final VoxelGrid grid;
    private final SurfelSet surfels;
    private final double creepM;
    private final int[] binStart;
    private final int[] inBin;
    /** Shift by which the lattice decides what lies exactly on a centre (docs/theory/voxels.md, section 2). */
    private final Vec3 shift;

    BesideSeam(VoxelGrid grid, double creepM) {
        this.grid = grid;
        this.surfels = grid.surfels();
        this.creepM = creepM;
        Vec3 h = grid.sizeM();
        shift = new Vec3(1e-5 * h.x(), 1e-7 * h.y(), 1e-9 * h.z());
        binStart = new int[grid.nx() * grid.ny() * grid.nz() + 1];
        int[] bin = new int[surfels.count()];
        for (int s = 0; s < bin.length; s++) {
            bin[s] = index(
                    axisBin(surfels.centreX()[s], 0),
                    axisBin(surfels.centreY()[s], 1),
                    axisBin(surfels.centreZ()[s], 2));
            binStart[bin[s] + 1]++;
        }
        for (int b = 1; b < binStart.length; b++) {
            binStart[b] += binStart[b - 1];
        }
        inBin = new int[bin.length];
        int[] next = binStart.clone();
        for (int s = 0; s < bin.length; s++) {
            inBin[next[bin[s]]++] = s;
        }
    }

    private int index(int i, int j, int k) {
        return i + grid.nx() * (j + grid.ny() * k);
    }

    private int axisBin(double x, int axis) {
        int n = axis == 0 ? grid.nx() : axis == 1 ? grid.ny() : grid.nz();
        return Math.max(0, Math.min(n - 1, (int)
                Math.floor((x - grid.origin().get(axis)) / grid.sizeM().get(axis))));
    }

    private record Found(int surfel, double gapM, double centreM) {}

    /** Surfels of one of the two sheets, nearest first; only in that bay. */
    int[] find(Vec3 at, SeamSegment seam, SeamWedge wedge, boolean first, int bay) {
        Vec3 h = grid.sizeM();
        double widest = Math.max(h.x(), Math.max(h.y(), h.z()));
        double radius = creepM + REACH * widest;
        Vec3 along = seam.to().minus(seam.from()).unit();
        int part = first ? seam.partA() : seam.partB();
        List<Found> found = new ArrayList<>();
        for (int k = axisBin(at.z() - radius, 2); k <= axisBin(at.z() + radius, 2); k++) {
            for (int j = axisBin(at.y() - radius, 1); j <= axisBin(at.y() + radius, 1); j++) {
                int from = binStart[index(axisBin(at.x() - radius, 0), j, k)];
                int to = binStart[index(axisBin(at.x() + radius, 0), j, k) + 1];
                for (int n = from; n < to; n++) {
                    int s = inBin[n];
                    if (surfels.part()[s] == part
                            && surfels.isStructure(s)
                            && grid.bayOfCell(surfels.cell()[s]) == bay
                            && isOnSide(s, at, wedge, first)) {
                        found.add(found(s, at, along, wedge, first));
                    }
                }
            }
        }
        found.sort(Comparator.comparingDouble(Found::gapM)
                .thenComparingDouble(Found::centreM)
                .thenComparingInt(Found::surfel));
        if (found.isEmpty() || found.get(0).gapM > REACH * widest) {
            return new int[0];
        }
        int[] near = new int[found.size()];
        int count = 0;
        for (Found f : found) {
            if (count == 0 || f.gapM <= creepM) {
                near[count++] = f.surfel;
            }
        }
        return Arrays.copyOf(near, count);
    }

    private boolean isOnSide(int s, Vec3 at, SeamWedge wedge, boolean first) {
        Vec3 face = first ? wedge.faceA() : wedge.faceB();
        Vec3 normal = new Vec3(surfels.normalX()[s], surfels.normalY()[s], surfels.normalZ()[s]);
        if (normal.dot(face) < LOOKS) {
            return false;
        }
        if (wedge.openRad() < FLAT_RAD) {
            // the lattice's walls are laid by cell centres: those tell which side of the other sheet a surfel is on
            Vec3 cell = grid.centre(surfels.cell()[s]).plus(shift).minus(at);
            return cell.dot(first ? wedge.faceB() : wedge.faceA()) > 0;
        }
        return centre(s).minus(at).dot(first ? wedge.alongA() : wedge.alongB()) > 0;
    }

    /** How far the rim of a surfel is from the point, taking it as wide as its voxel. */
    private Found found(int s, Vec3 at, Vec3 along, SeamWedge wedge, boolean first) {
        Vec3 r = centre(s).minus(at);
        Vec3 away = first ? wedge.alongA() : wedge.alongB();
        Vec3 face = first ? wedge.faceA() : wedge.faceB();
        double gap = 0;
        for (Vec3 axis : List.of(along, away, face)) {
            gap = Math.hypot(gap, Math.max(0, Math.abs(r.dot(axis)) - halfWidth(axis)));
        }
        return new Found(s, gap < 1e-9 ? 0 : gap, r.length());
    }

    private double halfWidth(Vec3 axis) {
        Vec3 h = grid.sizeM();
        return 0.5 * (Math.abs(axis.x()) * h.x() + Math.abs(axis.y()) * h.y() + Math.abs(axis.z()) * h.z());
    }

    private Vec3 centre(int s) {
        return new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]);
    }
}
