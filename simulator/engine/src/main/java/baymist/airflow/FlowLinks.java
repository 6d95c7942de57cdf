package baymist.airflow;

import java.util.Arrays;

/**
 * How faces exchange momentum. A face of axis a carries the velocity component a; its control volume reaches from one cell
 * centre to the next. Two faces of one axis that lie beside each other meet at a link:
 *
 * <ul>
 *   <li>along the axis, in the cell between them: flux = mean of both faces' fluxes;
 *   <li>across it, at the half faces through which their two cells meet: flux = half of each such face's flux.
 * </ul>
 *
 * Each part is weighted with the open shares of both partners. What is shut on either side meets a partner at rest ({@link
 * #WALL}), so that the fluxes out of a control volume always sum to half the outflow of its two cells: none in a field that
 * conserves volume. Vents are partners of known velocity ({@link #isVent}).
 *
 * <p>A link runs from its low to its high side along {@code along}; its air flux is {@code weight1 Q[flux1] + weight2
 * Q[flux2]} with Q the fluxes of faces and vents.
 */
final class FlowLinks {
    static final int WALL = -1;

    final int count;
    final int[] from;
    final int[] to;
    final byte[] along;
    final int[] flux1;
    final int[] flux2;
    final double[] weight1;
    final double[] weight2;

    /** Area over distance for viscous exchange, m, [links]; zero where none takes place. */
    final double[] reachM;

    /** Whether the link runs along the axis of its faces. */
    final boolean[] axial;

    /** Face beside each face along -x, +x, -y .. or -1, [6 * faces]. */
    final int[] beside;

    /** Walls that a face slides along: face, area over half the block (m), and half the block (m). */
    final int[] wallFace;

    final double[] wallReachM;
    final double[] wallDistanceM;

    /** Cell and side of each wall patch. */
    final int[] wallCell;

    final byte[] wallSide;

    private FlowLinks(Builder b) {
        count = b.n;
        from = Arrays.copyOf(b.from, count);
        to = Arrays.copyOf(b.to, count);
        along = Arrays.copyOf(b.along, count);
        flux1 = Arrays.copyOf(b.flux1, count);
        flux2 = Arrays.copyOf(b.flux2, count);
        weight1 = Arrays.copyOf(b.weight1, count);
        weight2 = Arrays.copyOf(b.weight2, count);
        reachM = Arrays.copyOf(b.reach, count);
        axial = Arrays.copyOf(b.axial, count);
        wallFace = Arrays.copyOf(b.wallFace, b.walls);
        wallReachM = Arrays.copyOf(b.wallReach, b.walls);
        wallDistanceM = Arrays.copyOf(b.wallDistance, b.walls);
        wallCell = Arrays.copyOf(b.wallCell, b.walls);
        wallSide = Arrays.copyOf(b.wallSide, b.walls);
        beside = new int[6 * b.grid.faces];
        Arrays.fill(beside, -1);
        double[] best = new double[beside.length];
        for (int l = 0; l < count; l++) {
            if (from[l] >= 0 && to[l] >= 0) {
                prefer(6 * from[l] + 2 * along[l] + 1, to[l], reachM[l], best);
                prefer(6 * to[l] + 2 * along[l], from[l], reachM[l], best);
            }
        }
    }

    private void prefer(int at, int face, double reach, double[] best) {
        if (reach > best[at]) {
            best[at] = reach;
            beside[at] = face;
        }
    }

    static FlowLinks of(FlowGrid grid) {
        Builder builder = new Builder(grid);
        for (int c = 0; c < grid.cells; c++) {
            for (int a = 0; a < 3; a++) {
                builder.alongAxis(c, a);
            }
        }
        for (int p = 0; p < grid.faces; p++) {
            for (int a = 0; a < 3; a++) {
                if (a != grid.axis[p]) {
                    builder.across(p, a, 0);
                    builder.across(p, a, 1);
                }
            }
        }
        for (int v = 0; v < grid.vents; v++) {
            builder.besideVent(v);
        }
        for (int c = 0; c < grid.cells; c++) {
            builder.walls(c);
        }
        return new FlowLinks(builder);
    }

    /** Whether a partner is a vent; its number is {@link #ventOf}. */
    static boolean isVent(int partner) {
        return partner < WALL;
    }

    static int ventOf(int partner) {
        return -2 - partner;
    }

    private static final class Builder {
        private static final double NEGLIGIBLE = 1e-12;

        private final FlowGrid grid;
        private int n;
        private int[] from = new int[1024];
        private int[] to = new int[1024];
        private byte[] along = new byte[1024];
        private int[] flux1 = new int[1024];
        private int[] flux2 = new int[1024];
        private double[] weight1 = new double[1024];
        private double[] weight2 = new double[1024];
        private double[] reach = new double[1024];
        private boolean[] axial = new boolean[1024];
        private int walls;
        private int[] wallFace = new int[1024];
        private double[] wallReach = new double[1024];
        private double[] wallDistance = new double[1024];
        private int[] wallCell = new int[1024];
        private byte[] wallSide = new byte[1024];

        /** Link across a face that a later one with the same two faces joins, by face and direction. */
        private final int[] open;

        Builder(FlowGrid grid) {
            this.grid = grid;
            open = new int[6 * grid.faces];
            Arrays.fill(open, -1);
        }

        private int partner(int faceOrVent) {
            return faceOrVent < grid.faces ? faceOrVent : -2 - (faceOrVent - grid.faces);
        }

