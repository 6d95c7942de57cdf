package baymist.fog;

/**
 * Explicit steps of a group of bins, every cell at the pace of its level, by donor cells or with limited slopes (second order in space
 * and time):
 * docs/theory/fog.md, section 2.
 *
 * <p>As in {@link MultirateSteps} a link moves fog at the steps of the finer of its cells, cells are seen by others as they were at the
 * start of
 * their own step, and what passes is gathered until that step ends. First the donor cells give: each cell gathers what comes from its
 * neighbours of the same
 * level; links to other levels follow one by one. With slopes, that tells how each cell changes. Then, where fog drifts,
 * follows what the value at the link in the middle of its step has beyond the donor's: a limited slope along the link, and the donor's
 * change by everything
 * else (Colella 1990, J. Comput. Phys. 87, 171-200: corner transport upwind). Where cells began their steps at different times, their
 * values are carried on
 * to the beginning of the link's. Conservative; positive, as the additions take no more than the share that a step leaves; uniform fog
 * has no slopes
 * and does not change, and stays uniform.
 */
final class FogGroupSteps {
    private final FogSchedule schedule;
    private final FogKernel kernel;
    private final boolean slopes;
    private final int top;

    FogGroupSteps(FogSchedule schedule, FogKernel kernel, boolean slopes) {
        this.schedule = schedule;
        this.kernel = kernel;
        this.slopes = slopes;
        this.top = schedule.levels.coarsest();
    }

    /** Advances a group over the window for which the schedule was arranged. */
    void advance(FogGroup g) {
        double[] elapsed = new double[RateLevels.COARSEST + 1];
        double[] share = new double[RateLevels.COARSEST + 1];
        g.rewind(schedule);
        for (long i = 0; i < schedule.levels.finestSteps(); i++) {
            int level = Math.min(top, Long.numberOfTrailingZeros(i));
            for (int k = 0; k <= level; k++) {
                g.turn(k);
            }
            for (int k = 0; k <= level; k++) {
                kernel.gather(g, schedule, k, slopes);
                kernel.addUp(g, schedule, k);
                spray(g, k);
            }
            for (int k = 0; k <= level; k++) {
                across(g, k, level);
            }
            if (slopes) {
                lean(g, i, level, elapsed, share);
            }
        }
    }

    private void spray(FogGroup g, int k) {
        float[] next = g.next[k];
        for (int i = schedule.sprayStart[k]; i < schedule.sprayStart[k + 1]; i++) {
            int p = g.lanes * schedule.sprayPlace[i];
            for (int q = 0; q < g.lanes; q++) {
                next[p + q] += g.added[g.lanes * i + q];
                if (slopes) {
                    g.change[p + q] += g.added[g.lanes * i + q];
                }
            }
        }
    }

    private void across(FogGroup g, int fine, int turned) {
        for (int coarse = fine; coarse <= top; coarse++) {
            double coarseSteps = coarse <= turned ? 1L << (coarse - fine) : 0;
            kernel.across(g, schedule.across, fine, coarse, slopes ? 1 : 0, slopes ? coarseSteps : 0);
        }
    }

    private void lean(FogGroup g, long step, int level, double[] elapsed, double[] share) {
        for (int k = 0; k <= top; k++) {
            elapsed[k] = (double) (step & ((1L << k) - 1)) / (1L << k);
        }
        for (int k = 0; k <= level; k++) {
            for (int j = 0; j <= top; j++) {
                share[j] = 1.0 / (1L << Math.max(0, j - k));
            }
            kernel.lean(g, schedule, k);
            kernel.leanFalling(g, schedule, k);
            kernel.leanAcross(g, schedule, k, elapsed, share);
            kernel.leanAcrossFalling(g, schedule, k, elapsed, share);
        }
    }
}
