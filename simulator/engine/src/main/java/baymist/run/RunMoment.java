package baymist.run;

import baymist.access.Insertion;
import baymist.access.Station;
import baymist.airflow.AirField;
import baymist.cavity.Cavity;
import baymist.fog.FogStepper;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.voxel.VoxelGrid;
import org.jspecify.annotations.Nullable;

/**
 * What a job has come to at the end of one of its moments, for those who look on. It shows the state and lets nobody change it; it is
 * good only while the call lasts that hands it over, and its arrays must not be written to.
 */
public final class RunMoment {
    private final Cavity cavity;
    private final VoxelGrid grid;
    private final SizeBins bins;
    private final Moment moment;
    private final AirField air;
    private final @Nullable SprayHits hits;
    private final FogStepper fog;
    private final FilmKeeper film;
    private final @Nullable Insertion insertion;

    RunMoment(
            Cavity cavity,
            VoxelGrid grid,
            SizeBins bins,
            Moment moment,
            AirField air,
            @Nullable SprayHits hits,
            FogStepper fog,
            FilmKeeper film,
            @Nullable Insertion insertion) {
        this.cavity = cavity;
        this.grid = grid;
        this.bins = bins;
        this.moment = moment;
        this.air = air;
        this.hits = hits;
        this.fog = fog;
        this.film = film;
        this.insertion = insertion;
    }

    public Cavity cavity() {
        return cavity;
    }

    public VoxelGrid grid() {
        return grid;
    }

    /** Droplet sizes of the fog. */
    public SizeBins bins() {
        return bins;
    }

    /** Job time at which the moment began, s. */
    public double startS() {
        return moment.startS();
    }

    /** Job time now, s. */
    public double endS() {
        return moment.endS();
    }

    public double durationS() {
        return moment.durationS();
    }

    /** Where the tip stood with the trigger held, or null while fog hangs. */
    public @Nullable Station station() {
        return moment.station();
    }

    /** The way on which the tip got there, or null while fog hangs. */
    public @Nullable Insertion insertion() {
        return insertion;
    }

    /** The air that carried the fog; of several fields the last. */
    public AirField air() {
        return air;
    }

    /** What the jets did, or null with the trigger off. */
    public @Nullable SprayHits hits() {
        return hits;
    }

    /** Fog in a cell now, all sizes together, kg/m³. */
    public double concentrationKgPerM3(int cell) {
        return fog.concentrationKgPerM3(cell);
    }

    /** Fog of one size in a cell now, kg/m³. */
    public double concentrationKgPerM3(int cell, int bin) {
        return fog.concentrationKgPerM3(cell, bin);
    }

    /** Fog that one surfel has caught so far, kg. */
    public double depositedKg(int surfel) {
        return fog.depositedKg(surfel);
    }

    /** Fog in the air of the cavity now, kg. */
    public double airborneKg() {
        return fog.airborneKg();
    }

    /** Wet film build on one surfel now, m. */
    public double filmM(int surfel) {
        return film.state().wetBuildM(surfel);
    }

    /** Wet film on one surfel now, kg. */
    public double filmKg(int surfel) {
        return film.state().massKg(surfel);
    }

    /** Liquid that left the tip so far, kg. */
    public double sprayedKg() {
        return film.sprayedKg();
    }
}
