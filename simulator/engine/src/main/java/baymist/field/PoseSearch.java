package baymist.field;

import baymist.access.Insertion;
import baymist.access.Station;
import baymist.access.Stations;
import baymist.access.TipPose;
import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.SimulationException;
import baymist.run.Approach;
import baymist.run.RunCancelledException;
import baymist.run.RunObserver;
import baymist.run.Spraying;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import baymist.spray.SizeBins;
import baymist.spray.SprayCaster;
import baymist.spray.SprayHits;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The best pose for a region among those that wands reach: depths and clock angles on a lattice, few rays; then the best few again, between their
 * neighbours, with all rays.
 */
final class PoseSearch {
    /** Distance of depths tried first, m, and how many at most on one way (ASSUMED: a jet's width at arm's length). */
    private static final double DEPTH_STEP_M = 0.025;

    private static final int MOST_DEPTHS = 60;

    /** A tip nearer to its entry than this sprays out of it, m. */
    private static final double SHALLOWEST_M = 0.02;

    /** Clock angles tried first in a turn. */
    private static final int CLOCKS = 12;

    /** Rays a jet of the first look. */
    private static final int FEW_RAYS = 64;

    /** Poses that are looked at again, and how often their neighbourhood is halved. */
    private static final int REFINED = 4;

    private static final int HALVINGS = 3;

    private final Scene scene;
    private final Cavity cavity;
    private final SurfelSet surfels;
    private final FieldRegion region;

    /** Place of each surfel in the region, or -1, [surfels]. */
    private final int[] placeOf;

    private final FogField fog;
    private final Workers workers;
    private final SprayCaster rough;
    private final SprayCaster fine;

    PoseSearch(
            Scene scene,
            Cavity cavity,
            VoxelGrid grid,
            FieldRegion region,
            FogField fog,
            SizeBins bins,
            Workers workers) {
        this.scene = scene;
        this.cavity = cavity;
        this.surfels = grid.surfels();
        this.region = region;
        this.placeOf = new int[surfels.count()];
        Arrays.fill(placeOf, -1);
        for (int i = 0; i < region.surfels().length; i++) {
            placeOf[region.surfels()[i]] = i;
        }
        this.fog = fog;
        this.workers = workers;
        this.rough = Spraying.caster(scene, cavity, grid, bins, Math.min(FEW_RAYS, scene.raysPerJet()));
        this.fine = Spraying.caster(scene, cavity, grid, bins, scene.raysPerJet());
    }

    /** A way in with what stands on its lattice. */
    private record Way(PassSpec hold, Insertion insertion, WandSpec wand, double[] open, double periodRad) {
        double deepestM() {
            return Stations.deepestM(insertion);
        }

        double depthStepM() {
            return Math.max(DEPTH_STEP_M, deepestM() / MOST_DEPTHS);
        }

        double clockStepRad() {
            return periodRad / Math.max(1, Math.round(CLOCKS * periodRad / (2 * Math.PI)));
        }
    }

    private record Try(Way way, double depthM, double clockRad) {}

    /** @param landsKgPerS what jets throw on each surfel of the region, kg/s, [region's surfels] */
    private record Scored(Try what, PoseShare share, double[] landsKgPerS) {}

    /** The first look, for {@link #bestPass}. */
    private List<Scored> looked = List.of();

    /** The best poses, best first: of each way at most one. */
    List<PoseShare> best(List<PassSpec> holds, RunObserver observer) {
        List<Way> ways = ways(holds);
        List<Try> tries = new ArrayList<>();
        for (Way w : ways) {
            for (double d = w.deepestM(); d >= SHALLOWEST_M || d == w.deepestM(); d -= w.depthStepM()) {
                for (double clock = 0; clock < Math.max(w.periodRad(), 1e-9) - 1e-9; clock += w.clockStepRad()) {
                    tries.add(new Try(w, d, clock));
                    if (w.periodRad() == 0) {
                        break;
                    }
                }
                if (d < SHALLOWEST_M) {
                    break;
                }
            }
        }
        List<Try> distinct = distinct(tries);
        List<Scored> first = scored(distinct, rough, observer);
        looked = first;
        Map<Way, Scored> bestOfWay = new HashMap<>();
        first.forEach(s -> bestOfWay.merge(
                s.what().way(), s, (a, b) -> a.share().useful() >= b.share().useful() ? a : b));
        List<Scored> again = ways.stream()
                .filter(bestOfWay::containsKey)
                .map(bestOfWay::get)
                .sorted(Comparator.comparingDouble((Scored s) -> -s.share().useful()))
                .limit(REFINED)
                .toList();
        return again.stream()
                .map(s -> refined(s.what(), observer))
                .flatMap(Optional::stream)
                .sorted(Comparator.comparingDouble((PoseShare s) -> -s.useful()))
                .toList();
    }

