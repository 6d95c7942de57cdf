package baymist.verify;

import baymist.scene.Scene;
import baymist.scene.SupplySpec;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleBiFunction;

/** What a scene states once its file is read. */
final class SceneReadings {
    private SceneReadings() {}

    static Map<String, ToDoubleBiFunction<Scene, Inputs>> all() {
        Map<String, ToDoubleBiFunction<Scene, Inputs>> all = new TreeMap<>();
        all.put("liquidFlow", (s, in) -> s.supply().liquidKgPerS());
        all.put("supplyGaugePressure", (s, in) -> {
            if (s.supply() instanceof SupplySpec.Pressure p) {
                return p.gaugePa();
            }
            throw new IllegalArgumentException("the scene has no supply by pressure");
        });
        all.put(
                "gravityComponent",
                (s, in) -> s.gravity().dot(in.vector("along").unit()));
        all.put("productViscosity", (s, in) -> s.product().viscosityPaS());
        return all;
    }
}
