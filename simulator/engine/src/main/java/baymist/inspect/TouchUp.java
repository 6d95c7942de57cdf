package baymist.inspect;

import baymist.access.Insertion;
import baymist.access.Station;
import baymist.access.Stations;
import baymist.airflow.OpenFractions;
import baymist.card.CardSource;
import baymist.card.Turning;
import baymist.numeric.Workers;
import baymist.run.Approach;
import baymist.run.Nozzles;
import baymist.run.Spraying;
import baymist.scene.Inspection;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.TargetSpec;
import baymist.scene.WandSpec;
import baymist.spray.DropletBins;
import baymist.spray.SprayCaster;
import baymist.spray.SprayHits;
import baymist.voxel.SurfelSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Finds passes for places that were found thin or dry, with the scene's own wands on the scene's own ways. */
public final class TouchUp {
    /** Stations on a way are no further apart than this, m. */
    private static final double SPACING_M = 0.03;

    private static final int CLOCKS = 8;
    private static final int BINS = 6;
    private static final int RAYS = 128;

    /** A stretch is at least so long, m (ASSUMED: what a hand finds again by a mark). */
    private static final double LEAST_STRETCH_M = 0.06;

    /** Stretches nearer than this become one, m. */
    private static final double JOIN_M = 0.12;

    /** A way that throws this share of the best on a place is as good, if it serves others too. */
    private static final double AS_GOOD = 0.5;

    /** Longest trigger time of one stretch, s: what takes longer is not within the jets' reach. */
    private static final double LONGEST_S = 20;

    private static final double LEAST_S = 1;

    /** Film that a place found thin has where none was measured: between haze and target build. */
    private static double foundM(Inspection.Place p, TargetSpec t) {
        if (p.measured()) {
            return p.filmM();
        }
        return p.seen() == Inspection.Seen.DRY ? 0 : Math.sqrt(t.hazeM() * t.buildM());
    }

    /**
     * A touch-up.
     *
     * @param scene the scene with passes for the places alone; null where no place is within reach
     * @param served places by index that a pass is for
     * @param unserved places by index that no jet of these wands reaches within a bearable time
     */
    public record Result(@Nullable Scene scene, List<Integer> served, List<Integer> unserved) {
        public Result {
            served = List.copyOf(served);
            unserved = List.copyOf(unserved);
        }
    }

    private final CardSource source;
    private final Scene scene;
    private final Inspection inspection;
    private final PlaceSamples places;
    private final Workers workers;

    TouchUp(CardSource source, Scene scene, Inspection inspection, PlaceSamples places, Workers workers) {
        this.source = source;
        this.scene = scene;
        this.inspection = inspection;
        this.places = places;
        this.workers = workers;
    }

    /** A way with a clock angle, and what each of its stations throws on each wanted place, m/s, [stations][wanted]. */
    private record Way(PassSpec pass, Insertion insertion, List<Station> stations, double[][] growMPerS) {
        double best(int wanted) {
            return Arrays.stream(growMPerS).mapToDouble(g -> g[wanted]).max().orElse(0);
        }
    }

    Result find() {
        List<Integer> wanted = new ArrayList<>();
        for (int i = 0; i < inspection.places().size(); i++) {
            if (inspection.places().get(i).seen() != Inspection.Seen.WET) {
                wanted.add(i);
            }
        }
        List<Way> ways = cast(wanted);
        int[] chosen = choose(ways, wanted);
        List<PassSpec> passes = new ArrayList<>();
        List<Integer> served = new ArrayList<>();
        TreeMap<Integer, List<Integer>> byWay = new TreeMap<>();
        List<Integer> unserved = new ArrayList<>();
        for (int w = 0; w < wanted.size(); w++) {
            if (chosen[w] < 0) {
                unserved.add(wanted.get(w));
            } else {
                byWay.computeIfAbsent(chosen[w], k -> new ArrayList<>()).add(w);
                served.add(wanted.get(w));
            }
        }
        byWay.forEach((way, set) -> passes.addAll(passes(ways.get(way), set, wanted)));
        if (passes.isEmpty()) {
            return new Result(null, served, unserved);
        }
        List<PassSpec> named = new ArrayList<>();
        for (PassSpec p : passes) {
            named.add(p.withName("touch-up " + (named.size() + 1)));
        }
        return new Result(SceneEdit.of(scene).passes(named).done(), served, unserved);
    }

