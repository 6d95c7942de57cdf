package baymist.fog;

/** The kernel in plain Java. Lanes are written out where that lets the compiler keep them in registers; those without a bin hold zeros. */
final class PlainKernel implements FogKernel {
    private static final int W = FogGroup.LANES;

    @Override
    public void gather(FogGroup g, FogSchedule s, int level, boolean note) {
        if (s.fallSides.length != 2) {
            gatherAny(g, s, level, note);
        } else if (note) {
            gather(g, s, level, g.change);
            addUp(g.now[level], g.change, g.next[level], W * s.start[level], W * s.end[level]);
        } else {
            gather(g, s, level, g.next[level]);
        }
    }

    private static void gather(FogGroup g, FogSchedule s, int level, double[] into) {
        if (g.used <= 2) {
            gatherTwo(g, s, s.start[level], s.end[level], g.now[level], into);
        } else {
            gather(g, s, s.start[level], s.end[level], g.now[level], into);
        }
    }

    /** Droplets fall along one axis. */
    private static void gather(FogGroup g, FogSchedule s, int from, int to, double[] now, double[] next) {
        int[] near = s.near;
        double[] share = s.share;
        double[] fall = g.fallIn;
        double[] give = g.give;
        for (int p = from; p < to; p++) {
            int n = 6 * p;
            int i = 4 * p;
            int f = 2 * W * p;
            int at = W * p;
            int a = near[n];
            double x = share[i];
            double in0 = x * now[a];
            double in1 = x * now[a + 1];
            double in2 = x * now[a + 2];
            double in3 = x * now[a + 3];
            for (int j = 1; j < 4; j++) {
                a = near[n + j];
                x = share[i + j];
                in0 += x * now[a];
                in1 += x * now[a + 1];
                in2 += x * now[a + 2];
                in3 += x * now[a + 3];
            }
            a = near[n + 4];
            int b = near[n + 5];
            in0 = in0 + fall[f] * now[a] + fall[f + 4] * now[b];
            in1 = in1 + fall[f + 1] * now[a + 1] + fall[f + 5] * now[b + 1];
            in2 = in2 + fall[f + 2] * now[a + 2] + fall[f + 6] * now[b + 2];
            in3 = in3 + fall[f + 3] * now[a + 3] + fall[f + 7] * now[b + 3];
            double h0 = now[at];
            double h1 = now[at + 1];
            double h2 = now[at + 2];
            double h3 = now[at + 3];
            next[at] = sound(h0 + (in0 - give[at] * h0));
            next[at + 1] = sound(h1 + (in1 - give[at + 1] * h1));
            next[at + 2] = sound(h2 + (in2 - give[at + 2] * h2));
            next[at + 3] = sound(h3 + (in3 - give[at + 3] * h3));
        }
    }

    private static double sound(double c) {
        return c < FogBin.VANISHING && c > -FogBin.VANISHING ? 0 : c;
    }

    /** The same where two lanes at most have a bin. */
    private static void gatherTwo(FogGroup g, FogSchedule s, int from, int to, double[] now, double[] next) {
        int[] near = s.near;
        double[] share = s.share;
        double[] fall = g.fallIn;
        double[] give = g.give;
        for (int p = from; p < to; p++) {
            int n = 6 * p;
            int i = 4 * p;
            int f = 2 * W * p;
            int at = W * p;
            int a = near[n];
            double x = share[i];
            double in0 = x * now[a];
            double in1 = x * now[a + 1];
            for (int j = 1; j < 4; j++) {
                a = near[n + j];
                x = share[i + j];
                in0 += x * now[a];
                in1 += x * now[a + 1];
            }
            a = near[n + 4];
            int b = near[n + 5];
            in0 = in0 + fall[f] * now[a] + fall[f + 4] * now[b];
            in1 = in1 + fall[f + 1] * now[a + 1] + fall[f + 5] * now[b + 1];
            double h0 = now[at];
            double h1 = now[at + 1];
            next[at] = sound(h0 + (in0 - give[at] * h0));
            next[at + 1] = sound(h1 + (in1 - give[at + 1] * h1));
            next[at + 2] = 0;
            next[at + 3] = 0;
        }
    }

