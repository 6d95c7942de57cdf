package baymist.access;

import baymist.problem.SimulationException;
import java.util.Arrays;

/**
 * A beam between one-sided supports: each node may move from {@code low} to {@code high} and is pushed back at either end, never pulled.
 *
 * <p>That is the least energy of the beam within bounds, a strictly convex quadratic programme with one answer. First the primal-dual active
 * set (Hintermüller, Ito and Kunisch 2002, SIAM J. Optim. 13, 865-888): all nodes beyond a bound are held, all that are pulled are let
 * go, a few solutions usually suffice. It may go round in circles for beams; then the primal active set (Nocedal and Wright 2006,
 * Numerical Optimization, algorithm 16.3) starts from the straight beam, takes on one support or lets go of one in each round, and always
 * ends. No step depends on anything but the input.
 */
final class BeamContact {
    /** Rounds of the primal-dual method before the other takes over. */
    private static final int QUICK_ROUNDS = 30;

    /** Pull that counts as none, share of the beam's weight; rounding of the band solver lies well below. */
    private static final double PULL = 1e-9;

    private final ElasticBeam beam;
    private final double[] lowM;
    private final double[] highM;
    private int rounds;

    /**
     * Prepares the supports.
     *
     * @param lowM,highM least and largest deflection of each node, m, infinite where nothing is near, [nodes]; 0 lies between
     */
    BeamContact(ElasticBeam beam, double[] lowM, double[] highM) {
        this.beam = beam;
        this.lowM = lowM.clone();
        this.highM = highM.clone();
        for (int i = 0; i < beam.nodes(); i++) {
            if (!(lowM[i] <= 0) || !(highM[i] >= 0)) {
                throw new IllegalArgumentException(
                        "node " + i + ": the straight beam lies outside " + lowM[i] + ".." + highM[i] + " m");
            }
        }
    }

    /** The beam at rest. */
    BeamShape solve() {
        double[] x = quick();
        return shape(x == null ? steady() : x);
    }

    private double @org.jspecify.annotations.Nullable [] quick() {
        double[] held = fixed();
        for (int round = 0; round < QUICK_ROUNDS; round++) {
            double[] x = solveFor(held);
            double[] next = fixed();
            for (int i = 0; i < held.length; i++) {
                if (lowM[i] == highM[i]) {
                    continue;
                }
                if (Double.isNaN(held[i])) {
                    next[i] = x[2 * i] > highM[i] ? highM[i] : x[2 * i] < lowM[i] ? lowM[i] : Double.NaN;
                } else if (pullN(x, i, held[i]) <= PULL * beam.totalLoadN()) {
                    next[i] = held[i];
                }
            }
            if (Arrays.equals(next, held)) {
                return x;
            }
            held = next;
        }
        return null;
    }

    /** Held deflections of the nodes that can't move at all, NaN elsewhere. */
    private double[] fixed() {
        double[] held = new double[beam.nodes()];
        for (int i = 0; i < held.length; i++) {
            held[i] = lowM[i] == highM[i] ? lowM[i] : Double.NaN;
        }
        return held;
    }

    /** By how much a support would have to pull, N; negative when it pushes. */
    private double pullN(double[] x, int node, double heldAt) {
        double r = beam.reactionN(x, node);
        return heldAt == highM[node] ? r : -r;
    }

    private double[] solveFor(double[] held) {
        rounds++;
        return beam.solve(held);
    }

    private double[] steady() {
        double[] held = fixed();
        double[] at = new double[2 * beam.nodes()];
        int most = 40 * beam.nodes() + 100;
        for (int round = 0; round < most; round++) {
            double[] goal = solveFor(held);
            int block = -1;
            double step = 1;
            for (int i = 0; i < held.length; i++) {
                if (Double.isNaN(held[i])) {
                    double bound = goal[2 * i] > highM[i] ? highM[i] : goal[2 * i] < lowM[i] ? lowM[i] : Double.NaN;
                    double share = (bound - at[2 * i]) / (goal[2 * i] - at[2 * i]);
                    if (share < step) {
                        step = Math.max(0, share);
                        block = i;
                    }
                }
            }
            for (int k = 0; k < at.length; k++) {
                at[k] += step * (goal[k] - at[k]);
            }
            if (block >= 0) {
                held[block] = goal[2 * block] > highM[block] ? highM[block] : lowM[block];
                at[2 * block] = held[block];
            } else {
                int worst = mostPulled(goal, held);
                if (worst < 0) {
                    return goal;
                }
                held[worst] = Double.NaN;
            }
        }
        throw new SimulationException(
                "sag: the supports of a wand of " + beam.nodes() + " nodes did not settle in " + most + " rounds");
    }

    private int mostPulled(double[] x, double[] held) {
        int worst = -1;
        double most = PULL * beam.totalLoadN();
        for (int i = 0; i < held.length; i++) {
            if (!Double.isNaN(held[i]) && lowM[i] != highM[i] && pullN(x, i, held[i]) > most) {
                most = pullN(x, i, held[i]);
                worst = i;
            }
        }
        return worst;
    }

    private BeamShape shape(double[] x) {
        int n = beam.nodes();
        double[] station = new double[n];
        double[] v = new double[n];
        double[] slope = new double[n];
        double[] reaction = new double[n];
        double peak = 0;
        double peakAt = beam.stationM(0);
        for (int i = 0; i < n; i++) {
            station[i] = beam.stationM(i);
            v[i] = x[2 * i];
            slope[i] = beam.slope(x, i);
            boolean touches = v[i] == lowM[i] || v[i] == highM[i] || (i == 0 && beam.clamped());
            reaction[i] = touches ? beam.reactionN(x, i) : 0;
        }
        for (int e = 0; e + 1 < n; e++) {
            for (int k = 0; k <= 4; k++) {
                double moment = Math.abs(beam.momentNm(x, e, k / 4.0));
                if (moment > peak) {
                    peak = moment;
                    peakAt = station[e] + k / 4.0 * (station[e + 1] - station[e]);
                }
            }
        }
        return new BeamShape(station, v, slope, reaction, peak, peakAt, rounds);
    }
}
