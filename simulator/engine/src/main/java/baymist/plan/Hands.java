package baymist.plan;

import baymist.coverage.CoverageAssessor;
import baymist.coverage.UnreachedRegion;
import baymist.problem.SceneException;
import baymist.run.Nozzles;
import baymist.scene.DropletSpec;
import baymist.scene.Scene;
import baymist.spray.DropletBins;
import baymist.spray.SizeBins;
import baymist.voxel.SurfelSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;

/**
 * Samples how jobs are really done: rate, depth, clock angle, hesitation, droplets. Seeded: the same jobs for the same plan.
 *
 * <p>All spreads are ASSUMED (common practice, no source): they say what to be careful about, not how careful a certain person is.
 */
final class Hands {
    static final int SAMPLES = 200;
    private static final long SEED = 20_240_611;

    /** Standard deviation of the logarithm of the draw-back rate. */
    private static final double RATE_SPREAD = 0.25;

    /** Standard deviation of depth marks, m. */
    private static final double DEPTH_SPREAD_M = 0.015;

    /** Standard deviation of the clock angle, rad. */
    private static final double CLOCK_SPREAD_RAD = Math.toRadians(15);

    /** Chance that a pass stops once with the trigger held, and for how long on the average, s. */
    private static final double HESITATES = 0.3;

    private static final double HESITATES_S = 1;

    /** Standard deviation of the logarithm of the median diameter: a factor of 1.3 is two of them. */
    private static final double DROPLET_SPREAD = 0.5 * Math.log(DropletSpec.USUAL_FACTOR);

    static final String[] NAMES = {"draw-back rate", "depth", "clock angle", "hesitation", "droplet size"};

    private final DoseMatrix matrix;
    private final List<Stroke> plan;
    private final List<DoseMatrix> bySize;

    /** Chance from which a place counts as reached: 19 of 20; sums of chances are a little off. */
    private static final double SURE = 0.95 - 1e-9;

    /** Medians tried, as factors; a sample takes the nearest. */
    private static final double[] SIZES = {0.75, 0.87, 1, 1.15, 1.33};

    private static final boolean[] ALL = {true, true, true, true, true};

    private final List<SampledJob> jobs = new ArrayList<>();

    private Hands(DoseMatrix matrix, List<Stroke> plan) {
        this.matrix = matrix;
        this.plan = plan;
        Random random = new Random(SEED);
        for (int i = 0; i < SAMPLES; i++) {
            jobs.add(SampledJob.draw(random, plan.size()));
        }
        this.bySize = bySize(matrix);
    }

    static HandsResult study(DoseMatrix matrix, List<Stroke> plan) {
        Hands hands = new Hands(matrix, plan);
        SurfelSet surfels = matrix.grid().surfels();
        double[] chance = new double[surfels.count()];
        double[] reached = hands.reached(hands.jobs, ALL, chance);
        double promised = matrix.score(plan).reached();
        List<HandsResult.Habit> habits = new ArrayList<>();
        for (int h = 0; h < NAMES.length; h++) {
            boolean[] alone = new boolean[NAMES.length];
            alone[h] = true;
            double[] with = hands.reached(hands.jobs, alone, new double[surfels.count()]);
            habits.add(new HandsResult.Habit(NAMES[h], promised - low(with), hands.varianceShare(h, reached)));
        }
        habits.sort(Comparator.comparingDouble((HandsResult.Habit h) -> -h.lostReached()));
        double all = 0;
        double surely = 0;
        for (int s = 0; s < chance.length; s++) {
            double area = surfels.isStructure(s) ? surfels.areaM2()[s] : 0;
            all += area;
            surely += chance[s] >= SURE ? area : 0;
        }
        return new HandsResult(
                SAMPLES,
                Arrays.stream(reached).average().orElse(0),
                low(reached),
                surely / all,
                chance,
                byBay(matrix, chance),
                regions(matrix, chance),
                habits,
                List.of());
    }

