package baymist.airflow;

import baymist.spray.SprayHits;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;

/** First guess of the air motion from the analytic jets, and the places where the supplied air appears. */
final class StartField {
    /** Cap on the cells' mean speed: faster parts of the jets stay analytic (physics of the jets' hand-over), m/s. */
    static final double SPEED_CAP_M_PER_S = 5;

    /** The supply is spread over neighbours until they hold this share of a whole voxel. */
    private static final double LEAST_SOURCE_VOXELS = 0.5;

    private StartField() {}

    /**
     * Face fluxes of the jets: cell mean velocity (stream / volume, capped), face velocity = mean of its two cells, flux =
     * velocity times open area; zero outside {@code group}.
     *
     * @return [faces] m³/s
     */
    static double[] jets(VoxelGrid grid, SprayHits hits, AirPath path, int group) {
        int n = grid.cellCount();
        double[][] u = new double[3][n];
        for (int s = 0; s < hits.streamCell().length; s++) {
            int c = hits.streamCell()[s];
            if (path.groups().groupOf(c) == group) {
                u[0][c] += hits.streamX()[s];
                u[1][c] += hits.streamY()[s];
                u[2][c] += hits.streamZ()[s];
            }
        }
        for (int c = 0; c < n; c++) {
            double speed = Math.sqrt(u[0][c] * u[0][c] + u[1][c] * u[1][c] + u[2][c] * u[2][c]) / grid.volumeM3(c);
            double scale = speed > SPEED_CAP_M_PER_S ? SPEED_CAP_M_PER_S / speed : 1;
            for (double[] component : u) {
                component[c] *= scale / grid.volumeM3(c);
            }
        }
        FaceSet faces = grid.faces();
        double[] openFraction = path.openFraction();
        double[] flux = new double[faces.count()];
        for (int f = 0; f < flux.length; f++) {
            double[] along = u[faces.axis()[f]];
            double mean = 0.5 * (along[faces.low()[f]] + along[faces.high()[f]]);
            flux[f] = mean * Components.openAreaM2(faces, f, openFraction);
        }
        return flux;
    }

    /**
     * Adds the supplied air along the jets, in proportion to the air that they move in each cell of the tip's group: a jet draws
     * in many times its own air within a few centimetres, so where along it the supply appears does not show in the field, while
     * all of it in the tip's cell would ask for needlessly short steps. Without jets it appears round {@code airCell}.
     */
    static void addSupply(VoxelGrid grid, SprayHits hits, AirPath path, double supplyM3PerS, double[] sourceM3PerS) {
        int group = path.groups().groupOf(hits.airCell());
        double[] weight = new double[hits.streamCell().length];
        double sum = 0;
        for (int s = 0; s < weight.length; s++) {
            if (path.groups().groupOf(hits.streamCell()[s]) == group) {
                double x = hits.streamX()[s];
                double y = hits.streamY()[s];
                double z = hits.streamZ()[s];
                weight[s] = Math.sqrt(x * x + y * y + z * z);
                sum += weight[s];
            }
        }
        if (!(sum > 0)) {
            addSupply(grid, hits.airCell(), supplyM3PerS, sourceM3PerS);
            return;
        }
        for (int s = 0; s < weight.length; s++) {
            sourceM3PerS[hits.streamCell()[s]] += supplyM3PerS * weight[s] / sum;
        }
    }

    /**
     * Adds the supplied air to the cells round {@code airCell}: enough cells (breadth first through open sides) to hold half
     * a voxel and to keep the speed out of them below the cap, shared by volume.
     */
    static void addSupply(VoxelGrid grid, int airCell, double supplyM3PerS, double[] sourceM3PerS) {
        double voxel = grid.sizeM().x() * grid.sizeM().y() * grid.sizeM().z();
        double wanted = Math.max(LEAST_SOURCE_VOXELS * voxel, Math.pow(supplyM3PerS / (6 * SPEED_CAP_M_PER_S), 1.5));
        int[] queue = new int[grid.cellCount()];
        boolean[] seen = new boolean[grid.cellCount()];
        int size = 1;
        queue[0] = airCell;
        seen[airCell] = true;
        double volume = grid.volumeM3(airCell);
        for (int head = 0; head < size && volume < wanted; head++) {
            for (int d = 0; d < 6 && volume < wanted; d++) {
                int next = grid.neighbour(queue[head], d);
                if (next >= 0 && !seen[next]) {
                    seen[next] = true;
                    queue[size++] = next;
                    volume += grid.volumeM3(next);
                }
            }
        }
        for (int n = 0; n < size; n++) {
            sourceM3PerS[queue[n]] += supplyM3PerS * grid.volumeM3(queue[n]) / volume;
        }
    }
}
