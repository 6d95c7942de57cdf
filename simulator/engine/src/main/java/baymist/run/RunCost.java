package baymist.run;

import baymist.airflow.ResolvedCost;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import org.jspecify.annotations.Nullable;

/**
 * What a run takes of processors, by what it does: seconds of one core of some 3 GHz. The constants are measured ones; {@code benchmarks.jar demos} (docs/benchmarks/demos.md)
 * holds what they say against what all demonstration scenes take, and prints each share so that they can be set anew.
 *
 * @param fogS transport of fog, all sizes
 * @param airS the resolved air, or fields of the projected one
 * @param raysS the spray
 * @param restS Java's start, sheets, voxels, film, seams, coverage
 */
public record RunCost(double fogS, double airS, double raysS, double restS) {
    /** Cores of the computer whose time is told. */
    private static final int CORES = 2;

    /** Seconds for a cell and step of the resolved air. */
    private static final double AIR_S = 0.6e-6;

    /** Seconds for a step of one cell, its links and one size of droplets, with eight to ten sizes. */
    private static final double FOG_S = 14e-9;

    /**
     * Seconds for a second of limited slopes in quiet air, a cell and a size: windows of some second are set up anew. Fitted to hangs of minutes,
     * in which most sizes have fallen out.
     */
    private static final double SLOPES_S = 0.12e-6;

    /** Speed that most of the fog moves at while a jet blows, m/s, and without: sets its steps. Fitted to the demonstration scenes. */
    private static final double FOG_SPRAY_M_PER_S = 1.5;

    private static final double FOG_QUIET_M_PER_S = 0.03;

    /** Seconds for a ray of the spray, all generations. */
    private static final double RAY_S = 1.5e-4;

    /** Java's start, sheets, voxels, coverage and writing: seconds, and seconds a cell. */
    private static final double FIXED_S = 2;

    private static final double CELL_S = 4e-5;

    static RunCost of(Scene scene, VoxelGrid grid, Phases phases, @Nullable ResolvedCost air) {
        double h = Math.min(
                grid.sizeM().x(), Math.min(grid.sizeM().y(), grid.sizeM().z()));
        double fogSteps = (phases.sprayS() * FOG_SPRAY_M_PER_S + phases.quietS() * FOG_QUIET_M_PER_S) / h;
        double slopedS = scene.transport().limited() ? phases.sprayS() + phases.quietS() : 0;
        return new RunCost(
                (fogSteps * FOG_S + slopedS * SLOPES_S) * grid.cellCount() * scene.sizeBins(),
                air == null ? 0 : air.work() * AIR_S,
                (double) phases.stations() * scene.raysPerJet() * RAY_S,
                FIXED_S + CELL_S * grid.cellCount());
    }

    /** Seconds of the job with the trigger held and without, and stations. */
    record Phases(double sprayS, double quietS, int stations) {
        static Phases of(Timeline timeline) {
            double sprayS = 0;
            double quietS = 0;
            int stations = 0;
            for (Moment m : timeline.moments()) {
                sprayS += m.station() == null ? 0 : m.durationS();
                quietS += m.station() == null ? m.durationS() : 0;
                stations += m.station() == null ? 0 : 1;
            }
            return new Phases(sprayS, quietS, stations);
        }
    }

    /** By the clock, on two cores: fog and rays are shared by them, the air and the rest are not. */
    public double seconds() {
        return (fogS + raysS) / CORES + airS + restS;
    }

    /** Of all cores together. */
    public double processorS() {
        return fogS + airS + raysS + restS;
    }
}
