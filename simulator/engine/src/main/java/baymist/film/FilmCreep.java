package baymist.film;

import baymist.scene.ProductSpec;
import baymist.voxel.SurfelEdge;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * The edge of a wet film that creeps over dry sheet, in any direction: docs/theory/film.md, section 4. What lies above the residual film spreads
 * like heat in a plate, with the diffusivity that lets half of a kept-up film get as far as the product states in the time that it states:
 *
 * <pre> D = x²/(4 t erfinv(1/2)²),   erfinv(1/2) = 0.476936 </pre>
 *
 * <p>Source of the profile erfc(x/(2 sqrt(D t))): Crank (1975), The Mathematics of Diffusion, ch. 2. That creep is diffusive is ASSUMED; the
 * distance and the time are the user's, from a plate with a drop on it. Explicit, conservative, positive. One instance, one thread.
 */
public final class FilmCreep {
    /** Inverse error function of a half. */
    private static final double HALF = 0.4769362762044699;

    /** Share of a surfel's loose film that may leave in one sub-step. */
    private static final double LARGEST_SHARE = 0.4;

    /** ASSUMED: pairs with less than this share of the mean surfel's area do not shorten the step; they level within it. */
    private static final double SLIVER = 0.2;

    private final SurfelSet surfels;
    private final ProductSpec product;
    private final int[] from;
    private final int[] to;

    /** Edge over way, [pairs]. */
    private final double[] shape;

    /** Number of pairs of each surfel, [surfels]. */
    private final int[] pairsOf;

    private final double sliverM2;
    private final double[] loose;
    private final double[] deltaDirect;
    private final double[] deltaFog;

    public FilmCreep(VoxelGrid grid, ProductSpec product) {
        this.surfels = grid.surfels();
        this.product = product;
        SurfelEdge edge = new SurfelEdge(grid);
        int[] a = new int[surfels.neighbour().length];
        int[] b = new int[a.length];
        double[] k = new double[a.length];
        pairsOf = new int[surfels.count()];
        int count = 0;
        double area = 0;
        for (int s = 0; s < surfels.count(); s++) {
            area += surfels.areaM2()[s];
            for (int n = surfels.neighbourStart()[s]; n < surfels.neighbourStart()[s + 1]; n++) {
                int other = surfels.neighbour()[n];
                if (other <= s || surfels.closure()[s] >= 0 || surfels.closure()[other] >= 0) {
                    continue;
                }
                double way = edge.wayM(s, other);
                if (way > 1e-9) {
                    a[count] = s;
                    b[count] = other;
                    k[count++] = edge.lengthM(s, other) / way;
                    pairsOf[s]++;
                    pairsOf[other]++;
                }
            }
        }
        from = Arrays.copyOf(a, count);
        to = Arrays.copyOf(b, count);
        shape = Arrays.copyOf(k, count);
        sliverM2 = SLIVER * area / Math.max(1, surfels.count());
        loose = new double[surfels.count()];
        deltaDirect = new double[surfels.count()];
        deltaFog = new double[surfels.count()];
    }

    /** Diffusivity of the loose film, m²/s. */
    public static double diffusivityM2PerS(double creepM, double creepS) {
        return creepM * creepM / (4 * creepS * HALF * HALF);
    }

    /** Lets the film creep for a time, s. */
    public void advance(FilmState film, double durationS) {
        double d = diffusivityM2PerS(product.creepM(), product.creepS());
        if (d == 0 || durationS == 0) {
            return;
        }
        double[] rate = new double[surfels.count()];
        for (int p = 0; p < shape.length; p++) {
            rate[from[p]] += d * shape[p] / surfels.areaM2()[from[p]];
            rate[to[p]] += d * shape[p] / surfels.areaM2()[to[p]];
        }
        double fastest = 0;
        for (int s = 0; s < rate.length; s++) {
            fastest = surfels.areaM2()[s] >= sliverM2 ? Math.max(fastest, rate[s]) : fastest;
        }
        int steps = (int) Math.max(1, Math.min(1e6, Math.ceil(durationS * fastest / LARGEST_SHARE)));
        for (int i = 0; i < steps; i++) {
            step(film, d, durationS / steps);
        }
    }

    private void step(FilmState film, double d, double stepS) {
        double residual = product.residualFilmM();
        for (int s = 0; s < loose.length; s++) {
            loose[s] = surfels.closure()[s] < 0 ? Math.max(0, film.wetBuildM(s) - residual) : 0;
        }
        for (int p = 0; p < shape.length; p++) {
            double difference = loose[from[p]] - loose[to[p]];
            if (difference == 0) {
                continue;
            }
            int giver = difference > 0 ? from[p] : to[p];
            int taker = difference > 0 ? to[p] : from[p];
            double smaller = Math.min(surfels.areaM2()[giver], surfels.areaM2()[taker]);
            double most = smaller < sliverM2
                    ? LARGEST_SHARE * smaller / Math.max(pairsOf[giver], pairsOf[taker])
                    : Double.POSITIVE_INFINITY;
            double volume = Math.abs(difference) * Math.min(d * shape[p] * stepS, most);
            double share = volume * product.densityKgPerM3() / film.massKg(giver);
            deltaDirect[giver] -= share * film.direct[giver];
            deltaDirect[taker] += share * film.direct[giver];
            deltaFog[giver] -= share * film.fog[giver];
            deltaFog[taker] += share * film.fog[giver];
        }
        for (int s = 0; s < loose.length; s++) {
            film.direct[s] += deltaDirect[s];
            film.fog[s] += deltaFog[s];
            deltaDirect[s] = 0;
            deltaFog[s] = 0;
        }
    }
}
