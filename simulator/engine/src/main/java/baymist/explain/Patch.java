package baymist.explain;

import baymist.cavity.Cavity;
import baymist.coverage.ItemAssessor;
import baymist.coverage.UnreachedRegion;
import baymist.geom.Box3;
import baymist.geom.Vec3;
import baymist.run.RunResult;
import baymist.scene.TargetSpec;
import baymist.voxel.SurfelLocator;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The region that is asked about, as places on the sheets that any run of the same structure can be asked for. Areas are those of
 * the first run, so that before and after are means over the same area.
 */
final class Patch {
    private final UnreachedRegion region;
    private final SurfelSet surfels;
    private final List<String> partNames;
    private final VoxelGrid grid;
    private final int[] own;
    private final double areaM2;

    Patch(UnreachedRegion region, RunResult base) {
        this.region = region;
        this.grid = base.grid();
        this.surfels = grid.surfels();
        this.own = region.surfels().clone();
        this.partNames = base.cavity().parts().stream().map(p -> p.name()).toList();
        double sum = 0;
        for (int s : own) {
            sum += surfels.areaM2()[s];
        }
        this.areaM2 = sum;
    }

    UnreachedRegion region() {
        return region;
    }

    /** Surfels in the first run. */
    int[] surfels() {
        return own;
    }

    double areaM2() {
        return areaM2;
    }

    double areaM2(int surfel) {
        return surfels.areaM2()[surfel];
    }

    Vec3 point(int surfel) {
        return new Vec3(surfels.centreX()[surfel], surfels.centreY()[surfel], surfels.centreZ()[surfel]);
    }

    Vec3 normal(int surfel) {
        return new Vec3(surfels.normalX()[surfel], surfels.normalY()[surfel], surfels.normalZ()[surfel]);
    }

    String part(int surfel) {
        return partNames.get(surfels.part()[surfel]);
    }

    /** Cells that the region faces, each once, ascending. */
    int[] cells() {
        return Arrays.stream(own)
                .map(s -> surfels.cell()[s])
                .sorted()
                .distinct()
                .toArray();
    }

    /** Area by bay, m². */
    Map<Integer, Double> byBay() {
        Map<Integer, Double> bays = new TreeMap<>();
        for (int s : own) {
            bays.merge(grid.bayOfCell(surfels.cell()[s]), surfels.areaM2()[s], Double::sum);
        }
        return bays;
    }

    /** The bay with most of it. */
    int bay() {
        return byBay().entrySet().stream()
                .max(Map.Entry.<Integer, Double>comparingByValue()
                        .thenComparing(
                                Map.Entry.<Integer, Double>comparingByKey().reversed()))
                .map(Map.Entry::getKey)
                .orElse(0);
    }

    Box3 box() {
        Box3 box = Box3.EMPTY;
        for (int s : own) {
            box = box.including(point(s));
        }
        return box;
    }

    /** At most {@code most} surfels spread evenly over the region's area. */
    int[] sample(int most) {
        if (own.length <= most) {
            return own;
        }
        int[] chosen = new int[most];
        double step = areaM2 / most;
        double sum = 0;
        int n = 0;
        for (int s : own) {
            sum += surfels.areaM2()[s];
            if (n < most && sum > (n + 0.5) * step) {
                chosen[n++] = s;
                while (n < most && sum > (n + 0.5) * step) {
                    n++;
                }
            }
        }
        return Arrays.stream(chosen, 0, Math.min(n, most)).sorted().distinct().toArray();
    }

    /** Film on the region in any run of the same structure. */
    PatchFilm film(RunResult run, TargetSpec targets) {
        boolean same = run.grid() == grid;
        Cavity cavity = run.cavity();
        boolean[] masked = ItemAssessor.masked(run.scene(), cavity, run.grid()); // product on a mask is no film
        SurfelLocator locator = same ? null : SurfelLocator.of(run.grid(), cavity);
        double mean = 0;
        double reached = 0;
        double filled = 0;
        double area = 0;
        for (int s : own) {
            int there = locator == null ? s : locator.surfelNear(point(s), cavity.partIndex(part(s)), normal(s));
            if (there < 0) {
                continue; // the change took this piece of sheet away
            }
            double a = surfels.areaM2()[s];
            double film = masked[there] ? 0 : run.filmM()[there];
            area += a;
            mean += a * film;
            reached += film >= targets.hazeM() ? a : 0;
            filled += a * Math.min(1, film / targets.buildM());
        }
        return area > 0 ? new PatchFilm(mean / area, reached / area, filled / area) : new PatchFilm(0, 0, 0);
    }
}