    /**
     * Share of the variance of the reached area that a habit makes by itself: first-order index of Sobol' (1993, Mathematical
     * Modelling and
     * Computational Experiment 1, 407), by pick and freeze: jobs that share this habit's draws alone with those of the study,
     * {@code S = cov(Y, Y') / var(Y)}
     * (both estimated about the mean of the two sets, Monod, Naud and Makowski 2006). With some 200 jobs good to about 0.07; cut to 0..1.
     */
    private double varianceShare(int habit, double[] reached) {
        Random random = new Random(SEED + 1);
        List<SampledJob> frozen = new ArrayList<>();
        for (SampledJob job : jobs) {
            frozen.add(SampledJob.draw(random, plan.size()).withHabit(habit, job));
        }
        double[] other = reached(frozen, ALL, new double[matrix.grid().surfels().count()]);
        double mean = 0;
        for (int i = 0; i < SAMPLES; i++) {
            mean += 0.5 * (reached[i] + other[i]) / SAMPLES;
        }
        double cov = 0;
        double var = 0;
        for (int i = 0; i < SAMPLES; i++) {
            cov += (reached[i] - mean) * (other[i] - mean);
            var += 0.5 * ((reached[i] - mean) * (reached[i] - mean) + (other[i] - mean) * (other[i] - mean));
        }
        return var > 0 ? Math.max(0, Math.min(1, cov / var)) : 0;
    }

    /** The study's jobs from the poorest to the best by the matrix, with their reached shares. */
    static List<Ranked> ranked(DoseMatrix matrix, List<Stroke> plan) {
        Hands hands = new Hands(matrix, plan);
        double[] reached = hands.reached(
                hands.jobs, ALL, new double[matrix.grid().surfels().count()]);
        List<Ranked> all = new ArrayList<>();
        for (int i = 0; i < SAMPLES; i++) {
            all.add(new Ranked(hands.jobs.get(i), reached[i]));
        }
        all.sort(Comparator.comparingDouble(Ranked::reached));
        return all;
    }

    /** A job and what the matrix says of it. */
    record Ranked(SampledJob job, double reached) {}

    static double rateFactor(SampledJob.Hand h) {
        return Math.exp(RATE_SPREAD * h.rate());
    }

    static double deeperM(SampledJob.Hand h) {
        return DEPTH_SPREAD_M * h.deeper();
    }

    static double turnedRad(SampledJob.Hand h) {
        return CLOCK_SPREAD_RAD * h.turned();
    }

    /** How long the hand stops, s; 0 = it does not. */
    static double heldS(SampledJob.Hand h) {
        return h.stop() < HESITATES ? HESITATES_S * h.held() : 0;
    }

    /** Factor on the droplets' median, as the matrix knows it. */
    static double sizeFactor(SampledJob job) {
        return SIZES[nearest(Math.exp(DROPLET_SPREAD * job.size()))];
    }