    private List<Way> ways(List<PassSpec> holds) {
        List<Insertion> insertions =
                Approach.ways(scene.withPasses(holds), cavity).insertions();
        List<Way> ways = new ArrayList<>();
        Set<Insertion> seen = new HashSet<>();
        for (int i = 0; i < holds.size(); i++) {
            Insertion in = insertions.get(i);
            if (!in.feasible() || !(in.maxDepthM() > 0) || !seen.add(in)) {
                continue;
            }
            WandSpec wand = Approach.wand(scene, holds.get(i));
            double[] open = OpenFractions.pass(cavity.openings(), in.openingIndex(), wand.outerM());
            ways.add(new Way(holds.get(i), in, wand, open, TipSymmetry.periodRad(wand.tip())));
        }
        return ways;
    }

    /** A hook's clock angles and depths are rounded to those that it can take: equal poses count once. */
    private static List<Try> distinct(List<Try> tries) {
        Set<List<Object>> seen = new HashSet<>();
        List<Try> kept = new ArrayList<>();
        for (Try t : tries) {
            if (seen.add(List.of(t.way().wand().name(), pose(t)))) {
                kept.add(t);
            }
        }
        return kept;
    }

    private List<Scored> scored(List<Try> tries, SprayCaster caster, RunObserver observer) {
        Scored[] all = new Scored[tries.size()];
        workers.forEach(all.length, i -> {
            RunCancelledException.throwIf(observer.cancelled());
            all[i] = score(tries.get(i), caster, 0);
        });
        List<Scored> kept = new ArrayList<>();
        for (Scored s : all) {
            if (s != null) {
                kept.add(s);
            }
        }
        return kept;
    }

