package baymist.run;

import baymist.access.Station;
import baymist.cavity.Cavity;
import baymist.geom.Bvh;
import baymist.numeric.Workers;
import baymist.scene.DropletSpec;
import baymist.scene.Scene;
import baymist.spray.CastSettings;
import baymist.spray.DropletBins;
import baymist.spray.SizeBins;
import baymist.spray.SprayCast;
import baymist.spray.SprayCaster;
import baymist.spray.SprayHits;
import baymist.voxel.GridPart;
import baymist.voxel.SurfelLocator;
import baymist.voxel.VoxelGrid;
import org.jspecify.annotations.Nullable;

/** What the jets do in every moment of the job; each station is cast on its own, so threads share nothing. */
public final class Spraying {
    private final SizeBins bins;
    private final DropletSpec sizes;
    private final @Nullable SprayCast[] casts;
    /** Mass rate that lands or hangs in bays not computed, kg/s, [moments]. */
    private final double[] beyondKgPerS;

    private Spraying(SizeBins bins, DropletSpec sizes, @Nullable SprayCast[] casts, double[] beyondKgPerS) {
        this.bins = bins;
        this.sizes = sizes;
        this.casts = casts;
        this.beyondKgPerS = beyondKgPerS;
    }

    /** What casts the jets of a scene; several threads may use it at once. */
    public static SprayCaster caster(Scene scene, Cavity cavity, VoxelGrid grid, SizeBins bins, int raysPerJet) {
        return caster(scene, cavity, grid, Bvh.of(cavity.sheets()), bins, raysPerJet);
    }

    /** The same with the ray tree of the whole sheets at hand. */
    static SprayCaster caster(Scene scene, Cavity cavity, VoxelGrid grid, Bvh tree, SizeBins bins, int raysPerJet) {
        return new SprayCaster(
                cavity,
                grid,
                new BvhTracer(tree),
                new VoxelFinder(grid, SurfelLocator.of(grid, cavity)),
                scene.supply(),
                bins,
                scene.product(),
                scene.ambient(),
                new CastSettings(raysPerJet, scene.raySeed(), scene.gravity().times(scene.gravityMPerS2())));
    }

    static Spraying cast(Scene scene, Structure structure, Timeline timeline, Workers workers, RunObserver observer) {
        DropletSpec sizes = Nozzles.sizes(scene);
        SizeBins bins = DropletBins.of(sizes, scene.sizeBins());
        @Nullable SprayCast[] casts = new SprayCast[timeline.count()];
        if (timeline.moments().stream().allMatch(m -> m.station() == null)) {
            return new Spraying(bins, sizes, casts, new double[casts.length]);
        }
        SprayCaster caster =
                caster(scene, structure.cavity(), structure.grid(workers), structure.tree(), bins, scene.raysPerJet());
        workers.forEach(timeline.count(), m -> {
            Moment moment = timeline.moment(m);
            Station station = moment.station();
            if (station != null && !observer.cancelled()) {
                casts[m] = caster.castWithDetail(
                        station, Approach.wand(scene, scene.passes().get(station.pass())), moment.openFraction());
            }
        });
        RunCancelledException.throwIf(observer.cancelled());
        return new Spraying(bins, sizes, casts, new double[casts.length]);
    }

    /** The same in some of the bays; what goes elsewhere is told by {@link #beyondKgPerS}. */
    Spraying in(GridPart part) {
        @Nullable SprayCast[] mine = new SprayCast[casts.length];
        double[] beyond = new double[casts.length];
        for (int m = 0; m < mine.length; m++) {
            SprayCast cast = casts[m];
            if (cast != null) {
                PartSpray inPart = PartSpray.of(cast, part, bins.count());
                mine[m] = inPart.cast();
                beyond[m] = inPart.beyondKgPerS();
            }
        }
        return new Spraying(bins, sizes, mine, beyond);
    }

    /** Mass rate that lands or hangs in bays not computed, kg/s. */
    double beyondKgPerS(int moment) {
        return beyondKgPerS[moment];
    }

    /** Liquid that leaves the tips in the whole job, kg. */
    double productKg(Timeline timeline) {
        double sum = 0;
        for (int m = 0; m < casts.length; m++) {
            SprayCast cast = casts[m];
            sum += cast == null
                    ? 0
                    : cast.hits().sprayedKgPerS() * timeline.moment(m).durationS();
        }
        return sum;
    }

    SizeBins bins() {
        return bins;
    }

    /** What the jets do in a moment, or null with the trigger off. */
    @Nullable
    SprayHits hits(int moment) {
        SprayCast cast = casts[moment];
        return cast == null ? null : cast.hits();
    }

    /** The same with what tells how sure it is. */
    @Nullable
    SprayCast cast(int moment) {
        return casts[moment];
    }

    /** Droplet sizes as they were used; a correlation has become a distribution. */
    DropletSpec sizes() {
        return sizes;
    }
}
