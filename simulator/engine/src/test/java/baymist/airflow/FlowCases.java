package baymist.airflow;

import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/** Flows in boxes for the tests of the resolved air. */
final class FlowCases {
    private FlowCases() {}

    /** Speed along an axis at a point. */
    interface Field {
        double at(int axis, double x, double y, double z);
    }

    static FlowGrid grid(VoxelGrid voxels, int factor) {
        double[] open = new double[8];
        Arrays.fill(open, 1);
        return FlowGrid.of(voxels, new double[0], open, factor);
    }

    /** Centre of a face, m, in a box whose blocks begin at the origin. */
    static double[] centre(FlowGrid g, int face) {
        double[] x = new double[3];
        for (int a = 0; a < 3; a++) {
            x[a] = (g.block[3 * g.low[face] + a] + 0.5) * g.h[a];
        }
        x[g.axis[face]] += 0.5 * g.h[g.axis[face]];
        return x;
    }

    static void start(FlowSolver solver, Field field) {
        FlowGrid g = solver.grid();
        for (int f = 0; f < g.faces; f++) {
            double[] x = centre(g, f);
            solver.speedMPerS()[f] = field.at(g.axis[f], x[0], x[1], x[2]);
        }
        solver.projectNow(new double[g.cells]);
    }

    static double[] advance(FlowSolver solver, double durationS) {
        double[] mean = new double[solver.grid().faces];
        solver.advance(durationS, FlowDrive.none(solver.grid()), mean);
        return mean;
    }

    /** As {@link #advance} where nothing but a moving wall drives the air. */
    static void advanceAwake(FlowSolver solver, double durationS) {
        FlowGrid g = solver.grid();
        double[] push = new double[g.faces];
        push[0] = Double.MIN_NORMAL;
        solver.advance(
                durationS,
                new FlowDrive(new double[g.cells], new double[g.vents], push, new double[g.cells]),
                new double[g.faces]);
    }

    /** Mean error of the speeds, volume-weighted. */
    static double meanError(FlowSolver solver, Field exact) {
        FlowGrid g = solver.grid();
        double sum = 0;
        double volume = 0;
        for (int f = 0; f < g.faces; f++) {
            double[] x = centre(g, f);
            sum += g.faceVolumeM3(f) * Math.abs(solver.speedMPerS()[f] - exact.at(g.axis[f], x[0], x[1], x[2]));
            volume += g.faceVolumeM3(f);
        }
        return sum / volume;
    }

    /** Face on the high side of cell (i, j, k) along an axis in a full box of nx x ny cells a layer. */
    static int face(FlowGrid g, int cell, int axis) {
        int[] side = g.side(cell, 2 * axis + 1);
        return side[0];
    }
}
