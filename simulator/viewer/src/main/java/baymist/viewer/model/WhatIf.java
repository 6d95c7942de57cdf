package baymist.viewer.model;

import baymist.geom.Vec3;
import baymist.problem.SourcePlace;
import baymist.scene.EntrySpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SceneContent;
import baymist.scene.SceneEdit;
import baymist.scene.WandSpec;
import baymist.scene.io.SceneWriter;
import baymist.study.Change;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A job being tried otherwise: entry, depth, clock angle, rate, wand and times of each pass, and the liquid. Immutable; every edit gives a
 * new one. The scene on disk stays as it is until {@link #save}.
 */
public final class WhatIf {
    /** What stands in a depth's box for as deep as the wand goes. */
    public static final String DEEPEST = "deepest";

    private final Scene original;
    private final Scene scene;
    /** What was changed in words, by field, in the order of the first edit. */
    private final Map<String, String> changes;

    private WhatIf(Scene original, Scene scene, Map<String, String> changes) {
        this.original = original;
        this.scene = scene;
        this.changes = changes;
    }

    /** What came of an edit. */
    public record Edit(@Nullable WhatIf result, String sentence) {
        /** Whether the edit was refused; {@code sentence} then says what would be right. */
        public boolean refused() {
            return result == null;
        }
    }

    /** Nothing changed yet. */
    public static WhatIf of(Scene scene) {
        return new WhatIf(scene, scene, Map.of());
    }

    /** The job as it is tried now. */
    public Scene scene() {
        return scene;
    }

    /** The job as it was read. */
    public Scene original() {
        return original;
    }

    public boolean changed() {
        return !SceneContent.same(original, scene);
    }

    /** What was changed, in words, one for each field. */
    public List<String> changes() {
        return List.copyOf(changes.values());
    }

    /** Everything that can be turned, pass by pass, then the whole job. */
    public List<Field> fields() {
        List<Field> fields = new ArrayList<>();
        for (PassSpec pass : scene.passes()) {
            fields.addAll(PassFields.of(scene, pass));
        }
        fields.addAll(PassFields.ofJob(scene));
        return fields;
    }

    /** A field by its id; null if there is none. */
    public @Nullable Field field(String id) {
        return fields().stream().filter(f -> f.id().equals(id)).findFirst().orElse(null);
    }

    /**
     * The job with one field set.
     *
     * @param typed as a person types it: a number in the field's unit, or with a unit of its own; one of the choices
     */
    public Edit with(String id, String typed) {
        Field field = field(id);
        if (field == null) {
            return new Edit(null, "There is nothing called '" + id + "' to change in this job.");
        }
        FieldEdits.Outcome outcome = FieldEdits.of(scene, field, typed);
        Change change = outcome.change();
        if (change == null) {
            return new Edit(null, outcome.sentence());
        }
        Scene next = change.apply(scene);
        WhatIf result = new WhatIf(original, next, Map.of());
        Field before = Objects.requireNonNull(
                of(original).field(id) == null ? field : of(original).field(id));
        Map<String, String> all = new LinkedHashMap<>(changes);
        if (before.text().equals(Objects.requireNonNull(result.field(id)).text())) {
            all.remove(id);
        } else {
            all.put(id, words(result, id, change));
        }
        return new Edit(new WhatIf(original, next, all), words(result, id, change));
    }

    /** A factor on the liquid would be one on what it was before this edit; the rate itself is plainer. */
    private static String words(WhatIf result, String id, Change change) {
        Field now = Objects.requireNonNull(result.field(id));
        return change instanceof Change.Liquid ? "set the liquid to " + now.text() + " " + now.unit() : change.words();
    }

    /**
     * A pass through a new round hole, for moving an entry to where there is none. Its words carry the caution about drilling.
     *
     * @param part name of the part that is drilled
     * @param placeM where; moved onto the nearest point of the part, m
     * @param diameterM of the hole, m
     */
    public Edit throughNewHole(String pass, String part, Vec3 placeM, double diameterM) {
        if (scene.passes().stream().noneMatch(p -> p.name().equals(pass))) {
            return new Edit(null, "There is no pass '" + pass + "' in this job.");
        }
        if (!(diameterM > 0 && diameterM < 0.2)) {
            return new Edit(null, "A hole has a diameter above 0 and below 200 mm.");
        }
        // the same name again moves the hole instead of drilling a second one
        String name = "what-if hole for " + pass;
        Scene without = SceneEdit.of(scene)
                .cuts(scene.cuts().stream().filter(c -> !c.name().equals(name)).toList())
                .entries(scene.entries().stream()
                        .filter(e -> !e.name().equals(name))
                        .toList())
                .done();
        Change drilled = new Change.RoundHole(name, part, placeM, diameterM);
        Change entered = new Change.Entry(pass, name);
        Scene next = entered.apply(drilled.apply(without));
        Map<String, String> all = new LinkedHashMap<>(changes);
        all.put("entry:" + pass, drilled.words() + " and go in there in pass '" + pass + "'");
        return new Edit(new WhatIf(original, next, all), drilled.words());
    }

    /**
     * A pass through an opening: by the entry that the scene has there, or by a new one along the opening's own axis.
     *
     * @param opening name of an opening of the cavity
     */
    public Edit throughOpening(String pass, String opening) {
        if (scene.passes().stream().noneMatch(p -> p.name().equals(pass))) {
            return new Edit(null, "There is no pass '" + pass + "' in this job.");
        }
        EntrySpec there = scene.entries().stream()
                .filter(e -> e.opening().equals(opening))
                .findFirst()
                .orElse(null);
        if (there != null) {
            return with("entry:" + pass, there.name());
        }
        if (scene.entries().stream().anyMatch(e -> e.name().equals(opening))) {
            return new Edit(null, "The name '" + opening + "' is taken by an entry at another opening.");
        }
        List<EntrySpec> entries = new ArrayList<>(scene.entries());
        entries.add(new EntrySpec(opening, opening, null, SourcePlace.of(scene.file())));
        Scene with = SceneEdit.of(scene).entries(entries).done();
        return new WhatIf(original, with, changes).with("entry:" + pass, opening);
    }

    /** Names of the entries, in the order of the scene. */
    public List<String> entries() {
        return scene.entries().stream().map(EntrySpec::name).toList();
    }

    /** Wands at hand, by name. */
    public List<WandSpec> wands() {
        return scene.wands().keySet().stream()
                .sorted()
                .map(n -> Objects.requireNonNull(scene.wands().get(n)))
                .toList();
    }

    /**
     * Writes it as a scene of its own; a file is written whole or not at all.
     *
     * @throws baymist.problem.SceneException if the scene that it came from can't be read any more
     * @throws IOException if it can't be written
     */
    public void save(Path file) throws IOException {
        SceneWriter.write(scene, file);
    }
}
