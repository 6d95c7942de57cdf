package baymist.verify;

import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.RunResult;
import baymist.run.Simulation;
import baymist.scene.io.SceneReader;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleBiFunction;

/** Quantities that a scene gives when it is run through the whole chain; each scene is run once. */
final class SceneQuantities {
    private static final Map<String, ToDoubleBiFunction<RunResult, Inputs>> ALL = new TreeMap<>();

    static {
        ALL.put("cavityVolume", (r, in) -> r.grid().totalVolumeM3());
        ALL.put("airborneMass", (r, in) -> r.ledger().airborneKg());
    }

    private final RunOptions options;
    private final Map<Path, RunResult> runs = new HashMap<>();

    SceneQuantities(RunOptions options) {
        this.options = options;
    }

    static boolean has(String quantity) {
        return ALL.containsKey(quantity);
    }

    double value(String quantity, Inputs inputs) {
        ToDoubleBiFunction<RunResult, Inputs> reading = ALL.get(quantity);
        if (reading == null) {
            throw new IllegalArgumentException("quantity \"" + quantity + "\" is not known");
        }
        RunResult result = runs.computeIfAbsent(
                inputs.file("scene"), f -> Simulation.run(SceneReader.read(f), options, RunObserver.NONE));
        return reading.applyAsDouble(result, inputs);
    }
}
