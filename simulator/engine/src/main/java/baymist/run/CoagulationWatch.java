package baymist.run;

import baymist.fog.Coagulation;
import baymist.fog.FogStepper;
import baymist.scene.Scene;
import baymist.spray.Droplet;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;
import org.jspecify.annotations.Nullable;

/**
 * Keeps account of how often droplets have met in each bay, with its mean fog: docs/theory/fog.md, section 5. Only an estimate beside the fog, which
 * takes droplets for good: it says when that is no longer true. In the densest first decimetres of a jet they meet far more often.
 */
final class CoagulationWatch {
    private final Scene scene;
    private final VoxelGrid grid;
    private final SizeBins bins;

    /** Integral of K N over time, [bays]. */
    private final double[] meetings;

    CoagulationWatch(Scene scene, VoxelGrid grid, SizeBins bins) {
        this.scene = scene;
        this.grid = grid;
        this.bins = bins;
        this.meetings = new double[grid.bays().size()];
    }

    void note(FogStepper fog, @Nullable SprayHits hits, double durationS) {
        double diameter = medianM(fog);
        if (!(diameter > 0)) {
            return;
        }
        double[] concentration = fog.meanConcentrationKgPerM3();
        double brownian = Coagulation.brownianM3PerS(Droplet.slip(diameter, scene.ambient()), scene.ambient());
        for (int b = 0; b < meetings.length; b++) {
            double number = Coagulation.numberPerM3(
                    concentration[b], diameter, scene.product().densityKgPerM3());
            double turbulent = Coagulation.turbulentM3PerS(diameter, dissipation(hits, b), scene.ambient());
            meetings[b] += (brownian + turbulent) * number * durationS;
        }
    }

    /** Power that the jets hand over as turbulence, over the mass of the bay's air, W/kg. */
    private double dissipation(@Nullable SprayHits hits, int bay) {
        double volume = grid.bays().get(bay).volumeM3();
        return hits == null || hits.powerBay() != bay || !(volume > 0)
                ? 0
                : hits.turbulentPowerW() / (scene.ambient().densityKgPerM3() * volume);
    }

    /** Diameter of the bin that holds the middle of the airborne mass, m; 0 without fog or for a tracer. */
    private double medianM(FogStepper fog) {
        double half = 0.5 * fog.airborneKg();
        double sum = 0;
        for (int b = 0; b < bins.count() && half > 0; b++) {
            sum += fog.airborneKg(b);
            if (sum >= half) {
                return bins.diameterM()[b];
            }
        }
        return 0;
    }

    /** The bay where droplets met most often. */
    Outlook.Coagulating worst() {
        int worst = 0;
        for (int b = 1; b < meetings.length; b++) {
            worst = meetings[b] > meetings[worst] ? b : worst;
        }
        return new Outlook.Coagulating(grid.bays().get(worst).name(), meetings[worst]);
    }
}
