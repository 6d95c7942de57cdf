package baymist.explain;

import baymist.cavity.CavityBuilder;
import baymist.problem.SceneException;
import baymist.scene.Scene;

/** Whether a structure with new holes can be built at all. */
final class Buildable {
    private Buildable() {}

    static boolean is(Scene scene) {
        try {
            CavityBuilder.build(scene);
            return true;
        } catch (SceneException e) {
            return false;
        }
    }
}
