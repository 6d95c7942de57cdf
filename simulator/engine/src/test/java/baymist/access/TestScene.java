package baymist.access;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.CavitySpec;
import baymist.scene.DropletSpec;
import baymist.scene.PassSpec;
import baymist.scene.PhaseStates;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.SceneFixtures;
import baymist.scene.SupplySpec;
import java.util.List;
import java.util.Map;

/** A scene of which only the passes matter. */
public final class TestScene {
    private TestScene() {}

    public static final SourcePlace HERE = new SourcePlace("job.yaml", 30, "passes[0]");

    public static PassSpec pass(String name, double from, double to, double rate, double hold, double hang) {
        return new PassSpec(name, "e", "w", from, to, rate, 0, hold, hang, HERE);
    }

    public static Scene of(double spacingM, double hangS, Map<String, PhaseStates> states, PassSpec... passes) {
        CavitySpec block =
                new CavitySpec.Block("b", new Vec3(0.4, 0.6, 0.15), Vec3.ZERO, Vec3.ZERO, 0.6e-3, List.of(), HERE);
        SupplySpec supply = new SupplySpec.Pressure(551_581, 0.85, 5e-4, new DropletSpec.Tracer());
        SceneEdit edit = SceneEdit.of(SceneFixtures.bare("job.yaml", block, supply))
                .passes(List.of(passes))
                .hangS(hangS)
                .numerics(8, 128, spacingM);
        states.forEach(edit::state);
        return edit.done();
    }
}