    /** From the ends of steps, which stand in {@code change}, to the ends and the changes. */
    static void addUp(double[] now, double[] change, double[] next, int from, int to) {
        for (int p = from; p < to; p++) {
            next[p] = change[p];
            change[p] = next[p] - now[p];
        }
    }

    /** Any direction of gravity, or none. */
    private static void gatherAny(FogGroup g, FogSchedule s, int level, boolean note) {
        double[] now = g.now[level];
        double[] next = g.next[level];
        int flat = s.levelSides.length;
        int fall = s.fallSides.length;
        for (int p = s.start[level]; p < s.end[level]; p++) {
            for (int q = 0; q < g.used; q++) {
                int at = W * p + q;
                double in = 0;
                for (int j = 0; j < flat; j++) {
                    in += s.share[flat * p + j] * now[s.near[6 * p + j] + q];
                }
                for (int j = 0; j < fall; j++) {
                    in += g.fallIn[W * (fall * p + j) + q] * now[s.near[6 * p + flat + j] + q];
                }
                double held = now[at];
                next[at] = sound(held + (in - g.give[at] * held));
                if (note) {
                    g.change[at] = next[at] - held;
                }
            }
        }
    }

    @Override
    public void across(FogGroup g, FogAcross x, int finer, int coarser, double noteFiner, double noteCoarser) {
        int from = x.start(finer, coarser);
        int to = x.end(finer, coarser);
        across(x.finer, x.coarser, g.acrossFiner, g.now[coarser], g.next[finer], from, to);
        across(x.coarser, x.finer, g.acrossCoarser, g.now[finer], g.next[coarser], from, to);
        if (noteFiner != 0) {
            note(x.finer, x.coarser, g.acrossFiner, g.now[coarser], g.change, noteFiner, from, to);
        }
        if (noteCoarser != 0) {
            note(x.coarser, x.finer, g.acrossCoarser, g.now[finer], g.change, noteCoarser, from, to);
        }
    }

    private static void across(int[] into, int[] out, double[] share, double[] now, double[] next, int from, int to) {
        for (int i = from; i < to; i++) {
            int a = into[i];
            int b = out[i];
            int k = W * i;
            double c0 = share[k] * now[b];
            double c1 = share[k + 1] * now[b + 1];
            double c2 = share[k + 2] * now[b + 2];
            double c3 = share[k + 3] * now[b + 3];
            next[a] += c0;
            next[a + 1] += c1;
            next[a + 2] += c2;
            next[a + 3] += c3;
        }
    }

    private static void note(
            int[] into, int[] out, double[] share, double[] now, double[] change, double times, int from, int to) {
        for (int i = from; i < to; i++) {
            int a = into[i];
            int b = out[i];
            int k = W * i;
            change[a] += times * (share[k] * now[b]);
            change[a + 1] += times * (share[k + 1] * now[b + 1]);
            change[a + 2] += times * (share[k + 2] * now[b + 2]);
            change[a + 3] += times * (share[k + 3] * now[b + 3]);
        }
    }

    @Override
    public void lean(FogGroup g, FogSchedule s, int level) {
        FogLeans list = s.lean;
        double stepS = s.levels.stepS(level);
        double[] now = g.now[level];
        double[] next = g.next[level];
        double[] drift = s.drift();
        double[] lean = s.lean();
        double[] change = g.change;
        double[] room = g.room;
        int end = list.start[level + 1];
        for (int i = list.start[level]; i < end; i++) {
            int a = list.donor[i];
            int b = list.receiver[i];
            int f = list.behind[i];
            int l = list.link[i];
            double perA = list.perDonor[i];
            double perB = list.perReceiver[i];
            double along = stepS * Math.abs(drift[l]) * perA;
            double volume = stepS * Math.abs(lean[l]);
            for (int q = 0; q < W; q++) {
                double c = now[a + q];
                double back = c - now[f + q];
                double across = 0.5 * (change[a + q] + along * back);
                double moved = volume * LimitedSlope.beyond(c, back, now[b + q] - c, along, across, room[a + q]);
                next[a + q] -= perA * moved;
                next[b + q] += perB * moved;
            }
        }
    }

