package baymist.airflow;

import baymist.scene.AirSpec;
import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Front of the air stage. {@link #plan} runs what depends on history (pressure, turbulence) through the timeline, which is
 * cheap; {@link #field} then computes the air of one window from the plan alone, so windows may be computed in any order and
 * by any number of threads with the same bits.
 *
 * <pre>
 * AirStage air = AirStage.plan(AirSettings.of(scene, Air.STANDARD), areas, grid, windows);
 * if (air.peakGaugePa() &gt; scene.air().pressureLimitPa()) { refuse, naming air.peakTimeS() }
 * workers.forEach(windows.size(), w -&gt; fields[w] = air.field(w));
 * </pre>
 */
public final class AirStage {
    private final AirSettings settings;
    private final List<AirWindow> windows;
    private final List<AirPath> paths;
    private final PressureHistory pressures;
    private final MixingHistory mixings;
    private final AirProjector projector;

    private AirStage(
            AirSettings settings,
            List<AirWindow> windows,
            List<AirPath> paths,
            PressureHistory pressures,
            MixingHistory mixings,
            AirProjector projector) {
        this.settings = settings;
        this.windows = windows;
        this.paths = paths;
        this.pressures = pressures;
        this.mixings = mixings;
        this.projector = projector;
    }

    /**
     * Prepares the air of a job.
     *
     * @param openingAreaM2 [openings] exact areas, see {@link OpenFractions#areasM2}
     * @param windows in order of time, without gaps or overlaps
     */
    public static AirStage plan(AirSettings settings, double[] openingAreaM2, VoxelGrid grid, List<AirWindow> windows) {
        List<AirPath> paths = new ArrayList<>();
        List<AirPath> distinct = new ArrayList<>();
        for (AirWindow window : windows) {
            paths.add(path(grid, openingAreaM2, window.openFraction(), distinct));
        }
        boolean still = settings.spec().mode() == AirSpec.Mode.STILL;
        // Still air is a verification case: no supply, so no pressure either.
        List<AirWindow> supplied = still
                ? windows.stream()
                        .map(w -> AirWindow.quiet(w.startS(), w.durationS(), w.openFraction()))
                        .toList()
                : windows;
        PressureHistory pressures = PressureHistory.of(grid, settings.air(), supplied, paths);
        MixingHistory mixings = MixingHistory.of(grid, settings, windows, pressures);
        AirProjector projector = new AirProjector(grid, openingAreaM2, settings.tolerance());
        return new AirStage(settings, List.copyOf(windows), paths, pressures, mixings, projector);
    }

    private static AirPath path(VoxelGrid grid, double[] areas, double[] openFraction, List<AirPath> distinct) {
        for (AirPath known : distinct) {
            if (Arrays.equals(known.openFraction(), openFraction)) {
                return known;
            }
        }
        AirPath fresh = new AirPath(grid, areas, openFraction);
        distinct.add(fresh);
        return fresh;
    }

    /** Number of windows. */
    public int windows() {
        return windows.size();
    }

    /**
     * Air of one window. Pure: threads may call it at once.
     *
     * @throws baymist.problem.SimulationException if the Poisson solve does not converge
     */
    public AirField field(int window) {
        AirWindow w = windows.get(window);
        Mixing mixing = mixings.window(window);
        if (settings.spec().mode() == AirSpec.Mode.STILL) {
            return projector.still(w.openFraction(), mixing);
        }
        SprayHits hits = w.hits();
        AirPath path = paths.get(window);
        PressureWindow pressure = pressures.window(window);
        if (hits == null || hits.airCell() < 0) {
            return projector.quiet(path, pressures.group(window), pressure, mixing);
        }
        return projector.spraying(path, hits, pressure, mixing);
    }

    /** Pressure of the group that the window's flow belongs to: the tip's, or with the trigger off the one that vents most. */
    public PressureWindow pressure(int window) {
        return pressures.window(window);
    }

    /** Highest gauge pressure of any group of bays in the whole job, Pa; compare with the scene's limit. */
    public double peakGaugePa() {
        return pressures.peakGaugePa();
    }

    /** Job time of {@link #peakGaugePa()}, s. */
    public double peakTimeS() {
        return pressures.peakTimeS();
    }

    /** Turbulent kinetic energy of a bay at the end of a window, m²/s². */
    public double turbulentEnergyM2PerS2(int window, int bay) {
        return mixings.k(window, bay);
    }

    AirWindow window(int window) {
        return windows.get(window);
    }

    AirPath path(int window) {
        return paths.get(window);
    }

    int group(int window) {
        return pressures.group(window);
    }

    Mixing floor(int window) {
        return mixings.floor(window);
    }

    AirSettings settings() {
        return settings;
    }
}
