package baymist.run;

import baymist.airflow.AirField;
import baymist.airflow.AirSettings;
import baymist.airflow.AirStage;
import baymist.airflow.AirWindow;
import baymist.airflow.ResolvedAir;
import baymist.airflow.ResolvedCost;
import baymist.fog.FogStepper;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * The air of every moment: projected fields, computed a few moments ahead of the fog by all threads, or resolved air that runs beside
 * the fog window by window.
 */
final class Airing {
    /** Moments computed together; more would only hold more fields in memory. */
    static final int AHEAD = 8;

    private final AirStage stage;
    private final Workers workers;
    private final @Nullable AirField[] ahead = new AirField[AHEAD];
    private final @Nullable ResolvedAir resolved;
    private int first = -AHEAD;
    private int resolvedWindows;

    private Airing(AirStage stage, Workers workers, @Nullable ResolvedAir resolved) {
        this.stage = stage;
        this.workers = workers;
        this.resolved = resolved;
    }

    /**
     * @param areas of the openings, m², [openings]
     * @throws SceneException if the cavity would be pumped up beyond the scene's limit
     */
    static Airing plan(
            Scene scene,
            VoxelGrid grid,
            Timeline timeline,
            Spraying spraying,
            double[] areas,
            Workers workers,
            RunObserver observer) {
        List<AirWindow> windows = new ArrayList<>();
        for (int m = 0; m < timeline.count(); m++) {
            Moment moment = timeline.moment(m);
            SprayHits hits = spraying.hits(m);
            windows.add(new AirWindow(moment.startS(), moment.durationS(), hits, moment.openFraction()));
        }
        AirStage stage = AirStage.plan(AirSettings.of(scene, scene.ambient()), areas, grid, windows);
        if (stage.peakGaugePa() > scene.air().pressureLimitPa()) {
            throw new SceneException(
                    "RUN-003",
                    new SourcePlace(scene.file(), 0, "air.pressure_limit"),
                    String.format(
                            Locale.ROOT,
                            "the supply pumps the cavity up to %.1f kPa gauge at %.1f s because its vents are too small;"
                                    + " the limit is %.1f kPa: open a vent or lower the supply (thin sheet can be damaged)",
                            stage.peakGaugePa() / 1e3,
                            stage.peakTimeS(),
                            scene.air().pressureLimitPa() / 1e3));
        }
        RunEstimate estimate = RunEstimate.of(scene, grid, timeline);
        observer.note(estimate.airLine(scene.air()));
        ResolvedCost cost = estimate.air();
        ResolvedAir resolved = cost == null ? null : ResolvedAir.of(stage, grid, areas, cost.factor());
        return new Airing(stage, workers, resolved);
    }

    /** Carries the fog through a moment; every field passes by {@code look} first. */
    void carry(int m, Moment moment, FogStepper fog, @Nullable SprayHits hits, Consumer<AirField> look) {
        ResolvedAir air = resolved;
        if (air == null) {
            AirField field = field(m);
            look.accept(field);
            fog.advance(field, hits, moment.durationS());
            return;
        }
        double left = moment.durationS();
        double window = window(air, left);
        AirField field = air.advance(m, window, fog.concentrationOfAllKgPerM3());
        while (true) {
            look.accept(field);
            resolvedWindows++;
            double after = window >= left ? 0 : left - window;
            if (after <= 0) {
                fog.advance(field, hits, window);
                return;
            }
            double next = window(air, after);
            if (hits == null) {
                fog.advance(field, null, window);
                field = air.advance(m, next, fog.concentrationOfAllKgPerM3());
            } else {
                // While a jet stirs the air, the next window's air is worked out beside the fog of this one: the
                // fog's weight counts a window later.
                double[] weighed = fog.concentrationOfAllKgPerM3();
                Supplier<AirField> ahead = workers.beside(() -> air.advance(m, next, weighed));
                fog.advance(field, hits, window);
                field = ahead.get();
            }
            window = next;
            left = after;
        }
    }

    private static double window(ResolvedAir air, double leftS) {
        return leftS / Math.ceil(leftS / air.windowS() - 1e-9);
    }

    /** What the air was, for the record. */
    Map<String, String> settings() {
        ResolvedAir air = resolved;
        if (air == null) {
            return Map.of();
        }
        Map<String, String> said = new LinkedHashMap<>();
        said.put("air cells", String.valueOf(air.cells()));
        said.put("air block", air.factor() + " voxels a side");
        said.put("air steps", String.valueOf(air.steps()));
        said.put("air windows", String.valueOf(resolvedWindows));
        return said;
    }

    /** Whether eddies and the weight of fog are carried. */
    boolean isResolved() {
        return resolved != null;
    }

    /** Name of the air model that runs. */
    String model(AirSpec spec) {
        return resolved != null ? "resolved" : spec.mode() == AirSpec.Mode.STILL ? "still" : "projected";
    }

    /** Air of a moment; moments are asked for in order. */
    AirField field(int moment) {
        if (moment >= first + AHEAD) {
            first = moment;
            int count = Math.min(AHEAD, stage.windows() - moment);
            workers.forEach(count, i -> ahead[i] = stage.field(first + i));
        }
        AirField field = ahead[moment - first];
        if (field == null) {
            throw new IllegalStateException("moment " + moment + " asked for out of order");
        }
        return field;
    }

    /** Highest gauge pressure of the vented group within a moment, Pa. */
    double peakGaugePa(int moment) {
        return stage.pressure(moment).peakGaugePa();
    }

    double peakGaugePa() {
        return stage.peakGaugePa();
    }

    double peakTimeS() {
        return stage.peakTimeS();
    }
}
