package baymist.bench;

import baymist.airflow.AirSettings;
import baymist.airflow.AirStage;
import baymist.airflow.AirWindow;
import baymist.airflow.OpenFractions;
import baymist.airflow.ResolvedAir;
import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.fog.FogStepper;
import baymist.airflow.AirField;
import baymist.numeric.Workers;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.spray.DropletBins;
import baymist.spray.SizeBins;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Scaling. */
final class Scale {
    private Scale() {}

    static void main(Arguments args) throws IOException {
        int bays = args.number("--bays", 8);
        double voxel = 1e-3 * args.real("--voxel", 12);
        long t0 = Triad.processorNs();
        Scene scene = ManyBays.scene(bays, 1, voxel, "hang: 10 s");
        t0 = lap("read", t0);
        Cavity cavity = CavityBuilder.build(scene);
        t0 = lap("cavity " + cavity.sheets().triangleCount(), t0);
        try (Workers workers = new Workers(2)) {
            VoxelGrid grid = Voxelizer.voxelize(cavity, scene.voxel(), workers);
            t0 = lap("voxels " + grid.cellCount() + " bays " + grid.bays().size() + " volume/bay "+grid.totalVolumeM3()/bays+" lattice "+(long)grid.nx()*grid.ny()*grid.nz(), t0);
        }
    }

    private static long lap(String what, long since) {
        long now = Triad.processorNs();
        System.out.printf("%s: %.2f s, heap peak %.2f GB%n", what, 1e-9 * (now - since), 1e-9 * PeakMemory.heapBytes());
        return now;
    }
}
