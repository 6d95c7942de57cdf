package baymist.run;

import baymist.fog.FogStepper;
import baymist.scene.Scene;
import baymist.spray.SprayHits;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import org.jspecify.annotations.Nullable;

/** Temporary. */
final class FilmKeeper {
    private final SurfelSet surfels;
    private final double density;
    private final double[] direct;
    private double[] fogKg;
    private double escaped;
    private double sprayed;
    double beyond;

    FilmKeeper(VoxelGrid grid, Scene scene) {
        surfels = grid.surfels();
        density = scene.product().densityKgPerM3();
        direct = new double[surfels.count()];
        fogKg = new double[surfels.count()];
    }

    void advance(@Nullable SprayHits hits, FogStepper fog, Moment m) {
        fogKg = fog.depositedKg();
        if (hits == null) {
            return;
        }
        for (int i = 0; i < hits.hitSurfel().length; i++) {
            direct[hits.hitSurfel()[i]] += hits.hitKgPerS()[i] * m.durationS();
        }
        escaped += hits.escapedKgPerS() * m.durationS();
        sprayed += hits.sprayedKgPerS() * m.durationS();
        beyond += hits.beyondFreeJetKgPerS() * m.durationS();
    }

    double[] buildM() {
        double[] b = new double[direct.length];
        for (int s = 0; s < b.length; s++) {
            b[s] = (direct[s] + fogKg[s]) / (density * surfels.areaM2()[s]);
        }
        return b;
    }

    private double sum(boolean masks) {
        double sum = 0;
        for (int s = 0; s < direct.length; s++) {
            if (surfels.closure()[s] >= 0 == masks) {
                sum += direct[s] + fogKg[s];
            }
        }
        return sum;
    }

    double onStructureKg() {
        return sum(false);
    }

    double onMasksKg() {
        return sum(true);
    }

    double escapedKg() {
        return escaped;
    }

    double sprayedKg() {
        return sprayed;
    }

    double drippedKg() {
        return 0;
    }

    double reachedShare(double hazeM) {
        double all = 0;
        double reached = 0;
        double[] b = buildM();
        for (int s = 0; s < b.length; s++) {
            if (surfels.closure()[s] < 0) {
                all += surfels.areaM2()[s];
                reached += b[s] >= hazeM ? surfels.areaM2()[s] : 0;
            }
        }
        return all > 0 ? reached / all : 0;
    }

    double[] directKg() {
        return direct.clone();
    }

    double[] fogKg() {
        return fogKg.clone();
    }
}
