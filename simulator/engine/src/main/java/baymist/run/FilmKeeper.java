package baymist.run;

import baymist.cavity.Cavity;
import baymist.coverage.ItemAssessor;
import baymist.film.FilmAgeing;
import baymist.film.FilmCreep;
import baymist.film.FilmRuns;
import baymist.film.FilmSettings;
import baymist.film.FilmState;
import baymist.fog.FogStepper;
import baymist.scene.Scene;
import baymist.spray.SprayCast;
import baymist.spray.SprayHits;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Film of a job as it grows and runs, and what the jets sprayed to make it. */
final class FilmKeeper {
    private final SurfelSet surfels;
    private final FilmState state;
    private final FilmRuns runs;
    private final FilmTrust trust;
    private final @Nullable FilmCreep creep;
    private final double settingS;
    private final ItemArrivals items;
    private double sprayedKg;
    private double escapedKg;
    private double beyondFreeJetKg;

    FilmKeeper(Cavity cavity, VoxelGrid grid, Scene scene, int bins) {
        surfels = grid.surfels();
        trust = new FilmTrust(surfels, bins);
        items = new ItemArrivals(scene, cavity, grid);
        state = new FilmState(surfels, scene.product(), ItemAssessor.masked(scene, cavity, grid));
        runs = new FilmRuns(
                grid, scene.product(), scene.gravity().times(scene.gravityMPerS2()), FilmSettings.of(scene.product()));
        creep = scene.product().creepM() > 0 ? new FilmCreep(grid, scene.product()) : null;
        settingS = scene.product().settingS();
    }

    /** Film of one moment: what the jets threw, what the fog left, then what runs. */
    void advance(@Nullable SprayCast cast, FogStepper fog, Moment moment) {
        if (cast != null) {
            SprayHits hits = cast.hits();
            trust.advance(hits, cast.detail(), moment);
            state.addDirect(hits, moment.durationS());
            sprayedKg += hits.sprayedKgPerS() * moment.durationS();
            escapedKg += hits.escapedKgPerS() * moment.durationS();
            beyondFreeJetKg += hits.beyondFreeJetKgPerS() * moment.durationS();
        }
        items.note(cast == null ? null : cast.hits(), fog.depositedKg(), moment);
        state.addFog(fog.depositedKg());
        runs.advance(state, moment.openFraction(), moment.durationS());
        if (creep != null) {
            creep.advance(state, moment.durationS());
        }
    }

    /** The film a time after the job, s: masks are off, it runs and creeps until it has set; nothing is added. */
    FilmState after(double timeS, double[] openFraction) {
        return FilmAgeing.after(state.withMasksOff(), runs, creep, openFraction, Math.min(timeS, settingS));
    }

    /** What arrived on protected items, by pass. */
    List<Consequences.Arrival> arrivals() {
        return items.arrivals();
    }

    /** What says how sure the film is. */
    FilmTrust trust() {
        return trust;
    }

    FilmState state() {
        return state;
    }

    /** Liquid that left the tip so far, kg. */
    double sprayedKg() {
        return sprayedKg;
    }

    /** Spray that flew straight out through openings, kg. */
    double escapedKg() {
        return escapedKg;
    }

    /** Spray whose path ran beyond the free jet's law, kg. */
    double beyondFreeJetKg() {
        return beyondFreeJetKg;
    }

    /** Wet build of each surfel, m, [surfels]. */
    double[] buildM() {
        double[] build = new double[state.count()];
        for (int s = 0; s < build.length; s++) {
            build[s] = state.wetBuildM(s);
        }
        return build;
    }

    /** Film that jets threw on each surfel, kg, [surfels]; film that ran keeps its origin. */
    double[] directKg() {
        double[] kg = new double[state.count()];
        for (int s = 0; s < kg.length; s++) {
            kg[s] = state.directKg(s);
        }
        return kg;
    }

    /** Film that fog left on each surfel, kg, [surfels]. */
    double[] fogKg() {
        double[] kg = new double[state.count()];
        for (int s = 0; s < kg.length; s++) {
            kg[s] = state.fogKg(s);
        }
        return kg;
    }

    /** Share of the structure's area with at least this film. */
    double reachedShare(double hazeM) {
        double all = 0;
        double reached = 0;
        for (int s = 0; s < state.count(); s++) {
            if (surfels.isStructure(s)) {
                all += surfels.areaM2()[s];
                reached += state.wetBuildM(s) >= hazeM ? surfels.areaM2()[s] : 0;
            }
        }
        return all > 0 ? reached / all : 0;
    }
}
