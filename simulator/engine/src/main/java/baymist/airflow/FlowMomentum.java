package baymist.airflow;

import java.util.Arrays;

/**
 * Rate of change of the faces' speeds by advection, viscosity and wall friction: every link takes from one face what it gives
 * to the other. Scratch space of one solver; used by one thread.
 */
final class FlowMomentum {
    private final FlowGrid grid;
    private final FlowLinks links;
    private final InnerLinks inner;
    private final boolean slip;
    private final FlowSettings settings;
    private final WallDrag drag = new WallDrag();
    private final double[] volume;
    private final double[] flux;
    private final double[] ventSpeed;
    private final double[] wallSpeed;
    private final double[] wallConductance;
    private final double[] viscosity;

    /** What flow and viscosity exchange of each face's air, m³/s, as of the last counting, [faces]. */
    private final double[] exchanged;

    FlowMomentum(FlowGrid grid, FlowLinks links, FlowSettings settings) {
        this.grid = grid;
        this.links = links;
        this.settings = settings;
        slip = settings.walls() == FlowSettings.Walls.SLIP;
        inner = new InnerLinks(links, slip);
        volume = new double[grid.faces];
        for (int f = 0; f < grid.faces; f++) {
            volume[f] = grid.faceVolumeM3(f);
        }
        flux = new double[grid.faces + grid.vents];
        ventSpeed = new double[grid.vents];
        viscosity = new double[grid.faces];
        exchanged = new double[grid.faces];
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
     * Fills {@code rate} (m/s²) for speeds {@code u} (m/s). What jets take away with the air that they replace is left to the caller, who knows the
     * step.
     *
     * @param counting whether to note how fast each face's air is exchanged, for {@link #totalRate}
     */
    void rates(double[] u, FlowDrive drive, double[] rate, boolean counting) {
        for (int f = 0; f < grid.faces; f++) {
            flux[f] = u[f] * grid.areaM2[f];
        }
        System.arraycopy(drive.pushM4PerS2(), 0, rate, 0, rate.length);
        if (counting) {
            Arrays.fill(exchanged, 0);
            count();
        }
        between(u, rate);
        for (int l : inner.edges) {
            double m = links.weight1[l] * flux[links.flux1[l]] + links.weight2[l] * flux[links.flux2[l]];
            atEdge(l, m, u, rate);
        }
        if (!slip) {
            rub(u, rate);
        }
        for (int f = 0; f < rate.length; f++) {
            rate[f] /= volume[f];
        }
    }

    /** Advection and viscosity between faces; no branch in the loop. */
    private void between(double[] u, double[] rate) {
        InnerLinks in = inner;
        double[] q = flux;
        double[] nu = viscosity;
        int[] from = in.from;
        int[] to = in.to;
        int[] behindFrom = in.behindFrom;
        int[] behindTo = in.behindTo;
        for (int l = 0; l < in.count; l++) {
            int a = from[l];
            int b = to[l];
            double m = in.weight1[l] * q[in.flux1[l]] + in.weight2[l] * q[in.flux2[l]];
            double ua = u[a];
            double ub = u[b];
            double forth = Limiter.between(in.factorFrom[l] * u[behindFrom[l]], ua, ub);
            double back = Limiter.between(in.factorTo[l] * u[behindTo[l]], ub, ua);
            double size = Math.abs(m);
            double moved =
                    0.5 * (m + size) * forth + 0.5 * (m - size) * back - in.halfReachM[l] * (nu[a] + nu[b]) * (ub - ua);
            rate[a] -= moved;
            rate[b] += moved;
        }
    }

    /** Rates of exchange over the links between faces, m³/s. */
    private void count() {
        InnerLinks in = inner;
        for (int l = 0; l < in.count; l++) {
            int a = in.from[l];
            int b = in.to[l];
            double m = in.weight1[l] * flux[in.flux1[l]] + in.weight2[l] * flux[in.flux2[l]];
            double exchange = in.halfReachM[l] * (viscosity[a] + viscosity[b]);
            double size = Math.abs(m);
            exchanged[a] += exchange + 0.5 * (size + m);
            exchanged[b] += exchange + 0.5 * (size - m);
        }
    }

    /** A link to a wall or a vent. */
    private void atEdge(int l, double m, double[] u, double[] rate) {
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
        double exchange = slip && !links.axial[l] ? 0 : viscosity[face] * links.reachM[l];
        exchanged[face] += exchange + Math.max(out, 0);
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
                exchanged[f] += conductance;
            }
        }
    }

    /** Control volume of a face, m³. */
    double volumeM3(int face) {
        return volume[face];
    }

    /** Largest share of a face's air exchanged per second by flow, viscosity and walls, 1/s, as of the last counting: limits the step. */
    double totalRate() {
        double most = 0;
        for (int f = 0; f < volume.length; f++) {
            most = Math.max(most, exchanged[f] / volume[f]);
        }
        return most;
    }
}
