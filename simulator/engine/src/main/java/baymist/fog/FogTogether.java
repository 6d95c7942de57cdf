package baymist.fog;

import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;

/**
 * Steps with limited slopes of all bins that need them in a window: one set of levels for all, by the fastest bin of each cell, so that how sizes are cut
 * into bins does not matter; groups of four bins are pieces of parallel work. Owned by {@link FogStepper}.
 */
final class FogTogether {
    private final List<FogGroup> groups = new ArrayList<>();
    private final FogSchedule schedule;
    private FogKernel kernel;

    /** Fastest pace of any bin, 1/s, [cells]. */
    private final double[] pace;

    FogTogether(VoxelGrid grid, FogLinks links, Vec3 down, int bins) {
        int[] falling = new int[links.count()];
        int count = 0;
        for (int l = 0; l < falling.length; l++) {
            falling[l] = down.get(links.axis[l]) != 0 ? count++ : -1;
        }
        for (int b = 0; b < bins; b += FogGroup.LANES) {
            groups.add(new FogGroup(grid, links, falling, count));
        }
        int cells = bins > 0 ? grid.cellCount() : 0;
        schedule = new FogSchedule(links, cells, falling);
        kernel = FogKernels.best();
        pace = new double[cells];
    }

    /** Steps with a given kernel from now on. */
    void use(FogKernel other) {
        kernel = other;
    }

    /** Takes in a bin's rates; bins may come from several threads. */
    void take(int bin, FogBin fog, FogRates rates) {
        groups.get(bin / FogGroup.LANES).take(bin % FogGroup.LANES, fog.massKg(), rates);
    }

    /** Advances the bins that were taken in. */
    void advance(boolean[] joint, FogWindow window, double durationS, Workers workers, FogBin[] fog) {
        List<FogGroup> busy = ready(joint);
        if (busy.isEmpty()) {
            return;
        }
        chooseLevels(busy, durationS);
        schedule.arrange(busy);
        FogGroupSteps steps = new FogGroupSteps(schedule, kernel);
        workers.forEach(busy.size(), i -> {
            FogGroup g = busy.get(i);
            steps.advance(g);
            double[] exposure = new double[pace.length];
            int first = FogGroup.LANES * groups.indexOf(g);
            for (int b = first; b < Math.min(first + FogGroup.LANES, joint.length); b++) {
                if (joint[b]) {
                    fog[b].finish(window, g, b - first, schedule.levels, exposure);
                }
            }
        });
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

    private void chooseLevels(List<FogGroup> busy, double durationS) {
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
        if (!schedule.levels.choose(pace, largest, durationS, count)) {
            schedule.levels.choosePlain(pace, durationS, count);
        }
    }
}
