package baymist.plan;

import baymist.cavity.Cavity;
import baymist.numeric.Workers;
import baymist.run.EngineBuild;
import baymist.run.MemoryBudget;
import baymist.run.MemoryCheck;
import baymist.run.Nozzles;
import baymist.run.RunCancelledException;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Structures;
import baymist.scene.Scene;
import baymist.scene.SceneContent;
import baymist.scene.SceneEdit;
import baymist.spray.DropletBins;
import baymist.spray.SizeBins;
import baymist.voxel.VoxelGrid;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/** Builds dose matrices, station by station, on all threads; what a store has is not computed again. */
public final class DoseMatrices {
    private DoseMatrices() {}

    /** {@link #of(Scene, DoseSettings, DoseStore, Structures, RunOptions, RunObserver)} for a matrix that stands alone. */
    public static DoseMatrix of(
            Scene stated, DoseSettings settings, DoseStore store, RunOptions run, RunObserver observer) {
        return of(stated, settings, store, Structures.shared(), run, observer);
    }

    /**
     * The dose matrix of a scene's entries and wands. Its passes do not matter.
     *
     * @param structures where sheets and voxels come from, shared with the runs of plans
     * @throws RunCancelledException if the observer asks for it; what was computed is kept
     * @throws UncheckedIOException if the store can't be written
     */
    public static DoseMatrix of(
            Scene stated,
            DoseSettings settings,
            DoseStore store,
            Structures structures,
            RunOptions run,
            RunObserver observer) {
        Cavity cavity = structures.cavity(stated);
        Scene coarse = settings.planning().of(stated, cavity);
        List<DoseLine> lines = DoseLines.of(coarse, cavity, settings);
        double spacing = lines.stream().mapToDouble(DoseLine::spacingM).max().orElse(coarse.stationSpacingM());
        // runs of plans stand where the matrix stands
        Scene scene = SceneEdit.of(coarse)
                .numerics(coarse.sizeBins(), coarse.raysPerJet(), spacing)
                .done();
        try (Workers workers = new Workers(run.threads())) {
            VoxelGrid grid = structures.of(scene).grid(workers);
            Scene sprayed = scene.withPasses(
                    lines.stream().map(DoseLine::pass).distinct().toList());
            SizeBins bins = DropletBins.of(Nozzles.sizes(sprayed), scene.sizeBins());
            DoseBuilder builder = new DoseBuilder(scene, cavity, grid, bins, settings);
            String base = SceneContent.hashOf(List.of(scene.withPasses(List.of()), settings, EngineBuild.id()));
            DoseColumn[][] columns = new DoseColumn[lines.size()][];
            int total = 0;
            for (int l = 0; l < columns.length; l++) {
                columns[l] = new DoseColumn[lines.get(l).stations()];
                total += columns[l].length;
            }
            int[] lineOf = new int[total];
            int[] stationOf = new int[total];
            for (int l = 0, i = 0; l < columns.length; l++) {
                for (int k = 0; k < columns[l].length; k++, i++) {
                    lineOf[i] = l;
                    stationOf[i] = k;
                }
            }
            long oneBytes = MemoryCheck.room(scene, cavity, grid, run.memory());
            observer.stage("dose matrix: " + total + " stations");
            AtomicInteger done = new AtomicInteger();
            int all = total;
            workers.forEach(total, i -> {
                RunCancelledException.throwIf(observer.cancelled());
                DoseLine line = lines.get(lineOf[i]);
                String key = key(base, line, stationOf[i]);
                DoseColumn column = store.get(key, bins.count(), grid.surfels().count());
                if (column == null) {
                    column = within(run.memory(), oneBytes, () -> builder.column(line, stationOf[i]));
                    put(store, key, column);
                }
                columns[lineOf[i]][stationOf[i]] = column;
                synchronized (done) {
                    observer.progress((double) done.incrementAndGet() / all, Double.NaN);
                }
            });
            double[] ones = new double[bins.count()];
            Arrays.fill(ones, 1);
            double[] corrections = new double[grid.surfels().count()];
            Arrays.fill(corrections, 1);
            double[] offset = new double[corrections.length];
            return new DoseMatrix(scene, cavity, grid, lines, columns, ones, corrections, offset);
        }
    }

    private static DoseColumn within(MemoryBudget memory, long bytes, Supplier<DoseColumn> made) {
        try (MemoryBudget.Lease lease = memory.lease()) {
            lease.take(bytes);
            return made.get();
        }
    }

    private static String key(String base, DoseLine line, int station) {
        return SceneContent.hashOf(
                List.of(base, line.pass(), line.clockRad(), line.depthsM()[station], line.spacingM()));
    }

    private static void put(DoseStore store, String key, DoseColumn column) {
        try {
            store.put(key, column);
        } catch (IOException e) {
            throw new UncheckedIOException("a dose can't be kept", e);
        }
    }
}
