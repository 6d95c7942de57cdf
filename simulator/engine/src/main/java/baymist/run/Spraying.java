package baymist.run;

import baymist.access.Station;
import baymist.cavity.Cavity;
import baymist.geom.Bvh;
import baymist.numeric.Workers;
import baymist.scene.Scene;
import baymist.spray.DropletBins;
import baymist.spray.SizeBins;
import baymist.spray.SprayCaster;
import baymist.spray.SprayHits;
import baymist.voxel.SurfelLocator;
import baymist.voxel.VoxelGrid;
import org.jspecify.annotations.Nullable;

/** What the jets do in every moment of the job; each station is cast on its own, so threads share nothing. */
final class Spraying {
    private final SizeBins bins;
    private final @Nullable SprayHits[] hits;

    private Spraying(SizeBins bins, @Nullable SprayHits[] hits) {
        this.bins = bins;
        this.hits = hits;
    }

    static Spraying cast(
            Scene scene, Cavity cavity, VoxelGrid grid, Timeline timeline, Workers workers, RunObserver observer) {
        SizeBins bins = DropletBins.of(scene.supply().droplets(), scene.sizeBins());
        @Nullable SprayHits[] hits = new SprayHits[timeline.count()];
        if (timeline.moments().stream().allMatch(m -> m.station() == null)) {
            return new Spraying(bins, hits);
        }
        SprayCaster caster = new SprayCaster(
                cavity,
                grid,
                new BvhTracer(Bvh.of(cavity.sheets())),
                new VoxelFinder(grid, SurfelLocator.of(grid, cavity)),
                scene.supply(),
                bins,
                scene.product().densityKgPerM3(),
                scene.ambient(),
                scene.raysPerJet());
        workers.forEach(timeline.count(), m -> {
            Moment moment = timeline.moment(m);
            Station station = moment.station();
            if (station != null && !observer.cancelled()) {
                hits[m] = caster.cast(
                        station, Approach.wand(scene, scene.passes().get(station.pass())), moment.openFraction());
            }
        });
        RunCancelledException.throwIf(observer.cancelled());
        return new Spraying(bins, hits);
    }

    SizeBins bins() {
        return bins;
    }

    /** What the jets do in a moment, or null with the trigger off. */
    @Nullable
    SprayHits hits(int moment) {
        return hits[moment];
    }
}