    /** Casts every station of every way at every clock angle that matters. */
    private List<Way> cast(List<Integer> wanted) {
        SprayCaster caster = Spraying.caster(
                scene, source.cavity(), source.grid(), DropletBins.of(Nozzles.sizes(scene), BINS), RAYS);
        List<Way> ways = new ArrayList<>();
        List<List<Object>> seen = new ArrayList<>();
        for (int p = 0; p < scene.passes().size(); p++) {
            PassSpec pass = scene.passes().get(p);
            Insertion in = source.insertions().get(p);
            List<Object> key = List.of(pass.entry(), pass.wand(), String.valueOf(pass.aim()));
            if (!in.feasible() || seen.contains(key)) {
                continue;
            }
            seen.add(key);
            WandSpec wand = Approach.wand(scene, pass);
            for (double clock : clocks(pass, wand)) {
                ways.add(way(pass.withClockRad(clock), in, wand, caster, wanted));
            }
        }
        return ways;
    }

    private static List<Double> clocks(PassSpec pass, WandSpec wand) {
        List<Double> clocks = new ArrayList<>(List.of(pass.clockRad()));
        if (Turning.matters(wand)) {
            for (int k = 1; k < CLOCKS; k++) {
                clocks.add(pass.clockRad() + 2 * Math.PI * k / CLOCKS);
            }
        }
        return clocks;
    }

    private Way way(PassSpec pass, Insertion in, WandSpec wand, SprayCaster caster, List<Integer> wanted) {
        double deepest = Stations.deepestM(in);
        PassSpec whole = pass.withDepthsM(deepest, Math.min(0.02, deepest)).withDrawBackMPerS(0.05);
        Scene one = SceneEdit.of(scene)
                .passes(List.of(whole.withHoldS(0).withHangS(0)))
                .numerics(scene.sizeBins(), scene.raysPerJet(), SPACING_M)
                .done();
        List<Station> stations = Stations.of(one, List.of(in));
        double[] open = OpenFractions.pass(source.cavity().openings(), in.openingIndex(), wand.outerM());
        int[] placeOf = placeOf(wanted);
        double[] areaM2 = areas(wanted);
        double[][] grow = new double[stations.size()][];
        workers.forEach(grow.length, s -> grow[s] = grow(caster.cast(stations.get(s), wand, open), placeOf, areaM2));
        return new Way(pass, in, stations, grow);
    }

    private int[] placeOf(List<Integer> wanted) {
        int[] of = new int[source.grid().surfels().count()];
        Arrays.fill(of, -1);
        for (int w = 0; w < wanted.size(); w++) {
            for (int s : places.surfels(wanted.get(w))) {
                of[s] = w;
            }
        }
        return of;
    }

    private double[] areas(List<Integer> wanted) {
        SurfelSet q = source.grid().surfels();
        return wanted.stream()
                .mapToDouble(i -> Arrays.stream(places.surfels(i))
                        .mapToDouble(s -> q.areaM2()[s])
                        .sum())
                .toArray();
    }

    private double[] grow(SprayHits hits, int[] placeOf, double[] areaM2) {
        double[] grow = new double[areaM2.length];
        for (int i = 0; i < hits.hitSurfel().length; i++) {
            int w = placeOf[hits.hitSurfel()[i]];
            if (w >= 0) {
                grow[w] += hits.hitKgPerS()[i] / (scene.product().densityKgPerM3() * Math.max(1e-9, areaM2[w]));
            }
        }
        return grow;
    }