    @Override
    public void leanFalling(FogGroup g, FogSchedule s, int level) {
        FogLeans list = s.leanFalling;
        double stepS = s.levels.stepS(level);
        double[] now = g.now[level];
        double[] next = g.next[level];
        double[] drift = g.driftOf;
        double[] lean = g.leanOf;
        double[] change = g.change;
        double[] room = g.room;
        int end = list.start[level + 1];
        for (int i = list.start[level]; i < end; i++) {
            int a = list.donor[i];
            int b = list.receiver[i];
            int f = list.behind[i];
            int k = W * list.link[i];
            double sense = list.sense[i] * stepS;
            double perA = list.perDonor[i];
            double perB = list.perReceiver[i];
            for (int q = 0; q < W; q++) {
                double along = positive(sense * drift[k + q]) * perA;
                double volume = positive(sense * lean[k + q]);
                double c = now[a + q];
                double back = c - now[f + q];
                double across = 0.5 * (change[a + q] + along * back);
                double moved = volume * LimitedSlope.beyond(c, back, now[b + q] - c, along, across, room[a + q]);
                next[a + q] -= perA * moved;
                next[b + q] += perB * moved;
            }
        }
    }

    private static double positive(double x) {
        return x > 0 ? x : 0;
    }

    @Override
    public void leanAcross(FogGroup g, FogSchedule s, int level, double[] elapsed, double[] share) {
        leanAcross(g, s, s.leanAcross, level, elapsed, share, false);
    }

    @Override
    public void leanAcrossFalling(FogGroup g, FogSchedule s, int level, double[] elapsed, double[] share) {
        leanAcross(g, s, s.leanAcrossFalling, level, elapsed, share, true);
    }

    private static void leanAcross(
            FogGroup g, FogSchedule s, FogLeans list, int level, double[] elapsed, double[] share, boolean falling) {
        double stepS = s.levels.stepS(level);
        double[] change = g.change;
        double[] room = g.room;
        // Where nothing falls one drift serves all lanes.
        double[] drifts = falling ? g.driftOf : s.drift();
        double[] leans = falling ? g.leanOf : s.lean();
        int stride = falling ? 1 : 0;
        int end = list.start[level + 1];
        for (int i = list.start[level]; i < end; i++) {
            int a = list.donor[i];
            int b = list.receiver[i];
            int f = list.behind[i];
            int levelA = list.donorLevel[i];
            int levelB = list.receiverLevel[i];
            double[] nowA = g.now[levelA];
            double[] nowB = g.now[levelB];
            double[] nowF = g.now[list.behindLevel[i]];
            double[] nextA = g.next[levelA];
            double[] nextB = g.next[levelB];
            double perA = list.perDonor[i];
            double perB = list.perReceiver[i];
            double late = elapsed[levelA];
            double lateB = elapsed[levelB];
            double lateF = elapsed[list.behindLevel[i]];
            double part = share[levelA];
            double sense = list.sense[i] * stepS;
            int l = falling ? W * list.link[i] : list.link[i];
            for (int q = 0; q < W; q++) {
                double drift = sense * drifts[l + stride * q];
                double lean = sense * leans[l + stride * q];
                double along = positive(drift) * perA;
                double carried = late * change[a + q];
                double c = nowA[a + q] + carried;
                double back = c - (nowF[f + q] + lateF * change[f + q]);
                double ahead = nowB[b + q] + lateB * change[b + q] - c;
                double across = carried + 0.5 * (part * change[a + q] + along * back);
                double moved =
                        positive(lean) * LimitedSlope.beyond(nowA[a + q], back, ahead, along, across, room[a + q]);
                nextA[a + q] -= perA * moved;
                nextB[b + q] += perB * moved;
            }
        }
    }
}
