package baymist.study;

import baymist.coverage.Coverage;
import baymist.coverage.Fractions;
import baymist.coverage.ItemAssessor;
import baymist.coverage.ItemDose;
import baymist.coverage.SeamCoverage;
import baymist.run.RunResult;
import baymist.scene.PassSpec;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a comparison wants to know of one run. Arrays belong to the result and must not be written to.
 *
 * @param key content hash of the scene as it was run
 * @param refused why the job can't be done, in one sentence; null = it was run. All figures of a refused job are 0
 * @param reached share of area at or above haze; likewise the next three, see {@link Fractions}
 * @param seamsReached share of the length of seams with film on one side at least
 * @param seamsProtected share of that length with the target build on both sides
 * @param areaM2 structure in the cavity, m²
 * @param productM3 liquid sprayed, m³
 * @param triggerS time with the trigger held, s
 * @param hangS waits after passes and at the end, s
 * @param oversprayKg left through openings, kg
 * @param bare the largest bare regions in structure words, at most {@link #MOST_BARE}
 * @param bareRegions number of all bare regions
 * @param items protected items that were hit: names of those with more film than their limit
 * @param filmM wet film on each surfel of the run's voxels, m
 */
public record StudyResult(
        String key,
        @Nullable String refused,
        double reached,
        double protectedShare,
        double thin,
        double excess,
        double seamsReached,
        double seamsProtected,
        double areaM2,
        double productM3,
        double triggerS,
        double hangS,
        double oversprayKg,
        List<Bare> bare,
        int bareRegions,
        List<String> items,
        double[] filmM) {
    /** Bare regions that are kept in words. */
    public static final int MOST_BARE = 12;

    /** A bare region: where, and how large. */
    public record Bare(String where, double areaM2) {}

    public StudyResult {
        bare = List.copyOf(bare);
        items = List.copyOf(items);
    }

    /** A job that can't be done. */
    static StudyResult refused(String key, String why) {
        return new StudyResult(key, why, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, List.of(), 0, List.of(), new double[0]);
    }

    /** Of a whole run. */
    public static StudyResult of(String key, RunResult r) {
        Coverage c = r.coverage();
        Fractions total = c.total();
        SeamCoverage seams = r.outlook().seams();
        double hang = r.scene().hangS()
                + r.scene().passes().stream().mapToDouble(PassSpec::hangS).sum();
        return new StudyResult(
                key,
                null,
                total.reached(),
                total.protectedShare(),
                total.thin(),
                total.excess(),
                seams.reached(),
                seams.protectedShare(),
                total.areaM2(),
                r.ledger().sprayedKg() / r.scene().product().densityKgPerM3(),
                r.stations().stream().mapToDouble(s -> s.durationS()).sum(),
                hang,
                r.ledger().oversprayKg(),
                c.unreached().stream()
                        .limit(MOST_BARE)
                        .map(u -> new Bare(u.where(), u.areaM2()))
                        .toList(),
                c.unreached().size(),
                ItemAssessor.assess(r.scene(), r.cavity(), r.grid(), r.filmM()).stream()
                        .filter(ItemDose::exceeded)
                        .map(ItemDose::name)
                        .toList(),
                r.filmM());
    }

    /** Whether the job could be done. */
    public boolean done() {
        return refused == null;
    }

    /** Trigger and hang together, s. */
    public double jobS() {
        return triggerS + hangS;
    }
}
