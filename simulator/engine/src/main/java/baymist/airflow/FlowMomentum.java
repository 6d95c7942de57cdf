package baymist.airflow;

import java.util.Arrays;

/**
 * Rate of change of the faces' speeds by advection, viscosity and wall friction: every link takes from one face what it gives
 * to the other. Scratch space of one solver; used by one thread.
 */
final class FlowMomentum {
    private final FlowGrid grid;
    private final FlowLinks links;
    private final FlowSettings settings;
    private final WallDrag drag = new WallDrag();
    private final double[] volume;
    private final double[] flux;
    private final double[] ventSpeed;
    private final double[] wallSpeed;
    private final double[] wallConductance;
    private final double[] viscosity;
    private final double[] advective;
    private final double[] viscous;

    FlowMomentum(FlowGrid grid, FlowLinks links, FlowSettings settings) {
        this.grid = grid;
        this.links = links;
        this.settings = settings;
        volume = new double[grid.faces];
        for (int f = 0; f < grid.faces; f++) {
            volume[f] = grid.faceVolumeM3(f);
        }
        flux = new double[grid.faces + grid.vents];
        ventSpeed = new double[grid.vents];
        viscosity = new double[grid.faces];
        advective = new double[grid.faces];
        viscous = new double[grid.faces];
        wallSpeed = new double[links.wallFace.length];
        wallConductance = new double[wallSpeed.length];
        for (int w = 0; w < wallSpeed.length; w++) {
            int[] place = {links.wallCell[w], links.wallSide[w]};
            wallSpeed[w] = settings.wallSpeed().applyAsDouble(place, (int) grid.axis[links.wallFace[w]]);
        }
    }

    /** Takes over vent fluxes, eddy viscosity and the friction law at speeds {@code u}, which hold for both stages of a step. */
    void prepare(double[] u, double[] ventFluxM3PerS, double[] eddyViscosityM2PerS) {
        for (int v = 0; v < grid.vents; v++) {
            double along = grid.ventSign[v] * ventFluxM3PerS[v];
            flux[grid.faces + v] = along;
            ventSpeed[v] = grid.ventAreaM2[v] > 0 ? along / grid.ventAreaM2[v] : 0;
        }
        for (int f = 0; f < grid.faces; f++) {
            viscosity[f] = settings.kinematicViscosityM2PerS()
                    + 0.5 * (eddyViscosityM2PerS[grid.low[f]] + eddyViscosityM2PerS[grid.high[f]]);
        }
        if (settings.walls() == FlowSettings.Walls.NO_SLIP) {
            grip(u);
        }
    }

    /**
     * Fills {@code rate} (m/s²) for speeds {@code u} (m/s) and notes how fast each face's air is exchanged.
     */
    void rates(double[] u, FlowDrive drive, double[] rate) {
        for (int f = 0; f < grid.faces; f++) {
            flux[f] = u[f] * grid.areaM2[f];
        }
        double[] push = drive.pushM4PerS2();
        double[] mixed = drive.mixedM3PerS();
        for (int f = 0; f < rate.length; f++) {
            rate[f] = push[f] - mixed[f] * u[f];
            advective[f] = mixed[f];
        }
        Arrays.fill(viscous, 0);
        boolean slip = settings.walls() == FlowSettings.Walls.SLIP;
        for (int l = 0; l < links.count; l++) {
            double m = links.weight1[l] * flux[links.flux1[l]] + links.weight2[l] * flux[links.flux2[l]];
            if (links.from[l] >= 0 && links.to[l] >= 0) {
                between(l, m, u, rate, slip);
            } else {
                atEdge(l, m, u, rate, slip);
            }
        }
        if (!slip) {
            rub(u, rate);
        }
        for (int f = 0; f < rate.length; f++) {
            rate[f] /= volume[f];
        }
    }

    private void between(int l, double m, double[] u, double[] rate, boolean slip) {
        int a = links.from[l];
        int b = links.to[l];
        double ua = u[a];
        double ub = u[b];
        int d = links.along[l];
        double value;
        if (m >= 0) {
            int far = links.beside[6 * a + 2 * d];
            value = Limiter.between(far >= 0 ? u[far] : ghost(ua, l, slip), ua, ub);
            advective[a] += m;
        } else {
            int far = links.beside[6 * b + 2 * d + 1];
            value = Limiter.between(far >= 0 ? u[far] : ghost(ub, l, slip), ub, ua);
            advective[b] -= m;
        }
        double exchange = 0.5 * (viscosity[a] + viscosity[b]) * links.reachM[l];
        double moved = m * value - exchange * (ub - ua);
        viscous[a] += exchange;
        viscous[b] += exchange;
        rate[a] -= moved;
        rate[b] += moved;
    }

    /** Value behind a face that has no neighbour there: a wall square to its speed, or one that it slides along. */
    private double ghost(double u, int l, boolean slip) {
        return links.axial[l] ? 0 : slip ? u : -u;
    }

    /** A link to a wall or a vent. */
    private void atEdge(int l, double m, double[] u, double[] rate, boolean slip) {
        boolean high = links.from[l] >= 0;
        int face = high ? links.from[l] : links.to[l];
        int other = high ? links.to[l] : links.from[l];
        double out = high ? m : -m;
        double mine = u[face];
        double value;
        if (FlowLinks.isVent(other)) {
            value = out > 0 ? mine : ventSpeed[FlowLinks.ventOf(other)];
        } else if (links.axial[l]) {
            value = 0.5 * mine;
        } else {
            value = out > 0 ? mine : 0;
        }
        advective[face] += Math.max(out, 0);
        double exchange = slip && !links.axial[l] ? 0 : viscosity[face] * links.reachM[l];
        viscous[face] += exchange;
        rate[face] -= out * value + exchange * mine;
    }

    private void grip(double[] u) {
        double nu = settings.kinematicViscosityM2PerS();
        for (int w = 0; w < wallSpeed.length; w++) {
            double slide = u[links.wallFace[w]] - wallSpeed[w];
            wallConductance[w] = Double.isNaN(slide)
                    ? 0
                    : nu * links.wallReachM[w] * drag.factor(Math.abs(slide) * links.wallDistanceM[w] / nu);
        }
    }

    private void rub(double[] u, double[] rate) {
        for (int w = 0; w < wallSpeed.length; w++) {
            double conductance = wallConductance[w];
            if (conductance > 0) {
                int f = links.wallFace[w];
                rate[f] -= conductance * (u[f] - wallSpeed[w]);
                viscous[f] += conductance;
            }
        }
    }

    /** Largest sum of both, 1/s: limits the step. */
    double totalRate() {
        double most = 0;
        for (int f = 0; f < volume.length; f++) {
            most = Math.max(most, (advective[f] + viscous[f]) / volume[f]);
        }
        return most;
    }
}
