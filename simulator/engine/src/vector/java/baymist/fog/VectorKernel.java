package baymist.fog;

import jdk.incubator.vector.FloatVector;
import jdk.incubator.vector.VectorMask;
import jdk.incubator.vector.VectorOperators;
import jdk.incubator.vector.VectorSpecies;

/**
 * The kernel with vectors of eight floats, for a Java platform started with {@code --add-modules jdk.incubator.vector}. The same
 * operations in the same
 * order as {@link PlainKernel}; branches that choose between vectors are avoided, as they cost more than they save.
 */
final class VectorKernel implements FogKernel {
    private static final VectorSpecies<Float> S = FloatVector.SPECIES_256;
    private static final int W = 8;

    VectorKernel() {}

    @Override
    public int lanes() {
        return W;
    }

    private static FloatVector at(float[] values, int place) {
        return FloatVector.fromArray(S, values, place);
    }

    @Override
    public void gather(FogGroup g, FogSchedule s, int level, boolean note) {
        if (s.fallSides.length != 2) {
            PlainKernel.gatherAny(g, s, level, note);
            return;
        }
        gather(g, s, s.start[level], s.end[level], g.now[level], g.next[level]);
        if (note) {
            PlainKernel.noteChange(g.now[level], g.next[level], g.change, W * s.start[level], W * s.end[level]);
        }
    }

    @Override
    public void addUp(FogGroup g, FogSchedule s, int level) {
        float[] held = g.now[level];
        float[] sum = g.sum;
        float[] excess = g.excess;
        int from = s.sinkStart[level];
        int first = s.firstSink[level];
        int count = s.end[level] - from;
        for (int j = 0; j < count; j++) {
            int i = W * (first + j);
            FloatVector summed = at(sum, i);
            FloatVector more = at(held, W * (from + j)).sub(at(excess, i));
            FloatVector grown = summed.add(more);
            grown.sub(summed).sub(more).intoArray(excess, i);
            grown.intoArray(sum, i);
        }
    }

    private static void gather(FogGroup g, FogSchedule s, int from, int to, float[] now, float[] next) {
        int[] near = s.near;
        float[] share = s.share;
        float[] fall = g.fallIn;
        float[] give = g.give;
        for (int p = from; p < to; p++) {
            int n = 6 * p;
            int i = 4 * p;
            int f = 2 * W * p;
            FloatVector in = at(now, near[n])
                    .mul(share[i])
                    .add(at(now, near[n + 1]).mul(share[i + 1]))
                    .add(at(now, near[n + 2]).mul(share[i + 2]))
                    .add(at(now, near[n + 3]).mul(share[i + 3]))
                    .add(at(fall, f).mul(at(now, near[n + 4])))
                    .add(at(fall, f + W).mul(at(now, near[n + 5])));
            FloatVector held = at(now, W * p);
            FloatVector end = held.add(in.sub(at(give, W * p).mul(held)));
            VectorMask<Float> gone = end.abs().compare(VectorOperators.LT, PlainKernel.VANISHING);
            end.blend(0, gone).intoArray(next, W * p);
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
            FloatVector came = at(share, W * i).mul(at(now, out[i]));
            at(next, into[i]).add(came).intoArray(next, into[i]);
        }
    }

    private static void note(
            int[] into, int[] out, float[] share, float[] now, float[] change, float times, int from, int to) {
        for (int i = from; i < to; i++) {
            FloatVector came = at(share, W * i).mul(at(now, out[i]));
            at(change, into[i]).add(came.mul(times)).intoArray(change, into[i]);
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
            float perA = list.perDonor[i];
            float along = stepS * (float) Math.abs(drift[list.link[i]]) * perA;
            float volume = stepS * (float) Math.abs(lean[list.link[i]]);
            FloatVector c = at(now, a);
            FloatVector back = c.sub(at(now, list.behind[i]));
            FloatVector ahead = at(now, b).sub(c);
            FloatVector across = at(change, a).add(back.mul(along)).mul(0.5f);
            FloatVector wanted = back.add(ahead.add(ahead)).mul((1 - along) * (1f / 6));
            FloatVector moved =
                    beyond(c, back, ahead, wanted, across, at(room, a)).mul(volume);
            at(next, a).sub(moved.mul(perA)).intoArray(next, a);
            at(next, b).add(moved.mul(list.perReceiver[i])).intoArray(next, b);
        }
    }

