package baymist.plan;

import baymist.scene.ProtectedItem;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import java.util.List;

/** Bags over protected items that a plan would spray. */
final class PlanMasks {
    private PlanMasks() {}

    /** The scene with a bag over each of these items. */
    static Scene bagged(Scene scene, List<String> items) {
        if (items.isEmpty()) {
            return scene;
        }
        return SceneEdit.of(scene)
                .protectedItems(scene.protectedItems().stream()
                        .map(i -> items.contains(i.name()) && !i.masked() ? i.withMask(ProtectedItem.Mask.BAG) : i)
                        .toList())
                .done();
    }

    /** Names of the items that have a mask here and none there. */
    static List<String> more(Scene here, Scene there) {
        return here.protectedItems().stream()
                .filter(ProtectedItem::masked)
                .map(ProtectedItem::name)
                .filter(n ->
                        there.protectedItems().stream().anyMatch(i -> i.name().equals(n) && !i.masked()))
                .toList();
    }
}
