package baymist.bench;

import baymist.cavity.Cavity;
import baymist.numeric.Workers;
import baymist.scene.VoxelSpec;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** A million triangles into five million lattice cells within 4 GiB. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 1)
@Measurement(iterations = 3)
@Fork(value = 1, jvmArgs = "-Xmx4g")
public class VoxelizerBenchmark {
    /** 16 m³ of bounding box at this pitch are five million cells. */
    private static final double PITCH_M = 0.0147;

    static final VoxelSpec VOXEL = new VoxelSpec(PITCH_M, PITCH_M, PITCH_M);

    @Param({"1", "2"})
    public int threads;

    private Cavity cavity = RibbedShell.cavity();
    private Workers workers = new Workers(1);

    @Setup(Level.Trial)
    public void start() {
        workers.close();
        workers = new Workers(threads);
        cavity = RibbedShell.cavity();
    }

    @TearDown(Level.Trial)
    public void stop() {
        workers.close();
    }

    @Benchmark
    public VoxelGrid voxelize() {
        return Voxelizer.voxelize(cavity, VOXEL, workers);
    }
}
