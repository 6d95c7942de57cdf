package baymist.bench;

import baymist.airflow.AirField;
import baymist.fog.FogStepper;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.scene.Transport;
import baymist.scene.WallFinish;
import baymist.spray.SizeBins;
import baymist.spray.SprayHits;
import baymist.units.Air;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/**
 * What steps of many lengths save against steps of one length for all cells: in time, and how far the films are apart. A plane jet that blows half of the
 * time in a box, the film of all of it.
 *
 * <p>Steps of one length are had where all cells are of one pace (eddies alone): that gives the time of an update. The updates that the jet would take so are counted, and
 * the film of such steps is taken from windows of one step each, which leave no room for levels. Their time is not used: it would be that of setting up windows.
 */
final class FogLevelsRate {
    private static final int NX = 12;
    private static final int NY = 11;
    private static final int NZ = 24;
    private static final int WINDOWS = 20;
    private static final double WINDOW_S = 0.2;
    private static final int ROUNDS = 3;
    private static final int BINS = 8;

    /** Fastest air, m/s. */
    private static final double JET_M_PER_S = 7;

    /** Time saved, updates saved, distance of the films (L1 over all film, all sizes together). */
    record Saved(double time, double updates, double film) {}

    private FogLevelsRate() {}

    static Saved measure(Workers workers) {
        VoxelGrid grid = FogTransportRate.box(NX, NY, NZ);
        double film = difference(grid, workers);
        VoxelGrid large = FogTransportRate.box(20, 31, 50);
        double levelsS = Double.POSITIVE_INFINITY;
        double updates = 0;
        double needed = 0;
        double plainS = Double.POSITIVE_INFINITY;
        for (int n = 0; n < ROUNDS; n++) {
            FogStepper fog = fog(large, sizes(BINS), workers);
            long start = Triad.clockNs(workers.threads());
            fog.advance(swirl(large), jet(large, BINS), WINDOW_S);
            levelsS = Math.min(levelsS, 1e-9 * (Triad.clockNs(workers.threads()) - start));
            updates = fog.stats().updates();
            needed = BINS * Math.ceil(WINDOW_S / fog.stats().smallestStepS()) * both(large);
            plainS = Math.min(plainS, plainUpdateS(large, workers));
        }
        return new Saved(plainS * needed / levelsS, needed / updates, film);
    }

    private static double both(VoxelGrid grid) {
        return grid.cellCount() + grid.faces().count();
    }

    /** Seconds of an update where every cell has the same pace. */
    private static double plainUpdateS(VoxelGrid grid, Workers workers) {
        double[] mixing = new double[grid.cellCount()];
        Arrays.fill(mixing, 4e-3);
        AirField still = new AirField(
                new double[grid.faces().count()],
                new double[0],
                new double[grid.cellCount()],
                0,
                mixing,
                new double[grid.surfels().count()],
                new double[0],
                0);
        FogStepper fog = fog(grid, sizes(BINS), workers);
        long start = Triad.clockNs(workers.threads());
        fog.advance(still, jet(grid, BINS), WINDOW_S);
        double seconds = 1e-9 * (Triad.clockNs(workers.threads()) - start);
        double plain = fog.stats().explicitSteps() * both(grid);
        if (Math.abs(fog.stats().updates() - plain) > 0.01 * plain) {
            throw new IllegalStateException("the steps were not of one length: " + fog.stats());
        }
        return seconds / fog.stats().updates();
    }

    /** L1 distance of the two films over all film, all sizes together. */
    private static double difference(VoxelGrid grid, Workers workers) {
        AirField field = swirl(grid);
        SprayHits spray = jet(grid, BINS);
        FogStepper levels = fog(grid, sizes(BINS), workers);
        for (int i = 0; i < WINDOWS; i++) {
            levels.advance(field, i < WINDOWS / 2 ? spray : null, WINDOW_S);
        }
        FogStepper plain = fog(grid, sizes(BINS), workers);
        int windows =
                2 * (int) Math.ceil(0.5 * WINDOWS * WINDOW_S / levels.stats().smallestStepS());
        for (int i = 0; i < windows; i++) {
            plain.advance(field, i < windows / 2 ? spray : null, WINDOWS * WINDOW_S / windows);
        }
        double apart = 0;
        double all = 0;
        for (int s = 0; s < grid.surfels().count(); s++) {
            apart += Math.abs(levels.depositedKg(s) - plain.depositedKg(s));
            all += plain.depositedKg(s);
        }
        return apart / all;
    }

    private static AirField swirl(VoxelGrid grid) {
        double most = Arrays.stream(FogTransportRate.swirl(grid, 1).faceFluxM3PerS())
                .map(Math::abs)
                .max()
                .orElse(1);
        return FogTransportRate.swirl(
                grid, JET_M_PER_S * grid.sizeM().x() * grid.sizeM().y() / most);
    }

    private static SizeBins sizes(int bins) {
        double[] diameter = new double[bins];
        double[] share = new double[bins];
        for (int b = 0; b < bins; b++) {
            diameter[b] = 2e-6 * Math.pow(1.6, b);
            share[b] = 1.0 / bins;
        }
        return new SizeBins(diameter, share);
    }

    private static SprayHits jet(VoxelGrid grid, int bins) {
        double[] kgPerS = new double[bins];
        Arrays.fill(kgPerS, 1e-4);
        return FogTransportRate.source(grid.cellAt(grid.nx() / 2 - 1, grid.ny() / 2, grid.nz() / 2), kgPerS);
    }

    private static FogStepper fog(VoxelGrid grid, SizeBins bins, Workers workers) {
        return new FogStepper(
                grid, bins, 880, Air.STANDARD, new Vec3(0, 0, -9.81), WallFinish.SMOOTH, Transport.AUTO, workers);
    }
}
