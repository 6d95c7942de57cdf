package baymist.run;

import baymist.airflow.ResolvedCost;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What a run will take, reckoned before it begins: the air's cells and steps, memory, and time on two cores of a desk computer. Steps and time are
 * meant to be right within a factor of two (docs/benchmarks/air.md compares them with what was counted).
 *
 * @param air cost of the resolved air, or null for projected or still air
 * @param memory what the arrays take
 * @param seconds about, on two cores of some 3 GHz
 */
public record RunEstimate(@Nullable ResolvedCost air, MemoryEstimate memory, double seconds) {
    /** Seconds of one core for a cell and step of the air, measured (docs/benchmarks/air.md). */
    private static final double AIR_S = 0.6e-6;

    /** Seconds of one core for a step of one cell, its links and one size of droplets, measured with eight to ten sizes. */
    private static final double FOG_S = 14e-9;

    /**
     * Seconds of one core for a second of limited slopes in quiet air, a cell and a size: windows of some second are set up anew. Fitted to hangs of minutes,
     * in which most sizes have fallen out.
     */
    private static final double SLOPES_S = 0.12e-6;

    /** Speed that most of the fog moves at while a jet blows, m/s, and without: sets its steps. Fitted to the demonstration scenes. */
    private static final double FOG_SPRAY_M_PER_S = 1.5;

    private static final double FOG_QUIET_M_PER_S = 0.03;

    /** Seconds of one core for a ray of the spray, all generations, measured. */
    private static final double RAY_S = 1.5e-4;

    /** Java's start, sheets, voxels, coverage and writing: seconds, and seconds a cell. */
    private static final double FIXED_S = 2;

    private static final double CELL_S = 4e-5;

    private static final int CORES = 2;

    static RunEstimate of(Scene scene, VoxelGrid grid, Timeline timeline) {
        double sprayS = 0;
        double quietS = 0;
        int stations = 0;
        for (Moment m : timeline.moments()) {
            sprayS += m.station() == null ? 0 : m.durationS();
            quietS += m.station() == null ? m.durationS() : 0;
            stations += m.station() == null ? 0 : 1;
        }
        ResolvedCost air = air(scene.air(), grid, sprayS, quietS);
        double h = Math.min(
                grid.sizeM().x(), Math.min(grid.sizeM().y(), grid.sizeM().z()));
        double fogSteps = (sprayS * FOG_SPRAY_M_PER_S + quietS * FOG_QUIET_M_PER_S) / h;
        double slopedS = (scene.transport().limited(true) ? sprayS : 0)
                + (scene.transport().limited(false) ? quietS : 0);
        double shared = (fogSteps * FOG_S + slopedS * SLOPES_S) * grid.cellCount() * scene.sizeBins()
                + (double) stations * scene.raysPerJet() * RAY_S;
        double alone = FIXED_S + CELL_S * grid.cellCount() + (air == null ? 0 : air.work() * AIR_S);
        return new RunEstimate(air, MemoryEstimate.of(grid, scene.sizeBins(), air), shared / CORES + alone);
    }

    /** Blocks of the resolved air, or null for projected or still air. */
    static @Nullable ResolvedCost air(AirSpec air, VoxelGrid grid, double sprayS, double quietS) {
        if (air.mode() == AirSpec.Mode.STILL || air.mode() == AirSpec.Mode.PROJECTED || sprayS + quietS == 0) {
            return null;
        }
        if (air.blockCells() > 0) {
            return ResolvedCost.of(grid, sprayS, quietS, air.blockCells());
        }
        ResolvedCost cost = ResolvedCost.affordable(grid, sprayS, quietS);
        return air.mode() == AirSpec.Mode.AUTO && !cost.isBearable() ? null : cost;
    }

    /** The air's share in one line, in the words of the user. */
    public String airLine(AirSpec spec) {
        ResolvedCost cost = air;
        if (cost == null) {
            return spec.mode() == AirSpec.Mode.STILL
                    ? "still air: nothing moves it"
                    : "projected air: one fast field a station; it ranks, eddies and the fog's weight are left out";
        }
        String why = spec.blockCells() > 0
                ? "as stated"
                : cost.isAffordable()
                        ? "the finest that keep cells x steps below 20 million"
                        : "the coarsest there are; cells x steps are above 20 million all the same";
        return String.format(
                Locale.ROOT,
                "resolved air: %d cells (blocks of %d voxels a side, %s) x about %d steps",
                cost.cells(),
                cost.factor(),
                why,
                cost.steps());
    }
}
