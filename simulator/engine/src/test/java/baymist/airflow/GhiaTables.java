package baymist.airflow;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;

/**
 * Speeds on the centre lines of the lid-driven cavity: Ghia, Ghia and Shin (1982), J. Comput. Phys. 48, 387, tables I and II (from memory; the
 * inner points, all those printed but one of Re 400 that lies off its own curve).
 */
final class GhiaTables {
    private static final double[] Y = {
        0.0547, 0.0625, 0.0703, 0.1016, 0.1719, 0.2813, 0.4531, 0.5, 0.6172, 0.7344, 0.8516, 0.9531, 0.9609, 0.9688,
        0.9766
    };
    private static final double[] X = {
        0.0625, 0.0703, 0.0781, 0.0938, 0.1563, 0.2266, 0.2344, 0.5, 0.8047, 0.8594, 0.9063, 0.9453, 0.9531, 0.9609,
        0.9688
    };
    private static final Map<Integer, double[]> U = Map.of(
            100,
                    new double[] {
                        -0.03717, -0.04192, -0.04775, -0.06434, -0.1015, -0.15662, -0.2109, -0.20581, -0.13641, 0.00332,
                        0.23151, 0.68717, 0.73722, 0.78871, 0.84123
                    },
            400,
                    new double[] {
                        -0.08186, -0.09266, -0.10338, -0.14612, -0.24299, -0.32726, -0.17119, -0.11477, 0.02135,
                        0.16256, 0.29093, 0.55892, 0.61756, 0.68439, 0.75837
                    },
            1000,
                    new double[] {
                        -0.18109, -0.20196, -0.2222, -0.2973, -0.38289, -0.27805, -0.10648, -0.0608, 0.05702, 0.18719,
                        0.33304, 0.46604, 0.51117, 0.57492, 0.65928
                    });
    private static final Map<Integer, double[]> V = Map.of(
            100,
                    new double[] {
                        0.09233, 0.10091, 0.1089, 0.12317, 0.16077, 0.17507, 0.17527, 0.05454, -0.24533, -0.22445,
                        -0.16914, -0.10313, -0.08864, -0.07391, -0.05906
                    },
            400,
                    new double[] {
                        0.1836,
                        0.19713,
                        0.2092,
                        0.22965,
                        0.28124,
                        0.30203,
                        0.30174,
                        0.05186,
                        -0.38598,
                        -0.44993,
                        Double.NaN,
                        -0.22847,
                        -0.19254,
                        -0.15663,
                        -0.12146
                    },
            1000,
                    new double[] {
                        0.27485, 0.29012, 0.30353, 0.32627, 0.37095, 0.33075, 0.32235, 0.02526, -0.31966, -0.42665,
                        -0.5155, -0.39188, -0.33714, -0.27669, -0.21388
                    });

    private GhiaTables() {}

    /**
     * Holds profiles against the tables.
     *
     * @param u speeds along the lid at the middles of n cells of the upright centre line, from the floor
     * @param v upright speeds at the middles of the level centre line
     * @param within allowed error of every point, of the lid's speed
     */
    static void hold(int reynolds, double[] u, double[] v, double within) {
        for (int i = 0; i < Y.length; i++) {
            holds("u at y " + Y[i], U.getOrDefault(reynolds, new double[0])[i], at(u, Y[i], 1), within);
            holds("v at x " + X[i], V.getOrDefault(reynolds, new double[0])[i], at(v, X[i], 0), within);
        }
    }

    private static void holds(String what, double expected, double found, double within) {
        assertTrue(
                Double.isNaN(expected) || Math.abs(found - expected) <= within,
                what + ": " + found + ", " + expected + " in print");
    }

    /** Linear between the middles of cells and the walls, the last of which moves at {@code end}. */
    private static double at(double[] values, double place, double end) {
        double p = place * values.length - 0.5;
        if (p < 0) {
            return values[0] * (p + 0.5) / 0.5;
        }
        int n = (int) p;
        if (n >= values.length - 1) {
            double last = values[values.length - 1];
            return last + (end - last) * (p - (values.length - 1)) / 0.5;
        }
        return values[n] + (p - n) * (values[n + 1] - values[n]);
    }
}