    /** {@link LimitedSlope#beyond} without branches. */
    private static FloatVector beyond(
            FloatVector held,
            FloatVector back,
            FloatVector ahead,
            FloatVector wanted,
            FloatVector across,
            FloatVector room) {
        FloatVector size = wanted.abs();
        FloatVector most = back.abs().mul(room);
        FloatVector other = ahead.abs().mul(LimitedSlope.ROUNDING_SINGLE);
        size = size.blend(most, most.compare(VectorOperators.LT, size));
        size = size.blend(other, other.compare(VectorOperators.LT, size));
        size = size.blend(size.neg(), ahead.compare(VectorOperators.LT, 0));
        size = size.blend(0, back.mul(ahead).compare(VectorOperators.LE, 0));
        FloatVector total = size.add(across);
        FloatVector least = held.mul(-LimitedSlope.ROUNDING_SINGLE);
        FloatVector highest = held.mul(room);
        total = total.blend(highest, highest.compare(VectorOperators.LT, total));
        return total.blend(least, total.compare(VectorOperators.LT, least));
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
            int k = W * list.link[i];
            float perA = list.perDonor[i];
            float sense = list.sense[i] * stepS;
            FloatVector along = positive(at(drift, k).mul(sense)).mul(perA);
            FloatVector volume = positive(at(lean, k).mul(sense));
            FloatVector c = at(now, a);
            FloatVector back = c.sub(at(now, list.behind[i]));
            FloatVector ahead = at(now, b).sub(c);
            FloatVector across = at(change, a).add(back.mul(along)).mul(0.5f);
            FloatVector wanted =
                    back.add(ahead.add(ahead)).mul(along.neg().add(1).mul(1f / 6));
            FloatVector moved =
                    beyond(c, back, ahead, wanted, across, at(room, a)).mul(volume);
            at(next, a).sub(moved.mul(perA)).intoArray(next, a);
            at(next, b).add(moved.mul(list.perReceiver[i])).intoArray(next, b);
        }
    }

    private static FloatVector positive(FloatVector v) {
        return v.blend(0, v.compare(VectorOperators.LT, 0));
    }

    @Override
    public void leanAcross(FogGroup g, FogSchedule s, int level, double[] elapsed, double[] share) {
        FogLeans list = s.leanAcross;
        float stepS = (float) s.levels.stepS(level);
        for (int i = list.start[level]; i < list.start[level + 1]; i++) {
            float sense = list.sense[i] * stepS;
            int l = list.link[i];
            FloatVector drift = FloatVector.broadcast(S, sense * (float) s.drift()[l]);
            FloatVector lean = FloatVector.broadcast(S, sense * (float) s.lean()[l]);
            leanOver(g, list, i, drift, lean, elapsed, share);
        }
    }

    @Override
    public void leanAcrossFalling(FogGroup g, FogSchedule s, int level, double[] elapsed, double[] share) {
        FogLeans list = s.leanAcrossFalling;
        float stepS = (float) s.levels.stepS(level);
        for (int i = list.start[level]; i < list.start[level + 1]; i++) {
            float sense = list.sense[i] * stepS;
            int k = W * list.link[i];
            leanOver(g, list, i, at(g.driftOf, k).mul(sense), at(g.leanOf, k).mul(sense), elapsed, share);
        }
    }

    private static void leanOver(
            FogGroup g, FogLeans list, int i, FloatVector drift, FloatVector lean, double[] elapsed, double[] share) {
        int a = list.donor[i];
        int b = list.receiver[i];
        int f = list.behind[i];
        int levelA = list.donorLevel[i];
        int levelB = list.receiverLevel[i];
        int levelF = list.behindLevel[i];
        float[] change = g.change;
        float perA = list.perDonor[i];
        FloatVector along = positive(drift).mul(perA);
        FloatVector held = at(g.now[levelA], a);
        FloatVector own = at(change, a);
        FloatVector carried = own.mul((float) elapsed[levelA]);
        FloatVector c = held.add(carried);
        FloatVector back = c.sub(at(g.now[levelF], f).add(at(change, f).mul((float) elapsed[levelF])));
        FloatVector ahead =
                at(g.now[levelB], b).add(at(change, b).mul((float) elapsed[levelB])).sub(c);
        FloatVector across =
                carried.add(own.mul((float) share[levelA]).add(back.mul(along)).mul(0.5f));
        FloatVector wanted = back.add(ahead.add(ahead)).mul(along.neg().add(1).mul(1f / 6));
        FloatVector moved =
                beyond(held, back, ahead, wanted, across, at(g.room, a)).mul(positive(lean));
        float[] nextA = g.next[levelA];
        float[] nextB = g.next[levelB];
        at(nextA, a).sub(moved.mul(perA)).intoArray(nextA, a);
        at(nextB, b).add(moved.mul(list.perReceiver[i])).intoArray(nextB, b);
    }
}