    private Optional<PoseShare> refined(Try start, RunObserver observer) {
        Try at = start;
        Scored begin = score(start, fine, 0);
        PoseShare best = begin == null ? null : begin.share();
        double depth = start.way().depthStepM();
        double clock = start.way().clockStepRad();
        for (int h = 0; h < HALVINGS; h++) {
            depth /= 2;
            clock /= 2;
            List<Try> near = new ArrayList<>();
            for (int i = -1; i <= 1; i++) {
                for (int j = -1; j <= 1; j++) {
                    double d = Math.min(at.way().deepestM(), at.depthM() + i * depth);
                    if ((i != 0 || j != 0) && d > 0 && (j == 0 || clock > 0)) {
                        near.add(new Try(at.way(), d, at.clockRad() + j * clock));
                    }
                }
            }
            for (Scored s : scored(near, fine, observer)) {
                if (best == null || s.share().useful() > best.useful()) {
                    best = s.share();
                    at = s.what();
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private static TipPose pose(Try t) {
        return t.way().insertion().path().tip(t.depthM(), t.clockRad());
    }

    /** What the region gets from a pose; null where the tip would stand in a sheet's voxel. */
    private @Nullable Scored score(Try t, SprayCaster caster, double travelM) {
        TipPose pose = pose(t);
        SprayHits hits;
        try {
            hits = caster.cast(
                    new Station(0, pose, 0, 1, t.depthM(), travelM),
                    t.way().wand(),
                    t.way().open());
        } catch (SimulationException outside) {
            return null;
        }
        double direct = 0;
        double[] lands = new double[region.surfels().length];
        for (int i = 0; i < hits.hitSurfel().length; i++) {
            int place = placeOf[hits.hitSurfel()[i]];
            if (place >= 0) {
                direct += hits.hitKgPerS()[i];
                lands[place] += hits.hitKgPerS()[i];
            }
        }
        double sprayed = hits.sprayedKgPerS();
        if (!(sprayed > 0)) {
            return null;
        }
        double clock = Math.IEEEremainder(t.clockRad(), 2 * Math.PI);
        PassSpec hold = Holds.with(t.way().hold(), t.depthM(), clock < 0 ? clock + 2 * Math.PI : clock, 1);
        double settles = fog.caughtKgPerS(hits);
        List<Vec3> body = t.way().insertion().path().body(t.depthM()).centrelineM();
        PoseShare share = new PoseShare(
                hold, pose, body, direct / sprayed, settles / sprayed, even(lands, direct, settles), sprayed);
        return new Scored(t, share, lands);
    }

    /** All poses of one way at one clock angle, deepest first. */
    private record Line(Way way, double clockRad) {}

    /**
     * The draw-back pass that wets most of the region: one way, one clock angle, over the depths at which anything of it is struck. After {@link
     * #best}. Null if no jet strikes any of it.
     */
    @Nullable
    PassShare bestPass() {
        Map<Line, List<Scored>> lines = new LinkedHashMap<>();
        for (Scored s : looked) {
            lines.computeIfAbsent(new Line(s.what().way(), s.what().clockRad()), k -> new ArrayList<>())
                    .add(s);
        }
        record Drawn(Line line, PassShare pass) {}
        List<Drawn> drawn = new ArrayList<>();
        lines.forEach((line, stations) -> {
            PassShare pass = pass(line, stations);
            if (pass != null) {
                drawn.add(new Drawn(line, pass));
            }
        });
        return drawn.stream()
                .sorted(Comparator.comparingDouble((Drawn d) -> -d.pass().wetted()))
                .limit(REFINED)
                .map(d -> again(d.line(), d.pass()))
                .max(Comparator.comparingDouble(PassShare::wetted))
                .orElse(null);
    }

    /** Sum over the region of what lands, no place counting beyond the mean, over all that lands. */
    private double even(double[] landsKgPerS, double direct, double settles) {
        double mean = (direct + settles) / region.areaM2();
        if (!(mean > 0)) {
            return 0;
        }
        double sum = 0;
        for (int i = 0; i < landsKgPerS.length; i++) {
            double area = surfels.areaM2()[region.surfels()[i]];
            sum += Math.min(landsKgPerS[i] + settles * fog.spread()[i], mean * area);
        }
        return sum / (direct + settles);
    }

    private @Nullable PassShare pass(Line line, List<Scored> stations) {
        double step = line.way().depthStepM();
        double from = 0;
        double to = Double.POSITIVE_INFINITY;
        for (Scored s : stations) {
            if (s.share().direct() > 0) {
                from = Math.max(from, s.what().depthM());
                to = Math.min(to, s.what().depthM());
            }
        }
        if (from == 0) {
            return null;
        }
        double start = Math.min(line.way().deepestM(), from + 0.5 * step);
        double end = Math.max(0.5 * to, to - 0.5 * step);
        double rate = Holds.drawBackMPerS(scene);
        return new PassShare(
                Holds.drawn(line.way().hold(), start, end, rate, line.clockRad()),
                wetted(stations, step / rate),
                fogM(stations, step / rate));
    }

    /** The same with all rays and the tip moving through each of its stretches. */
    private PassShare again(Line line, PassShare rough) {
        PassSpec p = rough.pass();
        double stroke = p.fromDepthM() - p.toDepthM();
        int n = (int) Math.max(1, Math.ceil(stroke / line.way().depthStepM()));
        Scored[] all = new Scored[n];
        workers.forEach(n, i -> {
            double depth = p.fromDepthM() - stroke * (i + 0.5) / n;
            all[i] = score(new Try(line.way(), depth, line.clockRad()), fine, stroke / n);
        });
        List<Scored> stations = Arrays.stream(all).filter(Objects::nonNull).toList();
        double time = stroke / n / p.drawBackMPerS();
        return new PassShare(p, wetted(stations, time), fogM(stations, time));
    }

    /** Share of the region that jets film to haze in this time at each of the stations. */
    private double wetted(List<Scored> stations, double timeS) {
        double[] kg = new double[region.surfels().length];
        for (Scored s : stations) {
            for (int i = 0; i < kg.length; i++) {
                kg[i] += s.landsKgPerS()[i] * timeS;
            }
        }
        double haze = scene.targets().hazeM() * scene.product().densityKgPerM3();
        double wet = 0;
        for (int i = 0; i < kg.length; i++) {
            double area = surfels.areaM2()[region.surfels()[i]];
            wet += kg[i] >= haze * area ? area : 0;
        }
        return wet / region.areaM2();
    }

    /** Mean film of the fog that settles on the region, m. */
    private double fogM(List<Scored> stations, double timeS) {
        double kg = 0;
        for (Scored s : stations) {
            kg += s.share().fog() * s.share().sprayedKgPerS() * timeS;
        }
        return kg / (region.areaM2() * scene.product().densityKgPerM3());
    }
}
