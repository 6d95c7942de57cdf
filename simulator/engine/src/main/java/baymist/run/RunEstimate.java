package baymist.run;

import baymist.airflow.ResolvedCost;
import baymist.scene.AirSpec;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What a run will take, reckoned before it begins: the air's cells and steps, memory, and time on two cores of a desk computer. Steps and time are
 * meant to be right within a factor of two (docs/benchmarks/air.md and demos.md compare them with what was counted).
 *
 * @param air cost of the resolved air, or null for projected or still air
 * @param memory what the arrays take
 * @param cost processor time by what it goes into
 */
public record RunEstimate(@Nullable ResolvedCost air, MemoryEstimate memory, RunCost cost) {
    static RunEstimate of(Scene scene, VoxelGrid grid, Timeline timeline) {
        RunCost.Phases phases = RunCost.Phases.of(timeline);
        ResolvedCost air = air(scene.air(), grid, phases.sprayS(), phases.quietS());
        return new RunEstimate(
                air, MemoryEstimate.of(grid, scene.sizeBins(), air), RunCost.of(scene, grid, phases, air));
    }

    /** About, by the clock, on two cores of some 3 GHz. */
    public double seconds() {
        return cost.seconds();
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
