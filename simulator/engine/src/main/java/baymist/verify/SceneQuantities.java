package baymist.verify;

import baymist.run.RunOptions;
import java.util.Collections;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Quantities that are read off a scene: as it stands in its file, after its geometry is built, or after its run. */
final class SceneQuantities {
    private final Map<String, ToDoubleFunction<Inputs>> all = new TreeMap<>();

    SceneQuantities(RunOptions options) {
        SceneRuns runs = new SceneRuns(options);
        SceneReadings.all().forEach((name, r) -> add(name, in -> r.applyAsDouble(runs.scene(in), in)));
        GeometryReadings.all().forEach((name, r) -> add(name, in -> r.applyAsDouble(runs.check(in), in)));
        VoxelReadings.all().forEach((name, r) -> add(name, in -> r.applyAsDouble(runs.check(in), in)));
        AccessReadings.all().forEach((name, r) -> add(name, in -> r.applyAsDouble(runs.check(in), in)));
        RunReadings.all().forEach((name, r) -> add(name, in -> r.applyAsDouble(runs.run(in), in)));
        CoverageReadings.all().forEach((name, r) -> add(name, in -> r.applyAsDouble(runs.run(in), in)));
    }

    private void add(String name, ToDoubleFunction<Inputs> reading) {
        if (all.put(name, reading) != null) {
            throw new IllegalStateException("quantity \"" + name + "\" stands twice");
        }
    }

    boolean has(String quantity) {
        return all.containsKey(quantity);
    }

    Set<String> names() {
        return Collections.unmodifiableSet(all.keySet());
    }

    /** @throws IllegalArgumentException if the quantity is not known or its inputs will not do */
    double value(String quantity, Inputs inputs) {
        ToDoubleFunction<Inputs> reading = all.get(quantity);
        if (reading == null) {
            throw new IllegalArgumentException("quantity \"" + quantity + "\" is not known");
        }
        return reading.applyAsDouble(inputs);
    }
}
