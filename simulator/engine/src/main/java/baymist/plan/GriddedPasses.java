package baymist.plan;

import baymist.cavity.Cavity;
import baymist.coverage.Fractions;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.run.Rehearsal;
import baymist.run.RunCancelledException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Structures;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/**
 * What plans are held against: single passes through one entry, evenly gridded over entries and wands, clock angles, draw-back rates and start depths, at
 * least a hundred, each run at planning resolution.
 *
 * <p>Rates go geometrically from the slowest to the fastest that a plan may use, clock angles evenly over the period of the tip, start depths evenly from
 * the deepest to the entry; every pass ends at the entry. Of all ways to part a hundred among the three, the one with the fewest passes is taken, then the
 * evenest.
 */
public final class GriddedPasses {
    /** Passes, at least. */
    public static final int COUNT = 100;

    private GriddedPasses() {}

    /** A pass of the grid and what a run of it found. */
    public record Row(PassSpec pass, PlanScore score) {}

    /**
     * All passes of the grid that could be run.
     *
     * @param count passes, at least
     * @throws SceneException PLN-001 if no wand goes in
     */
    public static List<Row> run(Scene stated, DoseSettings dose, int count, RunOptions run, RunObserver observer) {
        Structures structures = Structures.shared();
        Cavity cavity = structures.cavity(stated);
        Scene coarse = dose.planning().of(stated, cavity);
        List<DoseLine> lines = DoseLines.of(coarse, cavity, dose);
        double spacing = lines.stream().mapToDouble(DoseLine::spacingM).max().orElse(coarse.stationSpacingM());
        Scene scene = SceneEdit.of(coarse)
                .numerics(coarse.sizeBins(), coarse.raysPerJet(), spacing)
                .done();
        List<PassSpec> passes = grid(stated, lines, count);
        observer.stage("gridded passes: " + passes.size());
        @Nullable Row[] rows = new Row[passes.size()];
        AtomicInteger done = new AtomicInteger();
        try (Workers workers = new Workers(run.threads())) {
            Rehearsal rehearsal = Rehearsal.of(scene, structures, workers);
            workers.forEach(rows.length, i -> {
                RunCancelledException.throwIf(observer.cancelled());
                rows[i] = row(rehearsal, scene, passes.get(i));
                synchronized (done) {
                    observer.progress((double) done.incrementAndGet() / rows.length, Double.NaN);
                }
            });
        }
        List<Row> all = new ArrayList<>();
        for (Row r : rows) {
            if (r != null) {
                all.add(r);
            }
        }
        return all;
    }

    /** The pass that reaches most; of two that reach as much, the one that takes less. */
    public static Row best(List<Row> rows) {
        Row best = null;
        for (Row r : rows) {
            boolean more = best == null
                    || r.score().reached() > best.score().reached()
                    || (r.score().reached() == best.score().reached()
                            && r.score().productM3() < best.score().productM3());
            best = more ? r : best;
        }
        if (best == null) {
            throw new IllegalArgumentException("no pass of the grid could be run");
        }
        return best;
    }

    private static @Nullable Row row(Rehearsal rehearsal, Scene scene, PassSpec pass) {
        try {
            Rehearsal.Rehearsed film = rehearsal.run(scene.withPasses(List.of(pass)));
            Fractions total = film.total();
            return new Row(
                    pass, new PlanScore(total.reached(), total.protectedShare(), film.triggerS(), film.productM3()));
        } catch (SceneException refused) {
            return null;
        }
    }

    private static List<PassSpec> grid(Scene scene, List<DoseLine> lines, int count) {
        if (lines.isEmpty()) {
            throw new SceneException(
                    "PLN-001",
                    baymist.problem.SourcePlace.of(scene.file()),
                    "no wand of the scene goes in at one of its entries, so there is nothing to plan with");
        }
        List<DoseLine> ways = new ArrayList<>();
        for (DoseLine line : lines) {
            if (ways.isEmpty() || ways.get(ways.size() - 1).way() != line.way()) {
                ways.add(line);
            }
        }
        int each = (count + ways.size() - 1) / ways.size();
        double slowest = LimitsOfScene.slowest(scene);
        double fastest = LimitsOfScene.fastest(scene);
        List<PassSpec> all = new ArrayList<>();
        for (DoseLine way : ways) {
            double period = DoseLines.periodRad(way.wand().tip());
            int[] n = parts(each, period > 0);
            for (int c = 0; c < n[0]; c++) {
                for (int r = 0; r < n[1]; r++) {
                    double rate = slowest * Math.pow(fastest / slowest, n[1] == 1 ? 0 : r / (n[1] - 1.0));
                    for (int d = 0; d < n[2]; d++) {
                        all.add(pass(way, period * c / n[0], rate, 1 - (double) d / n[2], all.size() + 1));
                    }
                }
            }
        }
        return all;
    }

    private static PassSpec pass(DoseLine way, double clockRad, double rateMPerS, double share, int number) {
        double deepest = way.startM(0);
        double shallow = way.endM(way.stations() - 1);
        double from = shallow + share * (deepest - shallow);
        PassSpec p = way.pass();
        return new PassSpec(
                "grid " + number,
                p.entry(),
                p.wand(),
                Math.round(1e3 * from) / 1e3,
                Math.round(1e3 * shallow) / 1e3,
                rateMPerS,
                clockRad,
                0,
                0,
                p.aim(),
                p.place());
    }

    /** Numbers of clock angles, rates and depths whose product is at least this, as few as can be, and even. */
    static int[] parts(int least, boolean turns) {
        int[] best = {1, least, 1};
        int spread = Integer.MAX_VALUE;
        int fewest = Integer.MAX_VALUE;
        for (int c = 1; c <= (turns ? 8 : 1); c++) {
            for (int r = 1; r <= 10; r++) {
                for (int d = 1; d <= 10; d++) {
                    int all = c * r * d;
                    int wide = Math.max(turns ? c : r, Math.max(r, d)) - Math.min(turns ? c : r, Math.min(r, d));
                    if (all >= least && (all < fewest || (all == fewest && wide < spread))) {
                        best = new int[] {c, r, d};
                        fewest = all;
                        spread = wide;
                    }
                }
            }
        }
        return best;
    }
}
