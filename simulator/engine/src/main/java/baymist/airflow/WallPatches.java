package baymist.airflow;

import java.util.Arrays;
import java.util.Comparator;

/**
 * Walls that faces slide along, those of one face at one distance and speed joined, and the conductance that the law of the wall ({@link WallDrag}) gives them at a speed.
 * Walls without friction are left out. Immutable.
 */
final class WallPatches {
    private final WallDrag drag = new WallDrag();
    private final int count;
    private final int[] face;

    /** Viscosity times area over half the block, m³/s. */
    private final double[] laminarM3PerS;

    /** Half the block over viscosity, s/m: times the speed it is the Reynolds number. */
    private final double[] perSpeedSPerM;

    /** Speed of the wall itself, m/s. */
    private final double[] wallSpeed;

    WallPatches(FlowGrid grid, FlowLinks links, FlowSettings settings) {
        double nu = settings.kinematicViscosityM2PerS();
        int n = links.wallFace.length;
        double[] speed = new double[n];
        for (int w = 0; w < n; w++) {
            int[] place = {links.wallCell[w], links.wallSide[w]};
            speed[w] = settings.wallSpeed().applyAsDouble(place, (int) grid.axis[links.wallFace[w]]);
        }
        Integer[] order = new Integer[n];
        Arrays.setAll(order, w -> w);
        Arrays.sort(
                order,
                Comparator.<Integer>comparingInt(w -> links.wallFace[w])
                        .thenComparingDouble(w -> links.wallDistanceM[w])
                        .thenComparingDouble(w -> speed[w]));
        face = new int[n];
        laminarM3PerS = new double[n];
        perSpeedSPerM = new double[n];
        wallSpeed = new double[n];
        int at = -1;
        int last = -1;
        for (int w : order) {
            if (Double.isNaN(speed[w])) {
                continue;
            }
            if (last < 0
                    || links.wallFace[w] != links.wallFace[last]
                    || links.wallDistanceM[w] != links.wallDistanceM[last]
                    || speed[w] != speed[last]) {
                at++;
                face[at] = links.wallFace[w];
                perSpeedSPerM[at] = links.wallDistanceM[w] / nu;
                wallSpeed[at] = speed[w];
            }
            laminarM3PerS[at] += nu * links.wallReachM[w];
            last = w;
        }
        count = at + 1;
    }

    /**
     * Adds what the walls do at speeds {@code u}: {@code rate = rest - brake u}.
     *
     * @param brake [faces], m³/s
     * @param rest [faces], m⁴/s²
     */
    void grip(double[] u, double[] brake, double[] rest) {
        for (int w = 0; w < count; w++) {
            int f = face[w];
            double conductance = laminarM3PerS[w] * drag.factor(Math.abs(u[f] - wallSpeed[w]) * perSpeedSPerM[w]);
            brake[f] += conductance;
            rest[f] += conductance * wallSpeed[w];
        }
    }
}
