package baymist.access;

/**
 * A straight elastic beam in one plane under its own weight, by finite elements.
 *
 * <p>Euler-Bernoulli elements with cubic shape functions (Przemieniecki 1968, Theory of Matrix Structural Analysis, ch. 5) and consistent
 * loads: deflections and slopes at the nodes are those of the exact solution for an even load. Unknowns are the deflection v and
 * the slope of each node; the banded equations are solved by LDLᵀ. Small slopes are assumed. Immutable.
 *
 * <p>Deflection, load and forces count positive in the same direction ("down").
 */
final class ElasticBeam {
    private static final int BAND = 4;

    /** Places of the nodes along the beam, m, ascending, [nodes]. */
    private final double[] stationM;

    private final double stiffnessNm2;
    private final double loadNPerM;
    private final boolean clamped;
    /** Slopes are solved as slope times this length, so that both unknowns have one size. */
    private final double scaleM;
    /** Upper band of the stiffness matrix over E I, [2 * nodes][BAND]. */
    private final double[][] band;
    /** Right-hand side over E I, [2 * nodes]. */
    private final double[] load;

    /**
     * A beam.
     *
     * @param stationM places of the nodes, m, ascending; the beam ends at the first and the last
     * @param pointN force at each node besides the even load, N, [nodes]
     * @param clamped whether the first node keeps its place and its slope of 0; else it is free
     */
    ElasticBeam(double[] stationM, double stiffnessNm2, double loadNPerM, double[] pointN, boolean clamped) {
        int n = stationM.length;
        if (n < 2 || pointN.length != n || !(stiffnessNm2 > 0)) {
            throw new IllegalArgumentException(n + " nodes, " + pointN.length + " forces, stiffness " + stiffnessNm2);
        }
        this.stationM = stationM.clone();
        this.stiffnessNm2 = stiffnessNm2;
        this.loadNPerM = loadNPerM;
        this.clamped = clamped;
        this.scaleM = (stationM[n - 1] - stationM[0]) / (n - 1);
        this.band = new double[2 * n][BAND];
        this.load = new double[2 * n];
        for (int e = 0; e + 1 < n; e++) {
            element(e, stationM[e + 1] - stationM[e]);
        }
        for (int i = 0; i < n; i++) {
            load[2 * i] += pointN[i] / stiffnessNm2;
        }
    }

    private void element(int e, double h) {
        if (!(h > 0)) {
            throw new IllegalArgumentException("nodes " + e + " and " + (e + 1) + " are " + h + " m apart");
        }
        double k = 1 / (h * h * h);
        double[][] m = {
            {12 * k, 6 * k * h, -12 * k, 6 * k * h},
            {0, 4 * k * h * h, -6 * k * h, 2 * k * h * h},
            {0, 0, 12 * k, -6 * k * h},
            {0, 0, 0, 4 * k * h * h}
        };
        double[] unit = {1, 1 / scaleM, 1, 1 / scaleM};
        for (int i = 0; i < 4; i++) {
            for (int j = i; j < 4; j++) {
                band[2 * e + i][j - i] += m[i][j] * unit[i] * unit[j];
            }
        }
        double w = loadNPerM / stiffnessNm2;
        double[] f = {w * h / 2, w * h * h / 12, w * h / 2, -w * h * h / 12};
        for (int i = 0; i < 4; i++) {
            load[2 * e + i] += f[i] * unit[i];
        }
    }

    int nodes() {
        return stationM.length;
    }

    double stationM(int node) {
        return stationM[node];
    }

    boolean clamped() {
        return clamped;
    }

    /** Largest force that the loads could put on one support, N; a measure for tolerances. */
    double totalLoadN() {
        double sum = Math.abs(loadNPerM) * (stationM[nodes() - 1] - stationM[0]);
        return Math.max(sum, 1e-300);
    }

    /**
     * Solves for given places of some nodes.
     *
     * @param heldM deflection of each node that is held, m; NaN for a free one, [nodes]
     * @return unknowns: deflection (m) and slope times a length, [2 * nodes]
     */
    double[] solve(double[] heldM) {
        int m = 2 * nodes();
        double[][] a = new double[m][];
        for (int i = 0; i < m; i++) {
            a[i] = band[i].clone();
        }
        double[] x = load.clone();
        for (int i = 0; i < nodes(); i++) {
            if (!Double.isNaN(heldM[i])) {
                hold(a, x, 2 * i, heldM[i]);
            }
        }
        if (clamped) {
            hold(a, x, 0, 0);
            hold(a, x, 1, 0);
        }
        factorAndSolve(a, x);
        return x;
    }

    /** Takes one unknown out of the equations. */
    private static void hold(double[][] a, double[] x, int i, double value) {
        for (int d = 1; d < BAND; d++) {
            if (i - d >= 0) {
                x[i - d] -= a[i - d][d] * value;
                a[i - d][d] = 0;
            }
            if (i + d < x.length) {
                x[i + d] -= a[i][d] * value;
                a[i][d] = 0;
            }
        }
        a[i][0] = 1;
        x[i] = value;
    }

    private static void factorAndSolve(double[][] a, double[] x) {
        int m = x.length;
        for (int i = 0; i < m; i++) {
            double pivot = a[i][0];
            if (!(pivot > 0)) {
                throw new IllegalArgumentException("the beam is not held: too few supports");
            }
            for (int d = 1; d < BAND && i + d < m; d++) {
                double l = a[i][d] / pivot;
                for (int c = d; c < BAND; c++) {
                    a[i + d][c - d] -= l * a[i][c];
                }
                x[i + d] -= l * x[i];
            }
        }
        for (int i = m - 1; i >= 0; i--) {
            double sum = x[i];
            for (int d = 1; d < BAND && i + d < m; d++) {
                sum -= a[i][d] * x[i + d];
            }
            x[i] = sum / a[i][0];
        }
    }

    /** Force that whatever holds a node must put on the beam, N, positive down. */
    double reactionN(double[] x, int node) {
        int i = 2 * node;
        double sum = band[i][0] * x[i] - load[i];
        for (int d = 1; d < BAND; d++) {
            sum += i + d < x.length ? band[i][d] * x[i + d] : 0;
            sum += i - d >= 0 ? band[i - d][d] * x[i - d] : 0;
        }
        return sum * stiffnessNm2;
    }

    double slope(double[] x, int node) {
        return x[2 * node + 1] / scaleM;
    }

    /**
     * Bending moment E I v'' in an element, N m: the second derivative of the cubic plus that of the even load's own
     * shape {@code w s² (h - s)²/(24 E I)}.
     *
     * @param share place in the element, 0 at its first node to 1 at its second
     */
    double momentNm(double[] x, int element, double share) {
        double h = stationM[element + 1] - stationM[element];
        double v0 = x[2 * element];
        double v1 = x[2 * element + 2];
        double t0 = slope(x, element) * h;
        double t1 = slope(x, element + 1) * h;
        double curve = ((12 * share - 6) * (v0 - v1) + (6 * share - 4) * t0 + (6 * share - 2) * t1) / (h * h);
        return stiffnessNm2 * curve + loadNPerM * h * h * (1 - 6 * share + 6 * share * share) / 12;
    }
}