    private static double low(double[] reached) {
        double[] sorted = reached.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 20];
    }

    private static List<HandsResult.BayChance> byBay(DoseMatrix matrix, double[] chance) {
        int n = matrix.grid().bays().size();
        double[] area = new double[n];
        double[] sum = new double[n];
        SurfelSet s = matrix.grid().surfels();
        for (int i = 0; i < chance.length; i++) {
            if (s.isStructure(i)) {
                int b = matrix.grid().bayOfCell(s.cell()[i]);
                area[b] += s.areaM2()[i];
                sum[b] += chance[i] * s.areaM2()[i];
            }
        }
        List<HandsResult.BayChance> all = new ArrayList<>();
        for (int b = 0; b < n; b++) {
            if (area[b] > 0) {
                all.add(new HandsResult.BayChance(matrix.grid().bays().get(b).name(), sum[b] / area[b]));
            }
        }
        return all;
    }

    /** Places that hang together and are reached in fewer than 19 of 20 jobs, found and named like the bare regions of a run. */
    private static List<HandsResult.RegionChance> regions(DoseMatrix matrix, double[] chance) {
        SurfelSet s = matrix.grid().surfels();
        double[] sure = new double[chance.length];
        for (int i = 0; i < sure.length; i++) {
            sure[i] = chance[i] >= SURE ? matrix.scene().targets().hazeM() : 0;
        }
        List<HandsResult.RegionChance> all = new ArrayList<>();
        for (UnreachedRegion r : CoverageAssessor.assess(matrix.scene(), matrix.cavity(), matrix.grid(), sure)
                .unreached()) {
            double area = 0;
            double sum = 0;
            for (int i : r.surfels()) {
                area += s.areaM2()[i];
                sum += s.areaM2()[i] * chance[i];
            }
            all.add(new HandsResult.RegionChance(r.label(), r.where(), r.areaM2(), area > 0 ? sum / area : 0));
        }
        return all;
    }

    /** Matrices with the shares of other medians over those of the job. */
    private static List<DoseMatrix> bySize(DoseMatrix matrix) {
        Scene scene = matrix.scene();
        DropletSpec sizes;
        try {
            sizes = Nozzles.sizes(scene.withPasses(
                    matrix.lines().stream().map(DoseLine::pass).distinct().toList()));
        } catch (SceneException e) {
            throw new IllegalStateException("the matrix was made with these sizes", e);
        }
        DropletSpec inner = sizes instanceof DropletSpec.Adjusted a ? a.sizes() : sizes;
        SizeBins bins = DropletBins.of(sizes, scene.sizeBins());
        List<DoseMatrix> all = new ArrayList<>();
        for (double factor : SIZES) {
            if (factor == 1 || inner instanceof DropletSpec.Tracer) {
                all.add(matrix);
                continue;
            }
            double[] moved = DropletBins.movedShares(sizes, scene.sizeBins(), factor);
            double[] weight = new double[bins.count()];
            for (int b = 0; b < weight.length; b++) {
                weight[b] = bins.share()[b] > 0 ? moved[b] / bins.share()[b] : 0;
            }
            all.add(matrix.weighted(weight));
        }
        return all;
    }

    /** Reached shares of jobs with some habits; adds to the chance of each surfel. */
    private double[] reached(List<SampledJob> sampled, boolean[] habit, double[] chance) {
        double[] reached = new double[sampled.size()];
        double haze = matrix.scene().targets().hazeM();
        for (int i = 0; i < reached.length; i++) {
            SampledJob job = sampled.get(i);
            DoseMatrix with = bySize.get(habit[4] ? nearest(Math.exp(DROPLET_SPREAD * job.size())) : nearest(1));
            double[] film = with.filmM(List.of());
            for (int k = 0; k < plan.size(); k++) {
                done(with, plan.get(k), habit, job.hands().get(k), film);
            }
            reached[i] = with.score(film, 0, 0).reached();
            for (int k = 0; k < film.length; k++) {
                chance[k] += film[k] >= haze ? 1.0 / reached.length : 0;
            }
        }
        return reached;
    }

    private static int nearest(double factor) {
        int best = 0;
        for (int i = 1; i < SIZES.length; i++) {
            best = Math.abs(Math.log(SIZES[i] / factor)) < Math.abs(Math.log(SIZES[best] / factor)) ? i : best;
        }
        return best;
    }

    /** One stroke as a hand does it. */
    private void done(DoseMatrix with, Stroke s, boolean[] habit, SampledJob.Hand hand, double[] film) {
        double rate = s.rateMPerS() * (habit[0] ? rateFactor(hand) : 1);
        double deeper = habit[1] ? deeperM(hand) : 0;
        double turned = habit[2] ? turnedRad(hand) : 0;
        double held = habit[3] ? heldS(hand) : 0;
        DoseLine line = matrix.lines().get(s.line());
        double shift = -deeper / line.spacingM();
        Neighbour other = neighbour(s.line(), turned);
        for (int part = 0; part < 2; part++) {
            double share = part == 0 ? 1 - other.weight() : other.weight();
            int l = part == 0 ? s.line() : other.line();
            if (share > 0) {
                drawn(with, l, s, rate, shift, share, film);
                if (held > 0) {
                    int k = s.first() + (int) (hand.at() * (s.last() - s.first() + 1));
                    with.addAt(l, clamp(k, matrix.lines().get(l).stations()), share * held, film);
                }
            }
        }
    }

    private void drawn(DoseMatrix with, int line, Stroke s, double rate, double shift, double share, double[] film) {
        int n = matrix.lines().get(line).stations();
        double time = matrix.lines().get(line).spacingM() / rate * share;
        int whole = (int) Math.floor(shift);
        double part = shift - whole;
        for (int k = s.first(); k <= s.last(); k++) {
            with.addAt(line, clamp(k + whole, n), time * (1 - part), film);
            with.addAt(line, clamp(k + whole + 1, n), time * part, film);
        }
    }

    private static int clamp(int station, int stations) {
        return Math.max(0, Math.min(stations - 1, station));
    }

    private record Neighbour(int line, double weight) {}

    /** The line of the same way at the next clock angle on the side of the turn, and how much of it the turn takes. */
    private Neighbour neighbour(int line, double turnedRad) {
        DoseLine own = matrix.lines().get(line);
        List<Integer> same = new ArrayList<>();
        for (int l = 0; l < matrix.lines().size(); l++) {
            if (matrix.lines().get(l).way() == own.way()) {
                same.add(l);
            }
        }
        if (same.size() < 2) {
            return new Neighbour(line, 0);
        }
        double period = DoseLines.periodRad(own.wand().tip());
        double step = period / same.size();
        int side = turnedRad >= 0 ? 1 : -1;
        int next = same.get(Math.floorMod(same.indexOf(line) + side, same.size()));
        return new Neighbour(next, Math.min(1, Math.abs(turnedRad) / step));
    }
}
