package baymist.run;

import baymist.access.Insertion;
import baymist.access.PassPlan;
import baymist.airflow.AirField;
import baymist.cavity.Cavity;
import baymist.coverage.Coverage;
import baymist.fog.FogStepper;
import baymist.geom.Vec3;
import baymist.ledger.MassLedger;
import baymist.numeric.StateHash;
import baymist.numeric.Workers;
import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.InitialFog;
import baymist.scene.Scene;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What changes while a job runs: fog, film and the record of them over time. Owned by {@link Simulation#run}. */
final class Job {
    /** Largest closure error of the ledger that is let through, of what was sprayed (docs/theory/fog.md). */
    static final double CLOSURE_LIMIT = 1e-9;

    private static final int HASHED_CELLS = 4096;

    private final Scene scene;
    private final Cavity cavity;
    private final VoxelGrid grid;
    private final Ground ground;
    private final Beyond beyond;
    private final FogStepper fog;
    private final FilmKeeper film;
    private final SizeBins bins;
    private final CoagulationWatch watch;
    private final List<TimePoint> history = new ArrayList<>();
    private double peakGaugePa;
    private Gates.Peak peak = Gates.Peak.NONE;
    private final CourantWatch courant;
    private @Nullable AirField lastAir;

    Job(Scene scene, Cavity cavity, Ground ground, Workers workers) {
        this.scene = scene;
        this.cavity = cavity;
        this.ground = ground;
        this.grid = ground.grid();
        this.bins = ground.spraying().bins();
        this.beyond = new Beyond(grid);
        Vec3 gravity = scene.gravity().times(scene.gravityMPerS2());
        this.fog = new FogStepper(
                grid,
                bins,
                scene.product().densityKgPerM3(),
                scene.ambient(),
                gravity,
                scene.walls(),
                scene.transport(),
                workers);
        this.courant = new CourantWatch(grid);
        this.film = new FilmKeeper(cavity, grid, scene, bins.count());
        this.watch = new CoagulationWatch(scene, grid, bins);
        release(scene.initialFog());
        peak = peak.with(fog, bins, scene);
        history.add(point(0));
    }

    private void release(@Nullable InitialFog initial) {
        if (initial == null) {
            return;
        }
        Vec3 point = initial.pointM();
        if (point == null) {
            fog.addUniform(initial.concentrationKgPerM3());
            return;
        }
        int cell = grid.cellHolding(point);
        if (cell < 0) {
            throw new SceneException(
                    "RUN-004",
                    new SourcePlace(scene.file(), 0, "initial_fog.point"),
                    String.format(
                            Locale.ROOT,
                            "the fog is released at (%.4g, %.4g, %.4g) m, which lies outside the cavity; name a point"
                                    + " inside",
                            point.x(),
                            point.y(),
                            point.z()));
        }
        fog.release(cell, initial.pointMassKg());
    }

    FogStepper fog() {
        return fog;
    }

    FilmKeeper film() {
        return film;
    }

    /** Looks at the air of a moment before the fog is carried by it. */
    void seen(AirField air) {
        courant.look(air);
        lastAir = air;
    }

    /** The job as it stands at the end of a moment; {@code insertions} by pass. */
    RunMoment sight(Moment moment, @Nullable SprayHits hits, List<Insertion> insertions) {
        AirField air = lastAir;
        if (air == null) {
            throw new IllegalStateException("no air has been seen yet");
        }
        Insertion in = moment.station() == null
                ? null
                : insertions.get(moment.station().pass());
        return new RunMoment(cavity, grid, bins, moment, air, hits, fog, film, in);
    }

    /** Keeps a point of the curves over time. */
    void note(Moment moment, @Nullable SprayHits hits, double gaugePa, double beyondKgPerS) {
        beyond.note(beyondKgPerS * moment.durationS());
        watch.note(fog, hits, moment.durationS());
        peakGaugePa = Math.max(peakGaugePa, gaugePa);
        peak = peak.with(fog, bins, scene);
        history.add(point(moment.endS()));
    }

    /** What has been carried into bays that are not computed, kg. */
    double carriedBeyondKg() {
        return beyond.carriedKg(fog);
    }

    private TimePoint point(double timeS) {
        return new TimePoint(
                timeS,
                fog.airborneKg(),
                film.state().filmKg(),
                oversprayKg() + film.escapedKg(),
                film.reachedShare(scene.targets().hazeM()),
                peakGaugePa);
    }

    /** Ends the job: ledger, findings, record. */
    RunResult close(
            Coverage coverage,
            PassPlan plan,
            List<Insertion> insertions,
            Spraying spraying,
            Airing airing,
            RunOptions options,
            StageClock clock) {
        MassLedger ledger = ledger();
        ledger.requireClosed(CLOSURE_LIMIT);
        double[] build = film.buildM();
        double[] fogByBinKg = fog.depositedByBinKg();
        Gates gates = Gates.of(new Gates.Sight(
                scene,
                grid,
                film,
                fog,
                build,
                fogByBinKg,
                bins,
                peak,
                airing.peakGaugePa(),
                courant,
                airing.isResolved()));
        Outlook outlook =
                new OutlookBuilder(scene, cavity, grid, bins, film, fog, beyond).build(watch, coverage.seams());
        List<Finding> findings =
                new ArrayList<>(PartFindings.of(scene, grid, options.part(), ledger.beyondKg(), ledger.sprayedKg()));
        findings.addAll(RunFindings.of(scene, cavity, ground, plan, ledger, film, fog, peakAirborneKg(), airing));
        findings.addAll(gates.findings());
        findings.addAll(OutlookFindings.of(scene, outlook));
        return new RunResult(
                scene,
                cavity,
                grid,
                ledger,
                coverage,
                build,
                film.directKg(),
                film.fogKg(),
                findings,
                record(build, options, clock, airing),
                history,
                insertions.stream().distinct().toList(),
                plan.stations(),
                film.sprayedKg() > 0
                        ? film.trust()
                                .confidence(build, fogByBinKg, bins, spraying.sizes(), scene.product(), scene.targets())
                        : Confidence.UNKNOWN,
                gates.gates(),
                outlook,
                null);
    }

    private MassLedger ledger() {
        return MassLedger.builder()
                .sprayed(film.sprayedKg())
                .sprayed(fog.releasedKg())
                .film(film.state().filmKg())
                .airborne(fog.airborneKg())
                .overspray(oversprayKg())
                .overspray(film.escapedKg())
                .dripped(film.state().drippedKg())
                .masked(film.state().maskedKg())
                .beyond(beyond.carriedKg(fog))
                .audited(fog.auditedKg())
                .build();
    }

    private double oversprayKg() {
        return beyond.oversprayKg(fog, cavity.openings().size());
    }

    private double peakAirborneKg() {
        return history.stream().mapToDouble(TimePoint::airborneKg).max().orElse(0);
    }

    private RunRecord record(double[] build, RunOptions options, StageClock clock, Airing airing) {
        Map<String, String> settings = new LinkedHashMap<>();
        settings.put("air", airing.model(scene.air()));
        settings.putAll(airing.settings());
        settings.put("walls", scene.walls().name().toLowerCase(Locale.ROOT));
        settings.put(
                "fog transport",
                scene.transport().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        if (grid.part() != null) {
            settings.put("computed", ComputedBays.of(grid).words() + ", rings of neighbours " + ground.rings());
        }
        settings.put("size bins", String.valueOf(fog.bins()));
        settings.put("rays per jet", String.valueOf(scene.raysPerJet()));
        settings.put("fog cell updates", String.valueOf(fog.stats().updates()));
        settings.put("fog steps, explicit", String.valueOf(fog.stats().explicitSteps()));
        settings.put("fog steps, implicit", String.valueOf(fog.stats().implicitSteps()));
        settings.put(
                "smallest fog step",
                String.format(Locale.ROOT, "%.3g s", fog.stats().smallestStepS()));
        settings.put("fog step limited by", fog.stats().reason());
        StateHash hash = new StateHash().add(build);
        addFog(hash);
        return new RunRecord(
                EngineVersion.VERSION, scene.hash(), options.threads(), clock.seconds(), settings, hash.hex());
    }

    /** Concentrations, cell by cell, sizes innermost, in pieces: all at once they are as large as the fog itself. */
    private void addFog(StateHash hash) {
        int bins = fog.bins();
        for (int from = 0; from < grid.cellCount(); from += HASHED_CELLS) {
            int to = Math.min(grid.cellCount(), from + HASHED_CELLS);
            double[] some = new double[(to - from) * bins];
            for (int i = 0; i < some.length; i++) {
                some[i] = fog.concentrationKgPerM3(from + i / bins, i % bins);
            }
            hash.add(some);
        }
    }
}
