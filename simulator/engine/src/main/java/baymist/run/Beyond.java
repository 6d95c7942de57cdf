package baymist.run;

import baymist.fog.FogStepper;
import baymist.voxel.PartOfWhole;
import baymist.voxel.VoxelGrid;
import org.jspecify.annotations.Nullable;

/** What is carried into bays that are not computed: spray that flies there and fog that goes through cut openings. Changed by one job. */
final class Beyond {
    private final @Nullable PartOfWhole part;
    private double sprayKg;

    Beyond(VoxelGrid grid) {
        part = grid.part();
    }

    /** Adds spray of a moment, kg. */
    void note(double kg) {
        sprayKg += kg;
    }

    /** Spray and fog carried beyond so far, kg. */
    double carriedKg(FogStepper fog) {
        double sum = sprayKg;
        if (part != null) {
            for (int opening : part.cut()) {
                sum += fog.oversprayKg(opening);
            }
        }
        return sum;
    }

    /** Fog that has left the structure, kg. */
    double oversprayKg(FogStepper fog, int openings) {
        if (part == null) {
            return fog.oversprayKg();
        }
        double sum = 0;
        for (int o = 0; o < openings; o++) {
            sum += part.isCut(o) ? 0 : fog.oversprayKg(o);
        }
        return sum;
    }

    /** Whether an opening leads to a bay that is not computed. */
    boolean leadsBeyond(int opening) {
        return part != null && part.isCut(opening);
    }
}