    /** The way of each wanted place, or -1: as few ways as serve all of them nearly as well as the best would. */
    private int[] choose(List<Way> ways, List<Integer> wanted) {
        int[] chosen = new int[wanted.size()];
        Arrays.fill(chosen, -1);
        boolean[] open = new boolean[wanted.size()];
        double[] best = new double[wanted.size()];
        for (int w = 0; w < open.length; w++) {
            for (Way way : ways) {
                best[w] = Math.max(best[w], way.best(w));
            }
            open[w] = best[w] * LONGEST_S >= missingM(wanted.get(w));
        }
        while (true) {
            int most = 0;
            int pick = -1;
            for (int k = 0; k < ways.size(); k++) {
                int count = 0;
                for (int w = 0; w < open.length; w++) {
                    count += open[w] && ways.get(k).best(w) >= AS_GOOD * best[w] ? 1 : 0;
                }
                if (count > most) {
                    most = count;
                    pick = k;
                }
            }
            if (pick < 0) {
                return chosen;
            }
            for (int w = 0; w < open.length; w++) {
                if (open[w] && ways.get(pick).best(w) >= AS_GOOD * best[w]) {
                    chosen[w] = pick;
                    open[w] = false;
                }
            }
        }
    }

    private double missingM(int place) {
        TargetSpec t = scene.targets();
        double found = foundM(inspection.places().get(place), t);
        return Math.max(0.2 * t.buildM(), t.buildM() - found);
    }

    /** Stretches of one way for its places, deepest first, near ones joined. */
    private List<PassSpec> passes(Way way, List<Integer> set, List<Integer> wanted) {
        List<double[]> stretches = new ArrayList<>(); // from, to
        List<List<Integer>> of = new ArrayList<>();
        List<Integer> order = new ArrayList<>(set);
        order.sort((a, b) -> Double.compare(depthM(way, b), depthM(way, a)));
        for (int w : order) {
            double depth = depthM(way, w);
            double[] last = stretches.isEmpty() ? null : stretches.get(stretches.size() - 1);
            if (last != null && last[1] - depth < JOIN_M) {
                last[1] = Math.max(0.005, Math.min(last[1], depth - LEAST_STRETCH_M / 2));
                of.get(of.size() - 1).add(w);
            } else {
                double deepest = Stations.deepestM(way.insertion());
                double from = Math.min(deepest, depth + LEAST_STRETCH_M / 2);
                stretches.add(new double[] {from, Math.max(0.005, Math.min(from, depth - LEAST_STRETCH_M / 2))});
                of.add(new ArrayList<>(List.of(w)));
            }
        }
        List<PassSpec> passes = new ArrayList<>();
        for (int i = 0; i < stretches.size(); i++) {
            double[] s = stretches.get(i);
            double time = LEAST_S;
            for (int w : of.get(i)) {
                time = Math.max(time, secondsFor(way, w, s, missingM(wanted.get(w))));
            }
            time = Math.min(LONGEST_S, time);
            double stroke = s[0] - s[1];
            PassSpec p = way.pass().withDepthsM(s[0], s[1]).withHoldS(stroke < 0.005 ? time : 0);
            passes.add(stroke < 0.005 ? p.withDepthsM(s[0], s[0]) : p.withDrawBackMPerS(stroke / time));
        }
        return passes;
    }

    /** Time over a stretch in which a place gets what it misses from the jets, s. */
    private static double secondsFor(Way way, int w, double[] stretch, double missingM) {
        double sum = 0;
        int n = 0;
        for (int i = 0; i < way.stations().size(); i++) {
            double d = way.stations().get(i).depthM();
            if (d <= stretch[0] + SPACING_M / 2 && d >= stretch[1] - SPACING_M / 2) {
                sum += way.growMPerS()[i][w];
                n++;
            }
        }
        return n == 0 || sum == 0 ? LONGEST_S : missingM * n / sum;
    }

    private static double depthM(Way way, int w) {
        int best = 0;
        for (int i = 0; i < way.stations().size(); i++) {
            best = way.growMPerS()[i][w] > way.growMPerS()[best][w] ? i : best;
        }
        return way.stations().get(best).depthM();
    }
}
