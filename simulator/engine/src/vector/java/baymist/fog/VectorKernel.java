package baymist.fog;

import jdk.incubator.vector.DoubleVector;
import jdk.incubator.vector.VectorMask;
import jdk.incubator.vector.VectorOperators;
import jdk.incubator.vector.VectorSpecies;

/**
 * The kernel with vectors of four doubles, for a Java platform started with {@code --add-modules jdk.incubator.vector}. The same operations in the same
 * order as {@link PlainKernel}; branches that choose between vectors are avoided, as they cost more than they save.
 */
final class VectorKernel implements FogKernel {
    private static final VectorSpecies<Double> S = DoubleVector.SPECIES_256;
    private static final int W = FogGroup.LANES;
    private static final PlainKernel PLAIN = new PlainKernel();

    VectorKernel() {}

    @Override
    public void turn(FogGroup g, int[] cells, int from, int to, double stepS) {
        double[] mass = g.mass;
        double[] gathered = g.gathered;
        double[] held = g.held;
        double[] massSum = g.massSum;
        double[] source = g.source;
        double[] loss = g.loss;
        double[] perM3 = g.perM3;
        for (int i = from; i < to; i++) {
            int c = cells[i];
            int p = W * c;
            DoubleVector sum = DoubleVector.fromArray(S, mass, p).add(DoubleVector.fromArray(S, gathered, p));
            VectorMask<Double> gone = sum.abs().compare(VectorOperators.LT, FogBin.VANISHING_KG);
            DoubleVector m = sum.blend(0, gone);
            m.intoArray(mass, p);
            m.mul(perM3[c]).intoArray(held, p);
            DoubleVector.fromArray(S, massSum, p).add(m).intoArray(massSum, p);
            DoubleVector.fromArray(S, source, p)
                    .sub(DoubleVector.fromArray(S, loss, p).mul(m))
                    .mul(stepS)
                    .intoArray(gathered, p);
        }
    }

    @Override
    public void give(FogGroup g, FogSides s, int from, int to, double stepS) {
        double[] held = g.held;
        double[] gathered = g.gathered;
        double[] up = g.up;
        double[] down = g.down;
        int[] first = s.first;
        int[] second = s.second;
        int[] link = s.link;
        for (int i = from; i < to; i++) {
            int a = W * first[i];
            int b = W * second[i];
            DoubleVector moved = DoubleVector.fromArray(S, held, a)
                    .mul(stepS * up[link[i]])
                    .sub(DoubleVector.fromArray(S, held, b).mul(stepS * down[link[i]]));
            pass(gathered, a, b, moved);
        }
    }

    private static void pass(double[] gathered, int a, int b, DoubleVector moved) {
        DoubleVector.fromArray(S, gathered, a).sub(moved).intoArray(gathered, a);
        DoubleVector.fromArray(S, gathered, b).add(moved).intoArray(gathered, b);
    }

    @Override
    public void giveFalling(FogGroup g, FogSides s, int from, int to, double stepS) {
        double[] held = g.held;
        double[] gathered = g.gathered;
        double[] up = g.upOf;
        double[] down = g.downOf;
        int[] first = s.first;
        int[] second = s.second;
        int[] link = s.link;
        for (int i = from; i < to; i++) {
            int k = W * link[i];
            int a = W * first[i];
            int b = W * second[i];
            DoubleVector moved = DoubleVector.fromArray(S, up, k)
                    .mul(DoubleVector.fromArray(S, held, a))
                    .sub(DoubleVector.fromArray(S, down, k).mul(DoubleVector.fromArray(S, held, b)))
                    .mul(stepS);
            pass(gathered, a, b, moved);
        }
    }

    @Override
    public void note(FogGroup g, int[] cells, int from, int to, boolean border) {
        if (border) {
            PLAIN.note(g, cells, from, to, true);
            return;
        }
        double[] gathered = g.gathered;
        double[] change = g.change;
        double[] perM3 = g.perM3;
        for (int i = from; i < to; i++) {
            int c = cells[i];
            DoubleVector.fromArray(S, gathered, W * c).mul(perM3[c]).intoArray(change, W * c);
        }
    }

    @Override
    public void lean(FogGroup g, FogSides s, int from, int to, double stepS) {
        double[] held = g.held;
        double[] gathered = g.gathered;
        double[] change = g.change;
        double[] room = g.room;
        double[] perM3 = g.perM3;
        double[] drift = g.drift;
        double[] lean = g.lean;
        int[] first = s.first;
        int[] second = s.second;
        int[] behind = s.behind;
        int[] link = s.link;
        for (int i = from; i < to; i++) {
            int a = W * first[i];
            int b = W * second[i];
            double along = stepS * Math.abs(drift[link[i]]) * perM3[first[i]];
            double volume = stepS * Math.abs(lean[link[i]]);
            DoubleVector c = DoubleVector.fromArray(S, held, a);
            DoubleVector back = c.sub(DoubleVector.fromArray(S, held, W * behind[i]));
            DoubleVector ahead = DoubleVector.fromArray(S, held, b).sub(c);
            DoubleVector across =
                    DoubleVector.fromArray(S, change, a).add(back.mul(along)).mul(0.5);
            DoubleVector wanted = back.add(ahead.add(ahead)).mul((1 - along) * (1.0 / 6));
            DoubleVector moved = beyond(c, back, ahead, wanted, across, DoubleVector.fromArray(S, room, a))
                    .mul(volume);
            pass(gathered, a, b, moved);
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
    public void leanFalling(FogGroup g, FogSides s, int from, int to, double stepS) {
        double[] held = g.held;
        double[] gathered = g.gathered;
        double[] change = g.change;
        double[] room = g.room;
        double[] perM3 = g.perM3;
        double[] drift = g.driftOf;
        double[] lean = g.leanOf;
        int[] first = s.first;
        int[] second = s.second;
        int[] behind = s.behind;
        int[] link = s.link;
        double[] sense = s.sense;
        for (int i = from; i < to; i++) {
            int a = W * first[i];
            int b = W * second[i];
            int k = W * link[i];
            double towards = sense[i] * stepS;
            DoubleVector along = positive(DoubleVector.fromArray(S, drift, k).mul(towards)).mul(perM3[first[i]]);
            DoubleVector volume = positive(DoubleVector.fromArray(S, lean, k).mul(towards));
            DoubleVector c = DoubleVector.fromArray(S, held, a);
            DoubleVector back = c.sub(DoubleVector.fromArray(S, held, W * behind[i]));
            DoubleVector ahead = DoubleVector.fromArray(S, held, b).sub(c);
            DoubleVector across =
                    DoubleVector.fromArray(S, change, a).add(back.mul(along)).mul(0.5);
            DoubleVector wanted = back.add(ahead.add(ahead)).mul(along.neg().add(1).mul(1.0 / 6));
            DoubleVector moved = beyond(c, back, ahead, wanted, across, DoubleVector.fromArray(S, room, a))
                    .mul(volume);
            pass(gathered, a, b, moved);
        }
    }

    private static DoubleVector positive(DoubleVector v) {
        return v.blend(0, v.compare(VectorOperators.LT, 0));
    }

    @Override
    public void leanAcross(
            FogGroup g, FogSides s, int from, int to, double stepS, double[] elapsed, double[] share) {
        PLAIN.leanAcross(g, s, from, to, stepS, elapsed, share);
    }
}
