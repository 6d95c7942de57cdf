package baymist.airflow;

import baymist.geom.Vec3;
import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * Outflow of each vent when the air inside is heavier than that outside: fog runs out of a low vent and draws air in through a high one. At
 * depth s along gravity the inside is ahead of the outside by
 *
 * <pre>  p(s) = p0 + integral of C g ds'          C: mean fog over the group's cells at that depth
 *  Q_v = Cd A_v sign(p) sqrt(2 |p| / rho)      p0 such that all vents together pass the outflow of the pressure balance</pre>
 *
 * (Etheridge and Sandberg 1996, Building Ventilation, ch. 2: envelope flow under stack pressure and neutral level; from memory.) Even fog and two equal
 * vents H apart pass {@code Cd A sqrt(g' H)}. The column is one mean over a group of bays: a bay's own
 * pressure behind small holes is not told apart (ASSUMED). Immutable but for the profile of the fog of now; one thread.
 */
final class StackExchange {
    private static final int HALVINGS = 200;

    private final VoxelGrid grid;
    private final double gravityMPerS2;
    private final double densityKgPerM3;

    /** Level of each cell, [cells], and depth along gravity of each vent's middle in levels, [vents]. */
    private final int[] levelOf;

    private final double[] ventLevel;
    private final double levelM;
    private final int levels;

    /**
     * @param down unit vector of gravity
     * @param densityKgPerM3 of the air
     */
    StackExchange(VoxelGrid grid, Vec3 down, double gravityMPerS2, double densityKgPerM3) {
        this.grid = grid;
        this.gravityMPerS2 = gravityMPerS2;
        this.densityKgPerM3 = densityKgPerM3;
        Vec3 h = grid.sizeM();
        double half = 0.5 * (Math.abs(down.x()) * h.x() + Math.abs(down.y()) * h.y() + Math.abs(down.z()) * h.z());
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < grid.cellCount(); c++) {
            double s = grid.centre(c).dot(down);
            least = Math.min(least, s - half);
            most = Math.max(most, s + half);
        }
        // One level is as thick as a cell is along gravity: exact where gravity runs along an axis.
        levels = Math.max(1, (int) Math.round((most - least) / (2 * half)));
        levelM = (most - least) / levels;
        levelOf = new int[grid.cellCount()];
        for (int c = 0; c < levelOf.length; c++) {
            levelOf[c] = (int) Math.min(levels - 1, (grid.centre(c).dot(down) - least) / levelM);
        }
        FaceSet faces = grid.faces();
        ventLevel = new double[faces.vents()];
        for (int v = 0; v < ventLevel.length; v++) {
            int a = faces.ventAxis()[v];
            double out = 0.5 * h.get(a) * faces.ventSign()[v] * down.get(a);
            double s = grid.centre(faces.ventCell()[v]).dot(down) + out;
            ventLevel[v] = Math.max(0, Math.min(levels, (s - least) / levelM));
        }
    }

    /**
     * Shares the outflow of one group over its vents under the weight of the fog.
     *
     * @param outflowM3PerS of all vents together, negative inwards
     * @param fogKgPerM3 [cells]
     * @param fluxM3PerS outwards, [vents]; the group's entries are written
     */
    void share(AirPath path, int group, double outflowM3PerS, double[] fogKgPerM3, double[] fluxM3PerS) {
        double[] head = heads(column(path, group, fogKgPerM3));
        VentShares vents = path.vents();
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int v = 0; v < head.length; v++) {
            if (vents.groupOf(v) == group && vents.ventAreaM2(v) > 0) {
                least = Math.min(least, head[v]);
                most = Math.max(most, head[v]);
            }
        }
        double area = vents.areaM2(group);
        if (!(area > 0)) {
            return;
        }
        double alone = Orifice.pressureDifferencePa(area, Math.abs(outflowM3PerS), densityKgPerM3);
        double low = -most - alone;
        double high = -least + alone;
        for (int n = 0; n < HALVINGS && low < high; n++) {
            double middle = 0.5 * (low + high);
            if (middle <= low || middle >= high) {
                break;
            }
            if (pass(vents, group, middle, head, fluxM3PerS) < outflowM3PerS) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double sum = pass(vents, group, high, head, fluxM3PerS);
        // Rounding left of the root goes by area, so that the balance closes to its last digit.
        for (int v = 0; v < head.length; v++) {
            if (vents.groupOf(v) == group) {
                fluxM3PerS[v] += (outflowM3PerS - sum) * vents.ventAreaM2(v) / area;
            }
        }
    }

    private double pass(VentShares vents, int group, double p0, double[] head, double[] flux) {
        double sum = 0;
        for (int v = 0; v < head.length; v++) {
            if (vents.groupOf(v) == group) {
                flux[v] = Orifice.volumeFlowM3PerS(vents.ventAreaM2(v), p0 + head[v], densityKgPerM3);
                sum += flux[v];
            }
        }
        return sum;
    }

    /** Mean fog of each level of a group, kg/m³; a level without cells takes that of the level above it. */
    private double[] column(AirPath path, int group, double[] fog) {
        double[] mass = new double[levels];
        double[] volume = new double[levels];
        for (int c = 0; c < levelOf.length; c++) {
            if (path.groups().groupOf(c) == group) {
                mass[levelOf[c]] += fog[c] * grid.volumeM3(c);
                volume[levelOf[c]] += grid.volumeM3(c);
            }
        }
        double last = Arrays.stream(mass).sum()
                / Math.max(1e-300, Arrays.stream(volume).sum());
        for (int n = 0; n < levels; n++) {
            last = volume[n] > 0 ? mass[n] / volume[n] : last;
            mass[n] = last;
        }
        return mass;
    }

    /** Pressure that the fog above adds at each vent, Pa. */
    private double[] heads(double[] column) {
        double[] above = new double[levels + 1];
        for (int n = 0; n < levels; n++) {
            above[n + 1] = above[n] + column[n] * gravityMPerS2 * levelM;
        }
        double[] head = new double[ventLevel.length];
        for (int v = 0; v < head.length; v++) {
            int n = (int) Math.min(levels - 1, ventLevel[v]);
            head[v] = above[n] + (ventLevel[v] - n) * (above[n + 1] - above[n]);
        }
        return head;
    }
}
