package baymist.bench;

import baymist.plan.DoseMatrices;
import baymist.plan.DoseMatrix;
import baymist.plan.DoseSettings;
import baymist.plan.DoseStore;
import baymist.plan.PlanScore;
import baymist.plan.Stroke;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.scene.io.SceneReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A plan of twelve whole-line strokes on the demo elevator judged by the dose matrix: within 20 ms. Run from the project's folder. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(value = 1, jvmArgs = "-Xmx2g")
public class PlanBenchmark {
    private List<Stroke> plan = List.of();

    @SuppressWarnings("NullAway.Init") // set before the first measurement
    private DoseMatrix matrix;

    static DoseMatrix build() {
        return DoseMatrices.of(
                SceneReader.read(Path.of("scenes", "control-surface-pin-aft.yaml")),
                DoseSettings.DEFAULT,
                DoseStore.in(Path.of("out", "doses")),
                new RunOptions(Runtime.getRuntime().availableProcessors()),
                RunObserver.NONE);
    }

    @Setup(Level.Trial)
    public void start() {
        matrix = build();
        plan = strokes(matrix);
    }

    /** Twelve strokes, each over a whole line. */
    static List<Stroke> strokes(DoseMatrix matrix) {
        List<Stroke> strokes = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            int line = i % matrix.lines().size();
            strokes.add(new Stroke(line, 0, matrix.lines().get(line).stations() - 1, 0.1));
        }
        return strokes;
    }

    @Benchmark
    public PlanScore judge() {
        return matrix.score(plan);
    }
}
