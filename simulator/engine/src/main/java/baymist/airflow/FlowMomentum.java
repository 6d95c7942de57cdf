package baymist.airflow;

/**
 * Rate of change of the faces' speeds by forces, pressure, advection, viscosity and wall friction: every link takes from one face what it gives to the other. What
 * brakes a face in proportion to its own speed is one number a face; the links between faces are work for {@link FlowKernel}. Scratch space of one solver; used by one thread.
 */
final class FlowMomentum {
    private final FlowGrid grid;
    private final InnerLinks inner;
    private final EdgeLinks edges;
    private final WallPatches walls;
    private final FlowSettings settings;
    private final double[] perVolume;
    private final double[] perDistance;
    private final double[] flux;
    private final double[] ventSpeed;
    private final double[] viscosity;

    /** Viscous exchange of each link in this step, m³/s, [links]. */
    private final double[] viscous;

    /** What holds through a step: forces, walls' own motion, pressure, m/s², and what brakes in proportion to the speed, m³/s, [faces]. */
    private final double[] steady;

    private final double[] brake;

    /** Speeds, their negatives, nothing; see {@link InnerLinks}. */
    private final double[] lengthened;

    /** Momentum that links bring, m⁴/s², [faces]. */
    private final double[] gain;

    /** What flow and viscosity exchange of each face's air, m³/s, as of the last counting, [faces]. */
    private final double[] exchanged;

    private double totalRate;

    private final FlowKernel.Links piece = new FlowKernel.Links();
    private final FlowKernel kernel = FlowKernels.best();

    FlowMomentum(FlowGrid grid, FlowLinks links, FlowSettings settings) {
        this.grid = grid;
        this.settings = settings;
        boolean slip = settings.walls() == FlowSettings.Walls.SLIP;
        inner = new InnerLinks(links, grid.faces, slip);
        edges = new EdgeLinks(links, grid, slip);
        walls = new WallPatches(grid, links, settings);
        perVolume = new double[grid.faces];
        perDistance = new double[grid.faces];
        for (int f = 0; f < grid.faces; f++) {
            perVolume[f] = 1 / grid.faceVolumeM3(f);
            perDistance[f] = 1 / grid.h[grid.axis[f]];
        }
        flux = new double[grid.faces + grid.vents];
        ventSpeed = new double[grid.vents];
        viscosity = new double[grid.faces];
        viscous = new double[inner.count + FlowKernel.LANES];
        steady = new double[grid.faces];
        brake = new double[grid.faces];
        lengthened = new double[inner.length()];
        gain = new double[grid.faces];
        exchanged = new double[grid.faces];
    }

    /** Takes over what holds for both stages of a step: drive, pressure over density, eddy viscosity, and friction at speeds {@code u}. */
    void prepare(double[] u, FlowDrive drive, double[] pressureM2PerS2, double[] eddyViscosityM2PerS) {
        for (int v = 0; v < grid.vents; v++) {
            double along = grid.ventSign[v] * drive.ventFluxM3PerS()[v];
            flux[grid.faces + v] = along;
            ventSpeed[v] = grid.ventAreaM2[v] > 0 ? along / grid.ventAreaM2[v] : 0;
        }
        double[] push = drive.pushM4PerS2();
        double nu = settings.kinematicViscosityM2PerS();
        for (int f = 0; f < grid.faces; f++) {
            viscosity[f] = nu + 0.5 * (eddyViscosityM2PerS[grid.low[f]] + eddyViscosityM2PerS[grid.high[f]]);
            brake[f] = viscosity[f] * edges.reachM[f];
            steady[f] = push[f];
        }
        if (settings.walls() == FlowSettings.Walls.NO_SLIP) {
            walls.grip(u, brake, steady);
        }
        for (int f = 0; f < grid.faces; f++) {
            double drop = pressureM2PerS2[grid.high[f]] - pressureM2PerS2[grid.low[f]];
            steady[f] = steady[f] * perVolume[f] - drop * perDistance[f];
        }
        int[] end = inner.end;
        for (int l = 0; l < inner.count; l++) {
            viscous[l] = inner.halfReachM[l] * (viscosity[end[2 * l]] + viscosity[end[2 * l + 1]]);
        }
    }