        private void add(int a, int b, int direction, int q1, double w1, int q2, double w2, double reachM, boolean ax) {
            if (Math.abs(w1) + Math.abs(w2) < NEGLIGIBLE || (a < 0 && b < 0)) {
                return;
            }
            if (n == from.length) {
                grow();
            }
            from[n] = a;
            to[n] = b;
            along[n] = (byte) direction;
            flux1[n] = q1;
            weight1[n] = w1;
            flux2[n] = q2;
            weight2[n] = w2;
            reach[n] = reachM;
            axial[n++] = ax;
        }

        private void grow() {
            int m = 2 * n;
            from = Arrays.copyOf(from, m);
            to = Arrays.copyOf(to, m);
            along = Arrays.copyOf(along, m);
            flux1 = Arrays.copyOf(flux1, m);
            flux2 = Arrays.copyOf(flux2, m);
            weight1 = Arrays.copyOf(weight1, m);
            weight2 = Arrays.copyOf(weight2, m);
            reach = Arrays.copyOf(reach, m);
            axial = Arrays.copyOf(axial, m);
        }

        /** Links through a cell along axis a. */
        void alongAxis(int c, int a) {
            double reachM = grid.sideM2[a] / grid.h[a];
            double shutLow = 1 - grid.openShare(c, 2 * a);
            double shutHigh = 1 - grid.openShare(c, 2 * a + 1);
            for (int f : grid.side(c, 2 * a)) {
                double wf = grid.shareOf(f);
                for (int g : grid.side(c, 2 * a + 1)) {
                    double wg = grid.shareOf(g);
                    boolean faces = f < grid.faces && g < grid.faces;
                    add(partner(f), partner(g), a, f, 0.5 * wg, g, 0.5 * wf, faces ? reachM * wf * wg : 0, true);
                }
                add(partner(f), WALL, a, f, 0.5 * shutHigh, f, 0, reachM * wf * shutHigh, true);
            }
            for (int g : grid.side(c, 2 * a + 1)) {
                add(WALL, partner(g), a, g, 0.5 * shutLow, g, 0, reachM * grid.shareOf(g) * shutLow, true);
            }
        }

        /** Links at the half of face p that lies on side s of axis a. */
        void across(int p, int a, int s) {
            int b = grid.axis[p];
            int lowCell = grid.low[p];
            int highCell = grid.high[p];
            int d = 2 * a + s;
            double reachM = 0.5 * grid.areaM2[p] / grid.h[b];
            double shutLow = 1 - grid.openShare(lowCell, d);
            double shutHigh = 1 - grid.openShare(highCell, d);
            for (int f : grid.side(lowCell, d)) {
                double wf = grid.shareOf(f);
                for (int g : grid.side(highCell, d)) {
                    double wg = grid.shareOf(g);
                    joined(partner(f), partner(g), b, p, 0.5 * wf * wg, reachM * wf * wg);
                }
                add(partner(f), WALL, b, p, 0.5 * wf * shutHigh, p, 0, reachM * wf * shutHigh, false);
            }
            for (int g : grid.side(highCell, d)) {
                double wg = grid.shareOf(g);
                add(WALL, partner(g), b, p, 0.5 * wg * shutLow, p, 0, reachM * wg * shutLow, false);
            }
        }

        /** Adds a half face to the link of the same two faces, or begins one. */
        private void joined(int a, int b, int direction, int p, double weight, double reachM) {
            if (a >= 0 && b >= 0) {
                int known = open[6 * a + 2 * direction];
                if (known >= 0 && to[known] == b && weight2[known] == 0) {
                    flux2[known] = p;
                    weight2[known] = weight;
                    reach[known] += reachM;
                    return;
                }
                open[6 * a + 2 * direction] = n;
            }
            add(a, b, direction, p, weight, p, 0, a >= 0 && b >= 0 ? reachM : 0, false);
        }

        /** What leaves through a vent carries the air beside it along; what enters comes square to the vent. */
        void besideVent(int v) {
            int c = grid.ventCell[v];
            int b = grid.ventAxis[v];
            for (int a = 0; a < 3; a++) {
                for (int s = 0; s < 2 && a != b; s++) {
                    for (int f : grid.side(c, 2 * a + s)) {
                        double w = 0.5 * grid.shareOf(f);
                        boolean outHigh = grid.ventSign[v] > 0;
                        int q = grid.faces + v;
                        add(outHigh ? partner(f) : WALL, outHigh ? WALL : partner(f), b, q, w, q, 0, 0, false);
                    }
                }
            }
        }

        /** Walls of a cell beside its faces. */
        void walls(int c) {
            for (int d = 0; d < 6; d++) {
                int b = d / 2;
                double shut = 1 - grid.openShare(c, d);
                for (int e = 0; e < 6 && shut > NEGLIGIBLE; e++) {
                    if (e / 2 != b) {
                        for (int f : grid.side(c, e)) {
                            if (f < grid.faces) {
                                wall(f, 0.5 * shut * grid.sideM2[b] * grid.share[f], 0.5 * grid.h[b], c, d);
                            }
                        }
                    }
                }
            }
        }

        private void wall(int face, double areaM2, double distanceM, int cell, int side) {
            if (walls == wallFace.length) {
                wallFace = Arrays.copyOf(wallFace, 2 * walls);
                wallReach = Arrays.copyOf(wallReach, 2 * walls);
                wallDistance = Arrays.copyOf(wallDistance, 2 * walls);
                wallCell = Arrays.copyOf(wallCell, 2 * walls);
                wallSide = Arrays.copyOf(wallSide, 2 * walls);
            }
            wallFace[walls] = face;
            wallReach[walls] = areaM2 / distanceM;
            wallDistance[walls] = distanceM;
            wallCell[walls] = cell;
            wallSide[walls++] = (byte) side;
        }
    }
}
