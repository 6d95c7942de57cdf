package baymist.fog;

import baymist.numeric.Workers;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Explicit steps of all bins that need them in a window, with limited slopes or by donor cells: one set of levels for all, by the fastest bin of each cell, so that how sizes are cut
 * into bins does not matter; groups of four bins are pieces of parallel work. Owned by {@link FogStepper}.
 */
final class FogTogether {
    private final List<FogGroup> groups = new ArrayList<>();
    private final FogLinks links;
    private final FogCommon common;
    private final FogSchedule schedule;
    private final FogDonorSteps donors;
    private final boolean[] sink;

    /** 1/m³, [cells]. */
    private final double[] perM3;

    /** Volumes that pass from low to high and back where nothing falls, m³/s, [links]. */
    private final double[] up;

    private final double[] down;
    private FogKernel kernel;

    /** Fastest pace of any bin, 1/s, [cells]. */
    private final double[] pace;

    FogTogether(VoxelGrid grid, FogLinks links, FogCommon common, int bins) {
        this.links = links;
        this.common = common;
        int count = common.fallingLink.length;
        int[] falling = new int[links.count()];
        Arrays.fill(falling, -1);
        for (int i = 0; i < count; i++) {
            falling[common.fallingLink[i]] = i;
        }
        int linkCount = bins > 0 ? links.count() : 0;
        up = new double[linkCount];
        down = new double[linkCount];
        perM3 = new double[grid.cellCount()];
        Arrays.setAll(perM3, c -> 1 / grid.volumeM3(c));
        for (int b = 0; b < bins; b += FogGroup.LANES) {
            groups.add(new FogGroup(
                    links, perM3, falling, count, new FogGroup.Level(up, down, common.lean, common.drift)));
        }
        int cells = bins > 0 ? grid.cellCount() : 0;
        schedule = new FogSchedule(links, cells, falling);
        donors = new FogDonorSteps(links, schedule.levels, cells, falling, count);
        sink = new boolean[cells];
        kernel = FogKernels.best();
        pace = new double[cells];
    }

    /** Steps with a given kernel from now on. */
    void use(FogKernel other) {
        kernel = other;
    }

    /** Takes in a bin's rates; bins may come from several threads. */
    void take(int bin, FogBin fog, FogRates rates) {
        groups.get(bin / FogGroup.LANES).take(bin % FogGroup.LANES, fog.massKg(), rates, common.fallingLink);
    }

    /**
     * Advances the bins that were taken in.
     *
     * @param slopes whether with limited slopes
     */
    void advance(boolean[] joint, boolean slopes, FogWindow window, double durationS, Workers workers, FogBin[] fog) {
        List<FogGroup> busy = ready(joint);
        if (busy.isEmpty()) {
            return;
        }
        chooseLevels(busy, durationS, slopes ? RateLevels.CARRIED_S : RateLevels.LATE_S);
        arrange(busy, slopes);
        FogGroupSteps steps = new FogGroupSteps(schedule, kernel);
        workers.forEach(busy.size(), i -> {
            FogGroup g = busy.get(i);
            if (slopes) {
                steps.advance(g);
            } else {
                donors.advance(g);
            }
            double[] exposure = new double[pace.length];
            int first = FogGroup.LANES * groups.indexOf(g);
            for (int b = first; b < Math.min(first + FogGroup.LANES, joint.length); b++) {
                if (joint[b]) {
                    fog[b].finish(window, g, b - first, schedule.levels, exposure);
                }
            }
        });
    }

    private void arrange(List<FogGroup> busy, boolean slopes) {
        if (slopes) {
            fillLevel();
            schedule.arrange(busy);
            return;
        }
        Arrays.fill(sink, false);
        for (FogGroup g : busy) {
            for (int p = 0; p < g.loss.length; p++) {
                sink[p / FogGroup.LANES] |= g.loss[p] != 0 || g.source[p] != 0;
            }
        }
        donors.arrange(common, perM3, sink);
    }

    private void fillLevel() {
        for (int l = 0; l < up.length; l++) {
            up[l] = common.up[l] / perM3[links.low[l]];
            down[l] = common.down[l] / perM3[links.high[l]];
        }
    }

    /** The groups with work to do, their other lanes emptied. */
    private List<FogGroup> ready(boolean[] joint) {
        List<FogGroup> busy = new ArrayList<>();
        for (int i = 0; i < groups.size(); i++) {
            FogGroup g = groups.get(i);
            g.used = 0;
            for (int q = 0; q < FogGroup.LANES; q++) {
                int b = FogGroup.LANES * i + q;
                if (b < joint.length && joint[b]) {
                    g.used = q + 1;
                }
            }
            if (g.used == 0) {
                continue;
            }
            busy.add(g);
            for (int q = 0; q < FogGroup.LANES; q++) {
                int b = FogGroup.LANES * i + q;
                if (b >= joint.length || !joint[b]) {
                    g.clear(q);
                }
            }
        }
        return busy;
    }

    private void chooseLevels(List<FogGroup> busy, double durationS, double shortS) {
        double largest = 0;
        for (int c = 0; c < pace.length; c++) {
            double most = 0;
            for (FogGroup g : busy) {
                for (int p = FogGroup.LANES * c; p < FogGroup.LANES * (c + 1); p++) {
                    most = Math.max(most, g.room[p] + FogRates.SLOPED_WEIGHT * g.change[p]);
                }
            }
            pace[c] = most;
            largest = Math.max(largest, most);
        }
        long count = (long) Math.max(1, Math.ceil(durationS * largest / FogBin.COURANT));
        if (!schedule.levels.choose(pace, largest, durationS, count, shortS)) {
            schedule.levels.choosePlain(pace, durationS, count);
        }
    }
}
