package baymist.coverage;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Connected surfels below haze, largest first.
 *
 * <p>Regions smaller than {@link #smallM2} are gathered, when there are two or more of them, into one last entry of
 * scattered spots, so that the areas of all entries add up to the unreached area exactly.
 */
final class RegionFinder {
    /** A region below this many average surfels is a spot. ASSUMED: less than a technician can find on the structure. */
    private static final double SPOT_SURFELS = 4;
    /** A region below this share of the cavity's area is a spot. ASSUMED for the same reason. */
    private static final double SPOT_SHARE = 1e-4;
    /** Areas that agree to this share of the whole count as equal, so that rounding doesn't decide the order. */
    private static final double EQUAL_SHARE = 1e-9;

    private final Cavity cavity;
    private final SurfelSet surfels;
    private final Verdict[] verdict;
    private final RegionDescriber describer;
    private final double totalM2;
    private final double smallM2;

    RegionFinder(Cavity cavity, VoxelGrid grid, Verdict[] verdict) {
        this.cavity = cavity;
        this.surfels = grid.surfels();
        this.verdict = verdict;
        this.describer = new RegionDescriber(cavity, grid);
        double sum = 0;
        int count = 0;
        for (int s = 0; s < surfels.count(); s++) {
            if (surfels.isStructure(s)) {
                sum += surfels.areaM2()[s];
                count++;
            }
        }
        totalM2 = sum;
        smallM2 = count == 0 ? 0 : Math.max(SPOT_SURFELS * sum / count, SPOT_SHARE * sum);
    }

    List<UnreachedRegion> find() {
        List<int[]> large = new ArrayList<>();
        List<int[]> small = new ArrayList<>();
        for (int[] component : components()) {
            if (!(areaM2(component) > 0)) {
                continue; // pieces without area are neither here nor there
            }
            (areaM2(component) < smallM2 ? small : large).add(component);
        }
        if (small.size() == 1) {
            large.addAll(small);
            small.clear();
        }
        large.sort(Comparator.comparingLong((int[] c) -> -Math.round(areaM2(c) / (EQUAL_SHARE * totalM2)))
                .thenComparingInt(c -> c[0]));
        List<UnreachedRegion> regions = new ArrayList<>();
        for (int[] component : large) {
            regions.add(region(regions.size() + 1, component, describer.describe(component)));
        }
        if (!small.isEmpty()) {
            int[] all = small.stream().flatMapToInt(Arrays::stream).sorted().toArray();
            regions.add(region(regions.size() + 1, all, describer.describeScattered(all, small.size())));
        }
        return List.copyOf(regions);
    }

    /** Components in order of their lowest surfel; members ascending. */
    private List<int[]> components() {
        boolean[] seen = new boolean[surfels.count()];
        int[] queue = new int[surfels.count()];
        List<int[]> found = new ArrayList<>();
        for (int start = 0; start < surfels.count(); start++) {
            if (seen[start] || verdict[start] != Verdict.UNREACHED) {
                continue;
            }
            int head = 0;
            int tail = 0;
            queue[tail++] = start;
            seen[start] = true;
            while (head < tail) {
                int s = queue[head++];
                for (int e = surfels.neighbourStart()[s]; e < surfels.neighbourStart()[s + 1]; e++) {
                    int n = surfels.neighbour()[e];
                    if (!seen[n] && verdict[n] == Verdict.UNREACHED) {
                        seen[n] = true;
                        queue[tail++] = n;
                    }
                }
            }
            int[] component = Arrays.copyOf(queue, tail);
            Arrays.sort(component);
            found.add(component);
        }
        return found;
    }

    private double areaM2(int[] component) {
        double sum = 0;
        for (int s : component) {
            sum += surfels.areaM2()[s];
        }
        return sum;
    }

    private UnreachedRegion region(int id, int[] component, String where) {
        double area = 0;
        Vec3 moment = Vec3.ZERO;
        Map<Integer, Double> areaOfPart = new TreeMap<>();
        for (int s : component) {
            double a = surfels.areaM2()[s];
            area += a;
            moment = moment.plus(a, new Vec3(surfels.centreX()[s], surfels.centreY()[s], surfels.centreZ()[s]));
            areaOfPart.merge(surfels.part()[s], a, Double::sum);
        }
        List<String> parts = areaOfPart.entrySet().stream()
                .sorted(Map.Entry.<Integer, Double>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(e -> cavity.parts().get(e.getKey()).name())
                .toList();
        return new UnreachedRegion(id, area, moment.times(1 / area), where, parts, component);
    }
}
