package baymist.explain;

import baymist.scene.Scene;
import java.util.List;
import java.util.function.Consumer;

/**
 * One named change of a job that is worth a run.
 *
 * @param words what a technician would do, as an order: "Turn the pin ..."
 * @param lines the same for the scene file
 * @param edit does it to a draft of any resolution of the scene
 * @param single false for changes that are made together
 */
record Trial(ChangeKind kind, String words, List<String> lines, Consumer<SceneDraft> edit, boolean single) {
    Trial {
        lines = List.copyOf(lines);
    }

    Trial(ChangeKind kind, String words, List<String> lines, Consumer<SceneDraft> edit) {
        this(kind, words, lines, edit, true);
    }

    Scene on(Scene scene) {
        SceneDraft draft = new SceneDraft(scene);
        edit.accept(draft);
        return draft.scene();
    }

    /** Both changes together; counts as the more laborious one. */
    Trial and(Trial other) {
        ChangeKind more = kind.compareTo(other.kind) > 0 ? kind : other.kind;
        List<String> both = new java.util.ArrayList<>(lines);
        both.addAll(other.lines);
        return new Trial(
                more,
                words + ", and: " + other.words.substring(0, 1).toLowerCase(java.util.Locale.ROOT)
                        + other.words.substring(1),
                both,
                edit.andThen(other.edit),
                false);
    }
}
