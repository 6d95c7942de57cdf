package baymist.fog;

/**
 * Explicit steps with limited slopes, second order in space and time, every cell at the pace of its level: docs/theory/fog.md, section 2.
 *
 * <p>As in {@link MultirateSteps} a link moves fog at the steps of the finer of its cells, cells are seen by others as they were at the start of
 * their own step, and what passes is gathered until that step ends. First the donor cells give; that tells how each cell changes. Then, where fog drifts,
 * follows what the value at the link in the middle of its step has beyond the donor's: a limited slope along the link, and the donor's change by everything
 * else (Colella 1990, J. Comput. Phys. 87, 171-200: corner transport upwind). Where cells began their steps at different times, their values are carried on
 * to the beginning of the link's. Conservative; positive, as the additions take no more than the share that a step leaves; uniform fog has no slopes
 * and does not change, and stays uniform.
 */
final class FogGroupSteps {
    private final FogSchedule schedule;
    private final FogKernel kernel;

    FogGroupSteps(FogSchedule schedule, FogKernel kernel) {
        this.schedule = schedule;
        this.kernel = kernel;
    }

    /** Advances a group over the window for which the schedule was arranged. */
    void advance(FogGroup g) {
        begin(g);
        RateLevels levels = schedule.levels;
        int top = levels.coarsest();
        double[] elapsed = new double[RateLevels.COARSEST + 1];
        double[] share = new double[RateLevels.COARSEST + 1];
        for (long i = 0; i < levels.finestSteps(); i++) {
            int level = Math.min(top, Long.numberOfTrailingZeros(i));
            for (int k = 0; k <= top; k++) {
                elapsed[k] = (double) (i & ((1L << k) - 1)) / (1L << k);
            }
            for (int k = 0; k <= level; k++) {
                turn(g, k);
            }
            for (int k = 0; k <= level; k++) {
                give(g, k);
            }
            for (int k = 0; k <= level; k++) {
                kernel.note(g, schedule.cells, start(schedule.cellEnd, k), schedule.borderStart[k], false);
                kernel.note(g, schedule.cells, schedule.borderStart[k], schedule.cellEnd[k], true);
            }
            for (int k = 0; k <= level; k++) {
                for (int j = 0; j <= top; j++) {
                    share[j] = 1.0 / (1L << Math.max(0, j - k));
                }
                lean(g, k, elapsed, share);
            }
        }
    }

    private void begin(FogGroup g) {
        RateLevels levels = schedule.levels;
        for (int c = 0; c < g.perM3.length; c++) {
            double stepS = levels.stepS(levels.ofCell[c]);
            for (int p = FogGroup.LANES * c; p < FogGroup.LANES * (c + 1); p++) {
                g.room[p] = LimitedSlope.room(stepS * g.room[p], stepS * g.change[p]);
                g.change[p] = 0;
                g.gathered[p] = 0;
                g.missing[p] = 0;
                g.massSum[p] = 0;
            }
        }
    }

    private static int start(int[] end, int level) {
        return level == 0 ? 0 : end[level - 1];
    }

    private void turn(FogGroup g, int k) {
        kernel.turn(g, schedule.cells, start(schedule.cellEnd, k), schedule.cellEnd[k], schedule.levels.stepS(k));
        for (int i = schedule.borderStart[k]; i < schedule.cellEnd[k]; i++) {
            int p = FogGroup.LANES * schedule.cells[i];
            for (int q = 0; q < FogGroup.LANES; q++) {
                g.missing[p + q] = 0;
            }
        }
    }

    private void give(FogGroup g, int k) {
        double stepS = schedule.levels.stepS(k);
        int[][] end = schedule.end;
        kernel.give(g, schedule.give, start(end[0], k), end[0][k], stepS);
        kernel.giveFalling(g, schedule.giveFalling, start(end[1], k), end[1][k], stepS);
        owe(g, start(end[2], k), end[2][k], k);
    }

    /** What links of level k would yet move, at this pace, in the step of their coarser cell. */
    private void owe(FogGroup g, int from, int to, int k) {
        FogSides s = schedule.giveAcross;
        double stepS = schedule.levels.stepS(k);
        for (int i = from; i < to; i++) {
            int a = FogGroup.LANES * s.first[i];
            int b = FogGroup.LANES * s.second[i];
            int place = g.falling[s.link[i]];
            boolean intoLow = s.firstLevel[i] > s.secondLevel[i];
            long times = (1L << (Math.max(s.firstLevel[i], s.secondLevel[i]) - k)) - 1;
            for (int q = 0; q < g.used; q++) {
                double up = place < 0 ? g.up[s.link[i]] : g.upOf[FogGroup.LANES * place + q];
                double down = place < 0 ? g.down[s.link[i]] : g.downOf[FogGroup.LANES * place + q];
                double moved = times * stepS * (up * g.held[a + q] - down * g.held[b + q]);
                if (intoLow) {
                    g.missing[a + q] -= moved;
                } else {
                    g.missing[b + q] += moved;
                }
            }
        }
    }

    private void lean(FogGroup g, int k, double[] elapsed, double[] share) {
        double stepS = schedule.levels.stepS(k);
        int[][] end = schedule.end;
        kernel.lean(g, schedule.lean, start(end[3], k), end[3][k], stepS);
        kernel.leanFalling(g, schedule.leanFalling, start(end[4], k), end[4][k], stepS);
        kernel.leanAcross(g, schedule.leanAcross, start(end[5], k), end[5][k], stepS, elapsed, share);
    }
}
