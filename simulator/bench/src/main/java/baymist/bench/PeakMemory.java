package baymist.bench;

import baymist.cavity.Cavity;
import baymist.numeric.Workers;
import baymist.scene.VoxelSpec;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;

/** Voxelises the shell once and tells time, cells and the largest heap, for a look by hand. */
public final class PeakMemory {
    private PeakMemory() {}

    public static void main(String[] args) {
        Cavity cavity = RibbedShell.cavity();
        double pitchM = args.length > 0 ? Double.parseDouble(args[0]) : 0.0147;
        long start = System.nanoTime();
        try (Workers workers = new Workers(2)) {
            VoxelGrid grid = Voxelizer.voxelize(cavity, new VoxelSpec(pitchM, pitchM, pitchM), workers);
            double seconds = (System.nanoTime() - start) * 1e-9;
            long peak = 0;
            for (MemoryPoolMXBean pool : ManagementFactory.getMemoryPoolMXBeans()) {
                peak += pool.getType() == MemoryType.HEAP ? pool.getPeakUsage().getUsed() : 0;
            }
            System.out.printf(
                    "%d triangles, %d lattice cells, %d cavity cells, %d bays: %.1f s on 2 threads, heap at most %.2f GB%n",
                    cavity.sheets().triangleCount(),
                    (long) grid.nx() * grid.ny() * grid.nz(),
                    grid.cellCount(),
                    grid.bays().size(),
                    seconds,
                    peak * 1e-9);
        }
    }
}
