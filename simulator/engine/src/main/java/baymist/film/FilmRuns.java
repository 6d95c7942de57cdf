package baymist.film;

import baymist.geom.Vec3;
import baymist.problem.SimulationException;
import baymist.scene.ProductSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * Wet film that runs down sheets, drains out of open holes and drips from ceilings: docs/theory/film.md.
 *
 * <p>Between surfels that share an edge the Nusselt flux g_t h³/(3 nu) passes downhill, with the thickness of the giver
 * (donor cell), in explicit sub-steps. It is conservative and leaves the residual film alone. Film that reaches the rim of
 * an open hole to the outside leaves as drips; at inner holes and at closed covers it stops. Drops that grow below ceilings
 * fall on the first sheet or cover below, where they are film again, or out through an open hole. Level floors do not level
 * out: puddles stay on the surfels that they reach.
 *
 * <p>Immutable but for scratch arrays: use one instance from one thread. The result does not depend on threads.
 */
public final class FilmRuns {
    /** ASSUMED: cosine of 60°, beyond which a sheet counts as floor or ceiling. */
    static final double LEVEL = 0.5;

    /** Share of a surfel's excess that may leave in one sub-step. */
    private static final double LARGEST_SHARE = 0.5;

    /**
     * ASSUMED: surfels smaller than this share of the mean do not shorten the step; what they cannot pass on in one sub-step
     * levels with their largest neighbour, as surface tension does over such distances.
     */
    private static final double SLIVER = 0.2;

    private final SurfelSet surfels;
    private final ProductSpec product;
    private final FilmSettings settings;
    private final FilmEdges edges;
    private final FilmDrops drops;
    private final double sliverM2;

    /** Slivers, ascending, and the surfel that each levels with. */
    private final int[] sliver;

    private final int[] host;
    /** Film that stays, m, [surfels]: the settings' residual, or what the yield stress holds on that slope. */
    private final double[] residual;

    private final double[] build;
    private final double[] giving;
    private final double[] deltaDirect;
    private final double[] deltaFog;

    /** @param gravityMPerS2 gravity as a vector, m/s², any direction; zero = nothing runs */
    public FilmRuns(VoxelGrid grid, ProductSpec product, Vec3 gravityMPerS2, FilmSettings settings) {
        if (!(product.viscosityPaS() > 0 && product.densityKgPerM3() > 0 && product.surfaceTensionNPerM() > 0)) {
            throw new IllegalArgumentException("product " + product);
        }
        this.surfels = grid.surfels();
        this.product = product;
        this.settings = settings;
        this.edges = new FilmEdges(grid, gravityMPerS2);
        this.drops = new FilmDrops(grid, product, gravityMPerS2, edges);
        double area = 0;
        for (double a : surfels.areaM2()) {
            area += a;
        }
        this.sliverM2 = SLIVER * area / Math.max(1, surfels.count());
        this.sliver = slivers();
        this.host = new int[sliver.length];
        for (int i = 0; i < sliver.length; i++) {
            host[i] = largestNeighbour(sliver[i]);
        }
        this.residual = residual(gravityMPerS2);
        this.build = new double[surfels.count()];
        this.giving = new double[surfels.count()];
        this.deltaDirect = new double[surfels.count()];
        this.deltaFog = new double[surfels.count()];
    }

    private double[] residual(Vec3 gravity) {
        double[] stays = new double[surfels.count()];
        Arrays.fill(stays, settings.residualM());
        if (product.yieldStressPa() > 0) {
            for (int s = 0; s < stays.length; s++) {
                Vec3 n = new Vec3(surfels.normalX()[s], surfels.normalY()[s], surfels.normalZ()[s]);
                double along = gravity.plus(-gravity.dot(n), n).length();
                stays[s] = Math.max(
                        stays[s], FilmFormulas.yieldFilmM(product.yieldStressPa(), product.densityKgPerM3(), along));
            }
        }
        return stays;
    }

    private int[] slivers() {
        int[] found = new int[surfels.count()];
        int count = 0;
        for (int s = 0; s < found.length; s++) {
            boolean small = surfels.closure()[s] < 0 && surfels.areaM2()[s] < sliverM2;
            if (small && largestNeighbour(s) >= 0) {
                found[count++] = s;
            }
        }
        return Arrays.copyOf(found, count);
    }

    /** Largest neighbour that is sheet and larger than the surfel itself, or -1. */
    private int largestNeighbour(int s) {
        int best = -1;
        double area = surfels.areaM2()[s];
        for (int n = surfels.neighbourStart()[s]; n < surfels.neighbourStart()[s + 1]; n++) {
            int other = surfels.neighbour()[n];
            if (surfels.closure()[other] < 0 && surfels.areaM2()[other] > area) {
                best = other;
                area = surfels.areaM2()[other];
            }
        }
        return best;
    }

