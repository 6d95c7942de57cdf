package baymist.fog;

import jdk.incubator.vector.DoubleVector;
import jdk.incubator.vector.VectorMask;
import jdk.incubator.vector.VectorOperators;
import jdk.incubator.vector.VectorSpecies;

/**
 * The kernel with vectors of four doubles, for a Java platform started with {@code --add-modules jdk.incubator.vector}. The same
 * operations in the same
 * order as {@link PlainKernel}; branches that choose between vectors are avoided, as they cost more than they save.
 */
final class VectorKernel implements FogKernel {
    private static final VectorSpecies<Double> S = DoubleVector.SPECIES_256;
    private static final int W = FogGroup.LANES;
    private static final PlainKernel PLAIN = new PlainKernel();

    VectorKernel() {}

    private static DoubleVector at(double[] values, int place) {
        return DoubleVector.fromArray(S, values, place);
    }

    @Override
    public void gather(FogGroup g, FogSchedule s, int level, boolean note) {
        if (s.fallSides.length != 2) {
            PLAIN.gather(g, s, level, note);
        } else if (note) {
            gather(g, s, s.start[level], s.end[level], g.now[level], g.change);
            PlainKernel.addUp(g.now[level], g.change, g.next[level], W * s.start[level], W * s.end[level]);
        } else {
            gather(g, s, s.start[level], s.end[level], g.now[level], g.next[level]);
        }
    }

    private static void gather(FogGroup g, FogSchedule s, int from, int to, double[] now, double[] next) {
        int[] near = s.near;
        double[] share = s.share;
        double[] fall = g.fallIn;
        double[] give = g.give;
        for (int p = from; p < to; p++) {
            int n = 6 * p;
            int i = 4 * p;
            int f = 2 * W * p;
            DoubleVector in = at(now, near[n])
                    .mul(share[i])
                    .add(at(now, near[n + 1]).mul(share[i + 1]))
                    .add(at(now, near[n + 2]).mul(share[i + 2]))
                    .add(at(now, near[n + 3]).mul(share[i + 3]))
                    .add(at(fall, f).mul(at(now, near[n + 4])))
                    .add(at(fall, f + W).mul(at(now, near[n + 5])));
            DoubleVector held = at(now, W * p);
            DoubleVector end = held.add(in.sub(at(give, W * p).mul(held)));
            VectorMask<Double> gone = end.abs().compare(VectorOperators.LT, FogBin.VANISHING);
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
            note(x.finer, x.coarser, g.acrossFiner, g.now[coarser], g.change, noteFiner, from, to);
        }
        if (noteCoarser != 0) {
            note(x.coarser, x.finer, g.acrossCoarser, g.now[finer], g.change, noteCoarser, from, to);
        }
    }

    private static void across(int[] into, int[] out, double[] share, double[] now, double[] next, int from, int to) {
        for (int i = from; i < to; i++) {
            DoubleVector came = at(share, W * i).mul(at(now, out[i]));
            at(next, into[i]).add(came).intoArray(next, into[i]);
        }
    }

    private static void note(
            int[] into, int[] out, double[] share, double[] now, double[] change, double times, int from, int to) {
        for (int i = from; i < to; i++) {
            DoubleVector came = at(share, W * i).mul(at(now, out[i]));
            at(change, into[i]).add(came.mul(times)).intoArray(change, into[i]);
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
            double perA = list.perDonor[i];
            double along = stepS * Math.abs(drift[list.link[i]]) * perA;
            double volume = stepS * Math.abs(lean[list.link[i]]);
            DoubleVector c = at(now, a);
            DoubleVector back = c.sub(at(now, list.behind[i]));
            DoubleVector ahead = at(now, b).sub(c);
            DoubleVector across = at(change, a).add(back.mul(along)).mul(0.5);
            DoubleVector wanted = back.add(ahead.add(ahead)).mul((1 - along) * (1.0 / 6));
            DoubleVector moved =
                    beyond(c, back, ahead, wanted, across, at(room, a)).mul(volume);
            at(next, a).sub(moved.mul(perA)).intoArray(next, a);
            at(next, b).add(moved.mul(list.perReceiver[i])).intoArray(next, b);
        }
    }

