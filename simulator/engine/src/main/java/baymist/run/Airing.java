package baymist.run;

import baymist.airflow.AirField;
import baymist.airflow.AirSettings;
import baymist.airflow.AirStage;
import baymist.airflow.AirWindow;
import baymist.airflow.OpenFractions;
import baymist.cavity.Cavity;
import baymist.numeric.Workers;
import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.Scene;
import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The air of every moment, computed a few moments ahead of the fog by all threads. */
final class Airing {
    /** Moments computed together; more would only hold more fields in memory. */
    private static final int AHEAD = 8;

    private final AirStage stage;
    private final Workers workers;
    private final @Nullable AirField[] ahead = new AirField[AHEAD];
    private int first = -AHEAD;

    private Airing(AirStage stage, Workers workers) {
        this.stage = stage;
        this.workers = workers;
    }

    /** @throws SceneException if the cavity would be pumped up beyond the scene's limit */
    static Airing plan(
            Scene scene, Cavity cavity, VoxelGrid grid, Timeline timeline, Spraying spraying, Workers workers) {
        List<AirWindow> windows = new ArrayList<>();
        for (int m = 0; m < timeline.count(); m++) {
            Moment moment = timeline.moment(m);
            SprayHits hits = spraying.hits(m);
            windows.add(new AirWindow(moment.startS(), moment.durationS(), hits, moment.openFraction()));
        }
        AirStage stage = AirStage.plan(
                AirSettings.of(scene, scene.ambient()), OpenFractions.areasM2(cavity.openings()), grid, windows);
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
        return new Airing(stage, workers);
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