    /**
     * Lets the film run.
     *
     * @param openFraction open share of each opening, [openings], 0..1
     * @param durationS s, 0 or more
     * @throws SimulationException if a mass turns out negative or not a number (says surfel and place)
     */
    public void advance(FilmState film, double[] openFraction, double durationS) {
        if (!(durationS >= 0) || Double.isInfinite(durationS)) {
            throw new IllegalArgumentException("running time of " + durationS + " s");
        }
        double left = durationS;
        int taken = 0;
        while (left > 0) {
            double rate = prepare(film, openFraction);
            if (rate < 0) {
                return;
            }
            double stepS = rate > 0 ? LARGEST_SHARE / rate : left;
            stepS = Math.min(left, Math.max(stepS, left / (settings.mostSubSteps() - taken)));
            step(film, openFraction, stepS);
            levelSlivers(film);
            drops.fall(film, settings, openFraction, stepS);
            taken = Math.min(taken + 1, settings.mostSubSteps() - 1);
            left = stepS >= left ? 0 : left - stepS;
        }
        requireSound(film);
    }

    /** Fills thickness; returns the fastest relative rate of running, 1/s, or -1 if no film exceeds the residual. */
    private double prepare(FilmState film, double[] openFraction) {
        boolean any = false;
        for (int s = 0; s < build.length; s++) {
            build[s] = surfels.closure()[s] < 0 ? film.wetBuildM(s) : 0;
            any |= build[s] > residual[s];
            giving[s] = 0;
        }
        if (!any) {
            return -1;
        }
        double rate = 0;
        for (int e = 0; e < edges.count(); e++) {
            int s = edges.from(e);
            if (build[s] > residual[s]) {
                // d(q)/dh times the edge over the area: speed of a thickness wave.
                giving[s] += open(e, openFraction) * edges.pull(e) * build[s] * build[s] / viscosityTimes(s);
                rate = surfels.areaM2()[s] >= sliverM2 ? Math.max(rate, giving[s]) : rate;
            }
        }
        return rate;
    }

    private double viscosityTimes(int s) {
        return product.viscosityPaS() / product.densityKgPerM3() * surfels.areaM2()[s];
    }

    private double open(int edge, double[] openFraction) {
        int o = edges.opening(edge);
        return o < 0 ? 1 : openFraction[o];
    }

    /** One donor-cell step: all fluxes from the state before it. */
    private void step(FilmState film, double[] openFraction, double stepS) {
        for (int e = 0; e < edges.count(); e++) {
            int s = edges.from(e);
            double share = open(e, openFraction);
            if (!(build[s] > residual[s]) || share == 0) {
                continue;
            }
            // Volume flux pull h³/(3 nu) as a share of the film's volume, limited so that the residual stays.
            double loose = 1 - residual[s] / build[s];
            double wanted = giving[s] / 3 * stepS;
            double limit = Math.min(1, LARGEST_SHARE * loose / wanted);
            double part = limit * share * edges.pull(e) * build[s] * build[s] / (3 * viscosityTimes(s)) * stepS;
            double direct = part * film.direct[s];
            double fog = part * film.fog[s];
            deltaDirect[s] -= direct;
            deltaFog[s] -= fog;
            if (edges.to(e) < 0) {
                film.drippedKg += direct + fog;
            } else {
                deltaDirect[edges.to(e)] += direct;
                deltaFog[edges.to(e)] += fog;
            }
        }
        for (int s = 0; s < build.length; s++) {
            film.direct[s] += deltaDirect[s];
            film.fog[s] += deltaFog[s];
            deltaDirect[s] = 0;
            deltaFog[s] = 0;
        }
    }

    private void levelSlivers(FilmState film) {
        for (int i = 0; i < sliver.length; i++) {
            int s = sliver[i];
            int h = host[i];
            double build = film.wetBuildM(s);
            if (build > residual[s] && build > film.wetBuildM(h)) {
                double share = surfels.areaM2()[s] / (surfels.areaM2()[s] + surfels.areaM2()[h]);
                double level =
                        Math.max(share * (film.massKg(s) + film.massKg(h)), film.massKg(s) * (residual[s] / build));
                film.move(s, h, film.massKg(s) - level);
            }
        }
    }

    private void requireSound(FilmState film) {
        for (int s = 0; s < build.length; s++) {
            if (!(film.direct[s] >= 0 && film.fog[s] >= 0 && film.massKg(s) <= Double.MAX_VALUE)) {
                throw new SimulationException("film: " + film.direct[s] + " + " + film.fog[s] + " kg on surfel " + s
                        + " at (" + surfels.centreX()[s] + ", " + surfels.centreY()[s] + ", " + surfels.centreZ()[s]
                        + ") m");
            }
        }
    }
}
