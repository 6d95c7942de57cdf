package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.scene.TargetSpec;
import baymist.seam.SeamFinder;
import baymist.seam.SeamSegment;
import baymist.seam.SeamWedge;
import baymist.voxel.PartOfWhole;
import baymist.voxel.SurfelLocator;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Which surfels lie beside which stretch of seam: geometry alone, for any film. Each side of each piece of seam is cut into stretches of a
 * few millimetres; a stretch knows its length, its bay and the surfels of either sheet within the creep distance. Immutable.
 */
public final class SeamMap {
    /** Longest stretch, m. */
    private static final double LONGEST_M = 5e-3;
    /** How far off the line the cell of a side is looked for, shares of the smallest pitch. */
    private static final double OFF = 0.02;

    final Cavity cavity;
    final VoxelGrid grid;
    final List<SeamSegment> segments;
    /** Stretches in the order of segment, side, place. */
    final List<Stretch> stretches;

    private SeamMap(Cavity cavity, VoxelGrid grid, List<SeamSegment> segments, List<Stretch> stretches) {
        this.cavity = cavity;
        this.grid = grid;
        this.segments = segments;
        this.stretches = stretches;
    }

    /**
     * A stretch of one side of a seam.
     *
     * @param segment index into the segments
     * @param side index of its wedge
     * @param bay bay whose air it belongs to, or -1 where no voxel holds it
     * @param besideA surfels of the first sheet within the creep distance, nearest first
     * @param besideB surfels of the second sheet
     */
    record Stretch(int segment, int side, double lengthM, Vec3 middleM, int bay, int[] besideA, int[] besideB) {
        boolean isResolved() {
            return besideA.length + besideB.length > 0;
        }

        /** The surfel nearest to it, or -1. */
        int nearest() {
            return besideA.length > 0 ? besideA[0] : besideB.length > 0 ? besideB[0] : -1;
        }
    }

    /** No seams at all, where area alone is asked for. */
    public static SeamMap none(Cavity cavity, VoxelGrid grid) {
        return new SeamMap(cavity, grid, List.of(), List.of());
    }

    /**
     * Finds the seams of a cavity and what lies beside them.
     *
     * @param creepM how far from the line film may lie to get into the seam, m
     */
    public static SeamMap of(Cavity cavity, VoxelGrid grid, double creepM) {
        List<SeamSegment> segments = SeamFinder.find(cavity);
        if (segments.isEmpty()) {
            return new SeamMap(cavity, grid, segments, List.of());
        }
        Vec3 h = grid.sizeM();
        double smallest = Math.min(h.x(), Math.min(h.y(), h.z()));
        double step = Math.min(LONGEST_M, smallest / 2);
        SurfelLocator locator = SurfelLocator.of(grid, cavity);
        BesideSeam beside = new BesideSeam(grid, creepM);
        List<Stretch> found = new ArrayList<>();
        PartOfWhole part = grid.part();
        for (int i = 0; i < segments.size(); i++) {
            SeamSegment s = segments.get(i);
            int count = (int) Math.max(1, Math.ceil(s.lengthM() / step - 1e-9));
            for (int w = 0; w < s.wedges().size(); w++) {
                SeamWedge wedge = s.wedges().get(w);
                for (int k = 0; k < count; k++) {
                    Vec3 middle = s.from().plus((k + 0.5) / count, s.to().minus(s.from()));
                    if (part != null && !part.isNear(middle.plus(smallest / 2, wedge.bisector()))) {
                        continue; // of a bay that is not computed
                    }
                    int cell = locator.cellNear(middle.plus(OFF * smallest, wedge.bisector()), wedge.bisector());
                    int bay = cell < 0 ? -1 : grid.bayOfCell(cell);
                    int[] a = bay < 0 ? new int[0] : beside.find(middle, s, wedge, true, bay);
                    int[] b = bay < 0 ? new int[0] : beside.find(middle, s, wedge, false, bay);
                    found.add(new Stretch(i, w, s.lengthM() / count, middle, bay, a, b));
                }
            }
        }
        return new SeamMap(cavity, grid, segments, List.copyOf(kept(cavity, segments, found)));
    }

    /** Where only some compartments belong to the job, seams of two parts that see none of its air are no part of it. */
    private static List<Stretch> kept(Cavity cavity, List<SeamSegment> segments, List<Stretch> all) {
        if (cavity.inside() == null) {
            return all;
        }
        Set<List<Integer>> seen = new HashSet<>();
        for (Stretch s : all) {
            if (s.bay >= 0) {
                seen.add(pair(segments.get(s.segment)));
            }
        }
        return all.stream()
                .filter(s -> seen.contains(pair(segments.get(s.segment))))
                .toList();
    }

    private static List<Integer> pair(SeamSegment s) {
        return List.of(s.partA(), s.partB());
    }

    /** Coverage of the seams by a film, m, [surfels]. */
    public SeamCoverage assess(double[] filmM, TargetSpec target) {
        return SeamAssessor.assess(this, filmM, target);
    }

    /**
     * Bare length of seam by the surfel nearest to it, m, [surfels]: adds up to the bare length of the whole.
     *
     * @param filmM film build on each surfel, m, [surfels]
     */
    public double[] bareBySurfel(double[] filmM, double hazeM) {
        double[] bare = new double[filmM.length];
        for (Stretch s : stretches) {
            if (s.isResolved() && most(s, filmM) < hazeM) {
                bare[s.nearest()] += s.lengthM;
            }
        }
        return bare;
    }

    /** Largest film beside a stretch on either sheet, m. */
    static double most(Stretch s, double[] filmM) {
        return Math.max(most(s.besideA, filmM), most(s.besideB, filmM));
    }

    /** Largest film on a sheet beside the seam, m; 0 where the voxels hold none of it. */
    static double most(int[] beside, double[] filmM) {
        double most = 0;
        for (int s : beside) {
            most = Math.max(most, filmM[s]);
        }
        return most;
    }
}
