package baymist.airflow;

import baymist.voxel.VoxelGrid;

/** What a state of the openings means for the air: groups of connected cells and their vents. Immutable. */
final class AirPath {
    private final double[] openFraction;
    private final Components groups;
    private final VentShares vents;

    AirPath(VoxelGrid grid, double[] openingAreaM2, double[] openFraction) {
        this.openFraction = checked(openFraction, openingAreaM2.length);
        this.groups = Components.of(grid, this.openFraction);
        this.vents = new VentShares(grid, openingAreaM2, this.openFraction, groups);
    }

    private static double[] checked(double[] fraction, int openings) {
        if (fraction.length != openings) {
            throw new IllegalArgumentException(fraction.length + " open fractions for " + openings + " openings");
        }
        for (double f : fraction) {
            if (!(f >= 0 && f <= 1)) {
                throw new IllegalArgumentException("open fraction " + f + ", 0 to 1 expected");
            }
        }
        return fraction.clone();
    }

    double[] openFraction() {
        return openFraction.clone();
    }

    Components groups() {
        return groups;
    }

    VentShares vents() {
        return vents;
    }

    /** Whether any group has an open vent. */
    boolean isVented() {
        for (int g = 0; g < groups.count(); g++) {
            if (vents.areaM2(g) > 0) {
                return true;
            }
        }
        return false;
    }

    /** Load on a group's pressure balance. */
    CavityPressure.Load load(int group, double startS, double durationS, double supplyKgPerS) {
        return new CavityPressure.Load(startS, durationS, supplyKgPerS, vents.areaM2(group), groups.volumeM3(group));
    }
}
