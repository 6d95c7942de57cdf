package baymist.airflow;

import jdk.incubator.vector.DoubleVector;
import jdk.incubator.vector.VectorOperators;
import jdk.incubator.vector.VectorSpecies;

/**
 * The kernel with vectors of four doubles, for a Java platform started with {@code --add-modules jdk.incubator.vector}. The same operations in the same order as {@link
 * PlainFlowKernel}. Speeds are looked up one by one beforehand: this platform's vectors of places far apart were six times slower than the plain loop.
 */
final class VectorFlowKernel implements FlowKernel {
    private static final VectorSpecies<Double> S = DoubleVector.SPECIES_256;

    VectorFlowKernel() {}

    private static DoubleVector at(double[] values, int place) {
        return DoubleVector.fromArray(S, values, place);
    }

    @Override
    public void move(Links links, int count, double[] viscous, int from) {
        for (int i = 0; i < count; i += LANES) {
            DoubleVector ahead = at(links.ahead, i);
            DoubleVector value = at(links.upstream, i).add(beyond(at(links.behind, i), ahead));
            at(links.flux, i)
                    .abs()
                    .mul(value)
                    .sub(at(viscous, from + i).mul(ahead))
                    .intoArray(links.moved, i);
        }
    }

    /** {@link Limiter#beyond} without branches. */
    private static DoubleVector beyond(DoubleVector behind, DoubleVector ahead) {
        DoubleVector twice = behind.add(behind);
        DoubleVector size = ahead.add(twice).mul(Limiter.THIRD).abs();
        DoubleVector back = twice.abs();
        DoubleVector forth = ahead.add(ahead).abs();
        size = size.blend(back, back.compare(VectorOperators.LT, size));
        size = size.blend(forth, forth.compare(VectorOperators.LT, size));
        size = size.blend(size.neg(), ahead.compare(VectorOperators.LT, 0));
        return size.blend(0, ahead.mul(behind).compare(VectorOperators.LE, 0)).mul(0.5);
    }

    @Override
    public void substitute(double[] below, double[] left, int band, double[] perPivot, double[] x) {
        for (int k = 0; k < perPivot.length; k++) {
            double known = x[band + k] * perPivot[k];
            x[band + k] = known;
            for (int j = 0; j < band; j += LANES) {
                int to = band + k + 1 + j;
                at(x, to).sub(at(below, k * band + j).mul(known)).intoArray(x, to);
            }
        }
        for (int k = perPivot.length - 1; k >= 0; k--) {
            double known = x[band + k] * perPivot[k];
            x[band + k] = known;
            for (int j = 0; j < band; j += LANES) {
                at(x, k + j).sub(at(left, k * band + j).mul(known)).intoArray(x, k + j);
            }
        }
    }
}
