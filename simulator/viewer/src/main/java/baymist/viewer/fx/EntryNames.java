package baymist.viewer.fx;

import baymist.scene.EntrySpec;
import baymist.scene.Scene;
import org.jspecify.annotations.Nullable;

/** Which openings wands go in by, from the scene. */
record EntryNames(Scene scene) implements CavityPicture.Names {
    @Override
    public @Nullable String entryAt(String opening) {
        return scene.entries().stream()
                .filter(e -> e.opening().equals(opening))
                .map(EntrySpec::name)
                .findFirst()
                .orElse(null);
    }
}
