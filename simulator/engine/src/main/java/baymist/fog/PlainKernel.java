package baymist.fog;

/** The kernel in plain Java. Lanes are written out where that lets the compiler keep them in registers; those without a bin hold zeros. */
final class PlainKernel implements FogKernel {
    private static final int W = 4;

    /** Concentrations below are set to zero, kg/m³, so that arithmetic never meets subnormal numbers. */
    static final float VANISHING = 1e-30f;

    @Override
    public int lanes() {
        return W;
    }

    @Override
    public void gather(FogGroup g, FogSchedule s, int level, boolean note) {
        if (s.fallSides.length != 2) {
            gatherAny(g, s, level, note);
            return;
        }
        if (g.used <= 2) {
            gatherTwo(g, s, s.start[level], s.end[level], g.now[level], g.next[level]);
        } else {
            gather(g, s, s.start[level], s.end[level], g.now[level], g.next[level]);
        }
        if (note) {
            noteChange(g.now[level], g.next[level], g.change, W * s.start[level], W * s.end[level]);
        }
    }

    @Override
    public void addUp(FogGroup g, FogSchedule s, int level) {
        float[] held = g.now[level];
        float[] sum = g.sum;
        float[] excess = g.excess;
        int from = W * s.sinkStart[level];
        int back = from - W * s.firstSink[level];
        int to = W * s.end[level];
        for (int p = from; p < to; p++) {
            int i = p - back;
            float more = held[p] - excess[i];
            float grown = sum[i] + more;
            excess[i] = (grown - sum[i]) - more;
            sum[i] = grown;
        }
    }

    /** Notes how far cells changed. */
    static void noteChange(float[] now, float[] next, float[] change, int from, int to) {
        for (int p = from; p < to; p++) {
            change[p] = next[p] - now[p];
        }
    }

    /** Droplets fall along one axis. */
    private static void gather(FogGroup g, FogSchedule s, int from, int to, float[] now, float[] next) {
        int[] near = s.near;
        float[] share = s.share;
        float[] fall = g.fallIn;
        float[] give = g.give;
        for (int p = from; p < to; p++) {
            int n = 6 * p;
            int i = 4 * p;
            int f = 2 * W * p;
            int at = W * p;
            int a = near[n];
            float x = share[i];
            float in0 = x * now[a];
            float in1 = x * now[a + 1];
            float in2 = x * now[a + 2];
            float in3 = x * now[a + 3];
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
            float h0 = now[at];
            float h1 = now[at + 1];
            float h2 = now[at + 2];
            float h3 = now[at + 3];
            next[at] = sound(h0 + (in0 - give[at] * h0));
            next[at + 1] = sound(h1 + (in1 - give[at + 1] * h1));
            next[at + 2] = sound(h2 + (in2 - give[at + 2] * h2));
            next[at + 3] = sound(h3 + (in3 - give[at + 3] * h3));
        }
    }

    private static float sound(float c) {
        return c < VANISHING && c > -VANISHING ? 0 : c;
    }

    /** The same where two lanes at most have a bin. */
    private static void gatherTwo(FogGroup g, FogSchedule s, int from, int to, float[] now, float[] next) {
        int[] near = s.near;
        float[] share = s.share;
        float[] fall = g.fallIn;
        float[] give = g.give;
        for (int p = from; p < to; p++) {
            int n = 6 * p;
            int i = 4 * p;
            int f = 2 * W * p;
            int at = W * p;
            int a = near[n];
            float x = share[i];
            float in0 = x * now[a];
            float in1 = x * now[a + 1];
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
            float h0 = now[at];
            float h1 = now[at + 1];
            next[at] = sound(h0 + (in0 - give[at] * h0));
            next[at + 1] = sound(h1 + (in1 - give[at + 1] * h1));
            next[at + 2] = 0;
            next[at + 3] = 0;
        }
    }

