package baymist.airflow;

/** The heaviest of the resolved air's loops, arithmetic on flat arrays: momentum over links between faces, and banded factors of the refinement. Stateless. */
interface FlowKernel {
    /** Links are worked on in groups of this many; arrays reach up to a multiple of it. */
    int LANES = 4;

    /**
     * Momentum that links move downstream: limited advection ({@link Limiter}) and viscosity.
     *
     * @param links first {@code count} places of the arrays, seen in the direction of their flux
     * @param viscous exchange by viscosity, m³/s, from place {@code from} on
     */
    void move(Links links, int count, double[] viscous, int from);

    /**
     * Solves with a banded Cholesky factor, see {@link BandFactor}.
     *
     * @param below {@code below[k * band + j] = L(k + 1 + j, k)}, [n * band]
     * @param left {@code left[k * band + j] = L(k, k - band + j)}, [n * band]
     * @param perPivot 1/L(k, k), [n]
     * @param x right side in, solution out, from place {@code band} on, n places; zeros before it and {@code band} zeros after it
     */
    void substitute(double[] below, double[] left, int band, double[] perPivot, double[] x);

    /** A piece of links in work. */
    final class Links {
        /** Places, a multiple of {@link #LANES}: some arrays of this length fit into the innermost cache. */
        static final int ROOM = 512;

        /** Flux, m³/s; negative = from the high to the low face. */
        final double[] flux = new double[ROOM];

        /** Speed upstream, and the steps from there to downstream and to it from farther upstream, m/s. */
        final double[] upstream = new double[ROOM];

        final double[] ahead = new double[ROOM];
        final double[] behind = new double[ROOM];

        /** Momentum over density moved downstream, m⁴/s²; filled in. */
        final double[] moved = new double[ROOM];
    }
}
