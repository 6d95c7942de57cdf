package baymist.size;

import baymist.access.SagResult;
import baymist.access.Surroundings;
import baymist.scene.Scene;
import baymist.scene.WandMaterial;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The ways in of a study's designs, each sought once: designs that differ in their orifices alone go the same way. For one thread. */
final class Ways {
    private final Scene scene;
    private final Surroundings around;
    private final SizeRequest request;
    private final Map<Body, Way> ways = new HashMap<>();
    private final Map<Hanging, Hung> sags = new HashMap<>();

    /** What of a design touches structure. */
    private record Body(Tube tube, @Nullable Hook hook, double tipOuterM, double tipLengthM, WandMaterial material) {
        static Body of(Design d) {
            return new Body(
                    d.tube(), d.hook(), d.pattern().tipOuterM(), d.pattern().tipLengthM(), d.material());
        }
    }

    private record Hanging(Body body, double depthM) {}

    private record Hung(@Nullable SagResult sag) {}

    Ways(Scene scene, Surroundings around, SizeRequest request) {
        this.scene = scene;
        this.around = around;
        this.request = request;
    }

    Scene scene() {
        return scene;
    }

    SizeRequest request() {
        return request;
    }

    Way of(Design design) {
        return ways.computeIfAbsent(Body.of(design), b -> Way.of(scene, around, design, request));
    }

    /** How a straight wand hangs when it is in to this depth, m; null for a bent one. */
    @Nullable
    SagResult sag(Design design, double depthM) {
        return sags.computeIfAbsent(
                        new Hanging(Body.of(design), depthM),
                        h -> new Hung(of(design).sag(scene, around, design, depthM)))
                .sag();
    }
}