    /**
     * Fills {@code rate} (m/s²) for speeds {@code u} (m/s). What jets take away with the air that they replace is left to the caller, who knows the
     * step.
     *
     * @param counting whether to note how fast each face's air is exchanged, for {@link #totalRate}
     */
    void rates(double[] u, double[] rate, boolean counting) {
        for (int f = 0; f < u.length; f++) {
            flux[f] = u[f] * grid.areaM2[f];
            gain[f] = 0;
            exchanged[f] = 0;
        }
        inner.lengthen(u, lengthened);
        for (int from = 0; from < inner.count; from += FlowKernel.Links.ROOM) {
            int n = Math.min(FlowKernel.Links.ROOM, inner.count - from);
            look(from, n);
            kernel.move(piece, n, viscous, from);
            give(from, n);
            if (counting) {
                count(from, n);
            }
        }
        vents(u);
        close(u, rate);
        if (counting) {
            totalRate = 0;
            for (int f = 0; f < u.length; f++) {
                totalRate = Math.max(totalRate, exchanged[f] * perVolume[f]);
            }
        }
    }

    /** Flux of each link, and the speeds along it in the direction of the flow. */
    private void look(int from, int n) {
        int[] end = inner.end;
        int[] far = inner.behind;
        int[] via = inner.via;
        double[] weight = inner.weight;
        double[] u = lengthened;
        for (int i = 0; i < n; i++) {
            int l = 2 * (from + i);
            double through = weight[l] * flux[via[l]] + weight[l + 1] * flux[via[l + 1]];
            int side = backwards(through);
            double up = u[end[l + side]];
            piece.flux[i] = through;
            piece.upstream[i] = up;
            piece.ahead[i] = u[end[l + 1 - side]] - up;
            piece.behind[i] = up - u[far[l + side]];
        }
    }

    /** 1 where the flux is negative, else 0, without a branch. */
    private static int backwards(double flux) {
        return (int) (Double.doubleToRawLongBits(flux) >>> 63);
    }

    private void give(int from, int n) {
        int[] end = inner.end;
        for (int i = 0; i < n; i++) {
            int l = 2 * (from + i);
            int side = backwards(piece.flux[i]);
            gain[end[l + side]] -= piece.moved[i];
            gain[end[l + 1 - side]] += piece.moved[i];
        }
    }

    /** Rates of exchange over the links between faces, m³/s. */
    private void count(int from, int n) {
        int[] end = inner.end;
        for (int i = 0; i < n; i++) {
            int l = 2 * (from + i);
            int side = backwards(piece.flux[i]);
            exchanged[end[l + side]] += viscous[from + i] + Math.abs(piece.flux[i]);
            exchanged[end[l + 1 - side]] += viscous[from + i];
        }
    }

    private void vents(double[] u) {
        for (int v = 0; v < edges.vent.length; v++) {
            int f = edges.ventFace[v];
            double out = edges.ventWeight[2 * v] * flux[edges.ventVia[2 * v]]
                    + edges.ventWeight[2 * v + 1] * flux[edges.ventVia[2 * v + 1]];
            exchanged[f] += Math.max(out, 0);
            gain[f] -= out * (out > 0 ? u[f] : ventSpeed[edges.vent[v]]);
        }
    }

    /** What leaves a face towards walls, and the sum of all. */
    private void close(double[] u, double[] rate) {
        int[] start = edges.start;
        for (int f = 0; f < u.length; f++) {
            double out = 0;
            for (int e = start[f]; e < start[f + 1]; e++) {
                double through = edges.weight[e] * flux[edges.via[e]];
                // Twice what flows out, and nothing else: cheaper than Math.max, which asks for the sign of zero.
                out += through + Math.abs(through);
            }
            double high = edges.endHighM2[f] * u[f];
            double low = edges.endLowM2[f] * u[f];
            double held = 0.5 * out + brake[f];
            exchanged[f] += held + (u[f] > 0 ? high : -low);
            rate[f] = steady[f] + (gain[f] - (held + 0.5 * (high - low)) * u[f]) * perVolume[f];
        }
    }

    /** Largest share of a face's air exchanged per second by flow, viscosity and walls, 1/s, as of the last counting: limits the step. */
    double totalRate() {
        return totalRate;
    }
}
