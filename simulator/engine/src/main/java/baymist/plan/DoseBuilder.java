package baymist.plan;

import baymist.access.Station;
import baymist.airflow.AirSettings;
import baymist.airflow.AirStage;
import baymist.airflow.AirWindow;
import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.fog.FogStepper;
import baymist.numeric.Workers;
import baymist.problem.SimulationException;
import baymist.run.Spraying;
import baymist.scene.Scene;
import baymist.scene.Transport;
import baymist.spray.SizeBins;
import baymist.spray.SprayCast;
import baymist.spray.SprayCaster;
import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;

/**
 * Film per trigger-second from one station: a pulse of spray in the flow that it makes itself; then that flow goes on without liquid for a while
 * (carry-over: in a pass the next stations blow on), then the fog hangs.
 *
 * <p>A pure function of its arguments; several threads may use one builder.
 */
final class DoseBuilder {
    /** First and longest piece of the hanging time, s, as in a run. */
    private static final double FIRST_HANG_S = 0.5;

    private static final double LONGEST_HANG_S = 30;

    private final Scene scene;
    private final VoxelGrid grid;
    private final SizeBins bins;
    private final SprayCaster caster;
    private final DoseSettings settings;
    private final double[] openingAreaM2;
    private final double[] hanging;

    DoseBuilder(Scene scene, Cavity cavity, VoxelGrid grid, SizeBins bins, DoseSettings settings) {
        this.scene = scene;
        this.grid = grid;
        this.bins = bins;
        this.settings = settings;
        this.caster = Spraying.caster(scene, cavity, grid, bins, scene.raysPerJet());
        this.openingAreaM2 = OpenFractions.areasM2(cavity.openings());
        this.hanging = OpenFractions.hang(cavity.openings());
    }

    /** The dose of a station; a tip that stands in a sheet's voxel doses nothing. */
    DoseColumn column(DoseLine line, int station) {
        Station at = new Station(
                0,
                line.insertion().path().tip(line.depthsM()[station], line.clockRad()),
                0,
                settings.pulseS(),
                line.depthsM()[station],
                line.spacingM());
        SprayCast cast;
        try {
            cast = caster.castWithDetail(at, line.wand(), line.open());
        } catch (SimulationException outside) {
            return DoseColumn.empty(bins.count(), grid.surfels().count());
        }
        double[] kg = new double[bins.count() * grid.surfels().count()];
        SprayHits hits = cast.hits();
        int n = bins.count();
        for (int i = 0; i < hits.hitSurfel().length; i++) {
            for (int b = 0; b < n; b++) {
                kg[hits.hitSurfel()[i] * n + b] += cast.detail().byBinKgPerS()[i * n + b];
            }
        }
        double[] fog = fogKg(hits, line.open());
        for (int i = 0; i < kg.length; i++) {
            kg[i] += fog[i] / settings.pulseS();
        }
        double density = scene.product().densityKgPerM3();
        float[] film = new float[kg.length];
        for (int s = 0; s < grid.surfels().count(); s++) {
            double perKg = 1 / (density * grid.surfels().areaM2()[s]);
            for (int b = 0; b < n; b++) {
                film[b * grid.surfels().count() + s] = (float) (kg[s * n + b] * perKg);
            }
        }
        return new DoseColumn(n, film, hits.sprayedKgPerS());
    }

    /** What the pulse's fog leaves on each surfel, kg, [surfels * bins], bin innermost. */
    private double[] fogKg(SprayHits hits, double[] open) {
        SprayHits blowing = withoutLiquid(hits);
        List<AirWindow> windows = new ArrayList<>();
        double time = settings.pulseS() + settings.carryS();
        windows.add(new AirWindow(0, settings.pulseS(), hits, open));
        windows.add(new AirWindow(settings.pulseS(), settings.carryS(), blowing, open));
        double left = Math.max(FIRST_HANG_S, scene.hangS());
        double piece = FIRST_HANG_S;
        while (left > 0) {
            double length = left < 1.5 * piece ? left : piece;
            windows.add(AirWindow.quiet(time, length, hanging));
            time += length;
            left -= length;
            piece = Math.min(2 * piece, LONGEST_HANG_S);
        }
        AirStage air = AirStage.plan(AirSettings.of(scene, scene.ambient()), openingAreaM2, grid, windows);
        try (Workers own = new Workers(1)) {
            FogStepper fog = new FogStepper(
                    grid,
                    bins,
                    scene.product().densityKgPerM3(),
                    scene.ambient(),
                    scene.gravity().times(scene.gravityMPerS2()),
                    scene.walls(),
                    Transport.FIRST_ORDER,
                    own);
            for (int w = 0; w < windows.size(); w++) {
                fog.advance(air.field(w), windows.get(w).hits(), windows.get(w).durationS());
            }
            return fog.depositedByBinKg();
        }
    }

    private static SprayHits withoutLiquid(SprayHits h) {
        return new SprayHits(
                new int[0],
                new double[0],
                new int[0],
                new double[0],
                0,
                h.streamCell(),
                h.streamX(),
                h.streamY(),
                h.streamZ(),
                h.scourCell(),
                h.scourSurfel(),
                h.scourM3PerS(),
                h.scourEfficiency(),
                h.airM3PerS(),
                h.airCell(),
                h.thrustN(),
                h.turbulentPowerW(),
                h.powerBay(),
                0,
                0);
    }
}