    /** {@link LimitedSlope#beyond} without branches. */
    private static DoubleVector beyond(
            DoubleVector held,
            DoubleVector back,
            DoubleVector ahead,
            DoubleVector wanted,
            DoubleVector across,
            DoubleVector room) {
        DoubleVector size = wanted.abs();
        DoubleVector most = back.abs().mul(room);
        DoubleVector other = ahead.abs().mul(LimitedSlope.ROUNDING);
        size = size.blend(most, most.compare(VectorOperators.LT, size));
        size = size.blend(other, other.compare(VectorOperators.LT, size));
        size = size.blend(size.neg(), ahead.compare(VectorOperators.LT, 0));
        size = size.blend(0, back.mul(ahead).compare(VectorOperators.LE, 0));
        DoubleVector total = size.add(across);
        DoubleVector least = held.mul(-LimitedSlope.ROUNDING);
        DoubleVector highest = held.mul(room);
        total = total.blend(highest, highest.compare(VectorOperators.LT, total));
        return total.blend(least, total.compare(VectorOperators.LT, least));
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
            int k = W * list.link[i];
            double perA = list.perDonor[i];
            double sense = list.sense[i] * stepS;
            DoubleVector along = positive(at(drift, k).mul(sense)).mul(perA);
            DoubleVector volume = positive(at(lean, k).mul(sense));
            DoubleVector c = at(now, a);
            DoubleVector back = c.sub(at(now, list.behind[i]));
            DoubleVector ahead = at(now, b).sub(c);
            DoubleVector across = at(change, a).add(back.mul(along)).mul(0.5);
            DoubleVector wanted =
                    back.add(ahead.add(ahead)).mul(along.neg().add(1).mul(1.0 / 6));
            DoubleVector moved =
                    beyond(c, back, ahead, wanted, across, at(room, a)).mul(volume);
            at(next, a).sub(moved.mul(perA)).intoArray(next, a);
            at(next, b).add(moved.mul(list.perReceiver[i])).intoArray(next, b);
        }
    }

    private static DoubleVector positive(DoubleVector v) {
        return v.blend(0, v.compare(VectorOperators.LT, 0));
    }

    @Override
    public void leanAcross(FogGroup g, FogSchedule s, int level, double[] elapsed, double[] share) {
        FogLeans list = s.leanAcross;
        double stepS = s.levels.stepS(level);
        for (int i = list.start[level]; i < list.start[level + 1]; i++) {
            double sense = list.sense[i] * stepS;
            int l = list.link[i];
            DoubleVector drift = DoubleVector.broadcast(S, sense * s.drift()[l]);
            DoubleVector lean = DoubleVector.broadcast(S, sense * s.lean()[l]);
            leanOver(g, list, i, drift, lean, elapsed, share);
        }
    }

    @Override
    public void leanAcrossFalling(FogGroup g, FogSchedule s, int level, double[] elapsed, double[] share) {
        FogLeans list = s.leanAcrossFalling;
        double stepS = s.levels.stepS(level);
        for (int i = list.start[level]; i < list.start[level + 1]; i++) {
            double sense = list.sense[i] * stepS;
            int k = W * list.link[i];
            leanOver(g, list, i, at(g.driftOf, k).mul(sense), at(g.leanOf, k).mul(sense), elapsed, share);
        }
    }

    private static void leanOver(
            FogGroup g, FogLeans list, int i, DoubleVector drift, DoubleVector lean, double[] elapsed, double[] share) {
        int a = list.donor[i];
        int b = list.receiver[i];
        int f = list.behind[i];
        int levelA = list.donorLevel[i];
        int levelB = list.receiverLevel[i];
        int levelF = list.behindLevel[i];
        double[] change = g.change;
        double perA = list.perDonor[i];
        DoubleVector along = positive(drift).mul(perA);
        DoubleVector held = at(g.now[levelA], a);
        DoubleVector own = at(change, a);
        DoubleVector carried = own.mul(elapsed[levelA]);
        DoubleVector c = held.add(carried);
        DoubleVector back = c.sub(at(g.now[levelF], f).add(at(change, f).mul(elapsed[levelF])));
        DoubleVector ahead =
                at(g.now[levelB], b).add(at(change, b).mul(elapsed[levelB])).sub(c);
        DoubleVector across =
                carried.add(own.mul(share[levelA]).add(back.mul(along)).mul(0.5));
        DoubleVector wanted = back.add(ahead.add(ahead)).mul(along.neg().add(1).mul(1.0 / 6));
        DoubleVector moved =
                beyond(held, back, ahead, wanted, across, at(g.room, a)).mul(positive(lean));
        double[] nextA = g.next[levelA];
        double[] nextB = g.next[levelB];
        at(nextA, a).sub(moved.mul(perA)).intoArray(nextA, a);
        at(nextB, b).add(moved.mul(list.perReceiver[i])).intoArray(nextB, b);
    }
}