    /** Any direction of gravity, or none. */
    static void gatherAny(FogGroup g, FogSchedule s, int level, boolean note) {
        float[] now = g.now[level];
        float[] next = g.next[level];
        int w = g.lanes;
        int flat = s.levelSides.length;
        int fall = s.fallSides.length;
        for (int p = s.start[level]; p < s.end[level]; p++) {
            for (int q = 0; q < g.used; q++) {
                int at = w * p + q;
                float in = 0;
                for (int j = 0; j < flat; j++) {
                    in += s.share[flat * p + j] * now[s.near[6 * p + j] + q];
                }
                for (int j = 0; j < fall; j++) {
                    in += g.fallIn[w * (fall * p + j) + q] * now[s.near[6 * p + flat + j] + q];
                }
                float held = now[at];
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
            note(x.finer, x.coarser, g.acrossFiner, g.now[coarser], g.change, (float) noteFiner, from, to);
        }
        if (noteCoarser != 0) {
            note(x.coarser, x.finer, g.acrossCoarser, g.now[finer], g.change, (float) noteCoarser, from, to);
        }
    }

    private static void across(int[] into, int[] out, float[] share, float[] now, float[] next, int from, int to) {
        for (int i = from; i < to; i++) {
            int a = into[i];
            int b = out[i];
            int k = W * i;
            float c0 = share[k] * now[b];
            float c1 = share[k + 1] * now[b + 1];
            float c2 = share[k + 2] * now[b + 2];
            float c3 = share[k + 3] * now[b + 3];
            next[a] += c0;
            next[a + 1] += c1;
            next[a + 2] += c2;
            next[a + 3] += c3;
        }
    }

    private static void note(
            int[] into, int[] out, float[] share, float[] now, float[] change, float times, int from, int to) {
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
        float stepS = (float) s.levels.stepS(level);
        float[] now = g.now[level];
        float[] next = g.next[level];
        double[] drift = s.drift();
        double[] lean = s.lean();
        float[] change = g.change;
        float[] room = g.room;
        int end = list.start[level + 1];
        for (int i = list.start[level]; i < end; i++) {
            int a = list.donor[i];
            int b = list.receiver[i];
            int f = list.behind[i];
            int l = list.link[i];
            float perA = list.perDonor[i];
            float perB = list.perReceiver[i];
            float along = stepS * (float) Math.abs(drift[l]) * perA;
            float volume = stepS * (float) Math.abs(lean[l]);
            for (int q = 0; q < W; q++) {
                float c = now[a + q];
                float back = c - now[f + q];
                float across = 0.5f * (change[a + q] + along * back);
                float moved = volume * LimitedSlope.beyond(c, back, now[b + q] - c, along, across, room[a + q]);
                next[a + q] -= perA * moved;
                next[b + q] += perB * moved;
            }
        }
    }

    @Override
    public void leanFalling(FogGroup g, FogSchedule s, int level) {
        FogLeans list = s.leanFalling;
        float stepS = (float) s.levels.stepS(level);
        float[] now = g.now[level];
        float[] next = g.next[level];
        float[] drift = g.driftOf;
        float[] lean = g.leanOf;
        float[] change = g.change;
        float[] room = g.room;
        int end = list.start[level + 1];
        for (int i = list.start[level]; i < end; i++) {
            int a = list.donor[i];
            int b = list.receiver[i];
            int f = list.behind[i];
            int k = W * list.link[i];
            float sense = list.sense[i] * stepS;
            float perA = list.perDonor[i];
            float perB = list.perReceiver[i];
            for (int q = 0; q < W; q++) {
                float along = positive(sense * drift[k + q]) * perA;
                float volume = positive(sense * lean[k + q]);
                float c = now[a + q];
                float back = c - now[f + q];
                float across = 0.5f * (change[a + q] + along * back);
                float moved = volume * LimitedSlope.beyond(c, back, now[b + q] - c, along, across, room[a + q]);
                next[a + q] -= perA * moved;
                next[b + q] += perB * moved;
            }
        }
    }

    private static float positive(float x) {
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
        float stepS = (float) s.levels.stepS(level);
        float[] change = g.change;
        float[] room = g.room;
        int end = list.start[level + 1];
        for (int i = list.start[level]; i < end; i++) {
            int a = list.donor[i];
            int b = list.receiver[i];
            int f = list.behind[i];
            int levelA = list.donorLevel[i];
            int levelB = list.receiverLevel[i];
            float[] nowA = g.now[levelA];
            float[] nowB = g.now[levelB];
            float[] nowF = g.now[list.behindLevel[i]];
            float[] nextA = g.next[levelA];
            float[] nextB = g.next[levelB];
            float perA = list.perDonor[i];
            float perB = list.perReceiver[i];
            float late = (float) elapsed[levelA];
            float lateB = (float) elapsed[levelB];
            float lateF = (float) elapsed[list.behindLevel[i]];
            float part = (float) share[levelA];
            float sense = list.sense[i] * stepS;
            int l = list.link[i];
            for (int q = 0; q < W; q++) {
                float drift = sense * (falling ? g.driftOf[W * l + q] : (float) s.drift()[l]);
                float lean = sense * (falling ? g.leanOf[W * l + q] : (float) s.lean()[l]);
                float along = positive(drift) * perA;
                float carried = late * change[a + q];
                float c = nowA[a + q] + carried;
                float back = c - (nowF[f + q] + lateF * change[f + q]);
                float ahead = nowB[b + q] + lateB * change[b + q] - c;
                float across = carried + 0.5f * (part * change[a + q] + along * back);
                float moved =
                        positive(lean) * LimitedSlope.beyond(nowA[a + q], back, ahead, along, across, room[a + q]);
                nextA[a + q] -= perA * moved;
                nextB[b + q] += perB * moved;
            }
        }
    }
}
