package baymist.scene.io;

import baymist.problem.SourcePlace;
import baymist.scene.Scene;
import baymist.scene.SceneContent;
import baymist.scene.WandSpec;
import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.schema.CoreSchema;

/**
 * Writes a scene that was read and then edited as a scene file again.
 *
 * <p>What the edits left alone is written as its author wrote it, by the format's own description, with models named as files;
 * what they changed is
 * written from the records. The structure can't be edited, so it always comes from the file that was read. What was written is read
 * back and held against the scene before it takes its place: a file that would say something else is never left behind.
 */
public final class SceneWriter {
    /** Parts that can be written from the records. */
    private static final Set<String> KEYS = Set.of(
            "title",
            "story",
            "cut",
            "openings",
            "bays",
            "protected",
            "obstacles",
            "wands",
            "product",
            "supply",
            "entries",
            "passes",
            "hang",
            "targets",
            "gravity",
            "voxel",
            "walls",
            "air",
            "ambient",
            "initial_fog",
            "numerics");

    private final Scene scene;
    private final Value.@Nullable Fields source;
    private final @Nullable Scene before;

    private SceneWriter(Scene scene, Value.@Nullable Fields source, @Nullable Scene before) {
        this.scene = scene;
        this.source = source;
        this.before = before;
    }

    /**
     * Writes a scene; folders are made as needed.
     *
     * @param scene one that {@link SceneReader} read, edited or not; its file must still be there as it was read
     * @throws baymist.problem.SceneException if that file can't be read any more
     * @throws IllegalStateException if the scene can't be said in the format (its structure has changed since it was read)
     * @throws IOException if the new file can't be written; an old one is then untouched
     */
    public static void write(Scene scene, Path file) throws IOException {
        write(scene, "", file);
    }

    /** The same with a remark at the head of the file, for whoever opens it; "" for none. */
    public static void write(Scene scene, String remark, Path file) throws IOException {
        Path target = file.toAbsolutePath().normalize();
        Path folder = target.getParent();
        if (folder == null) {
            throw new IOException(file + " is no file name");
        }
        Files.createDirectories(folder);
        Path part = folder.resolve("." + target.getFileName() + "." + UUID.randomUUID() + ".part");
        try {
            Files.writeString(part, commented(remark) + text(scene, folder));
            String difference = SceneContent.difference(scene, SceneReader.read(part));
            if (difference != null) {
                throw new IllegalStateException("written and read again, the scene is another one at " + difference);
            }
            try {
                Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /** The text of the scene as a file in this folder, errors as {@link #write}, but not read back. */
    public static String text(Scene scene, Path folder) {
        Problems problems = new Problems();
        Path file = Path.of(scene.file());
        Value root = new Decoder(new SourceFiles(problems), problems, file)
                .decodeFile(SceneFormat.SCENE, SourcePlace.of(scene.file()));
        if (!(root instanceof Value.Fields f) || problems.any()) {
            throw problems.exception();
        }
        return dump(new SceneWriter(scene, f, SceneReader.read(file)).root(folder));
    }

    /** Words as comment lines of at most 100 characters. */
    private static String commented(String words) {
        StringBuilder lines = new StringBuilder();
        int column = 0;
        for (String word : words.isBlank() ? new String[0] : words.strip().split("\\s+")) {
            if (column == 0 || column + 1 + word.length() > 100) {
                lines.append(column == 0 ? "#" : "\n#");
                column = 1;
            }
            lines.append(' ').append(word);
            column += 1 + word.length();
        }
        return column == 0 ? "" : lines.append('\n').toString();
    }

    /** A wand as a file of its own. */
    public static String text(WandSpec wand) {
        return dump(WandWriting.wand(wand));
    }

    /** Every part from the records but the structure, for tests: nothing is taken over as it was written. */
    static String plainText(Scene scene, Path folder) {
        Problems problems = new Problems();
        Value root = new Decoder(new SourceFiles(problems), problems, Path.of(scene.file()))
                .decodeFile(SceneFormat.SCENE, SourcePlace.of(scene.file()));
        return dump(new SceneWriter(scene, (Value.Fields) root, null).root(folder));
    }

    private static String dump(Object root) {
        DumpSettings settings = DumpSettings.builder()
                .setDefaultFlowStyle(FlowStyle.AUTO)
                .setSchema(new CoreSchema())
                .setWidth(120)
                .build();
        return new Dump(settings).dumpToString(root);
    }

    private Map<String, Object> root(Path folder) {
        Map<String, Object> all = new LinkedHashMap<>();
        ValueWriting values = new ValueWriting(folder);
        for (Shape.Field field : SceneFormat.SCENE.fields()) {
            Object written =
                    known(field.key()) && changed(field.key()) ? item(field.key(), values) : kept(field, values);
            if (written != null) {
                all.put(field.key(), written);
            }
        }
        return all;
    }

    /** As its author wrote it. */
    private @Nullable Object kept(Shape.Field field, ValueWriting values) {
        Value value = source == null ? null : source.get(field.key());
        return source == null || value == null
                ? null
                : values.field(field, value, source.place().file());
    }

    private boolean changed(String key) {
        return before == null || !SceneContent.same(part(key, before), part(key, scene));
    }

    /** Whether {@link #part} and {@link #item} know the key; others stay as they were written. */
    private static boolean known(String key) {
        return KEYS.contains(key);
    }

    /** What of the scene a key stands for. */
    private static @Nullable Object part(String key, Scene s) {
        return switch (key) {
            case "title" -> s.title();
            case "story" -> s.story();
            case "cut" -> s.cuts();
            case "openings" -> s.states();
            case "bays" -> s.bayLabels();
            case "protected" -> s.protectedItems();
            case "obstacles" -> s.obstacles();
            case "wands" -> s.wands();
            case "product" -> s.product();
            case "supply" -> s.supply();
            case "entries" -> s.entries();
            case "passes" -> s.passes();
            case "hang" -> s.hangS();
            case "targets" -> s.targets();
            case "gravity" -> List.of(s.gravity(), s.gravityMPerS2());
            case "voxel" -> s.voxel();
            case "walls" -> s.walls();
            case "air" -> s.air();
            case "ambient" -> s.ambient();
            case "initial_fog" -> s.initialFog();
            case "numerics" -> List.of(s.sizeBins(), s.raysPerJet(), s.stationSpacingM(), s.transport(), s.raySeed());
            default -> throw new IllegalArgumentException(key);
        };
    }

    /** A part written from its records. */
    private @Nullable Object item(String key, ValueWriting values) {
        return switch (key) {
            case "title" -> scene.title();
            case "story" -> scene.story().isBlank() ? null : scene.story();
            case "cut" -> Written.list(scene.cuts(), JobWriting::opening);
            case "openings" -> JobWriting.openings(scene.states());
            case "bays" -> RoundWriting.bays(scene);
            case "protected" -> RoundWriting.protectedItems(scene);
            case "obstacles" -> RoundWriting.obstacles(scene);
            case "wands" -> wands(values);
            case "product" -> SupplyWriting.product(scene.product());
            case "supply" ->
                SupplyWriting.supply(scene.supply(), scene.product().densityKgPerM3());
            case "entries" -> Written.list(scene.entries(), JobWriting::entry);
            case "passes" -> Written.list(scene.passes(), JobWriting::pass);
            case "hang" -> Written.time(scene.hangS());
            case "targets" -> RoundWriting.targets(scene.targets());
            case "gravity" -> RoundWriting.gravity(scene);
            case "voxel" -> RoundWriting.voxel(scene.voxel());
            case "walls" -> scene.walls().name().toLowerCase(Locale.ROOT);
            case "air" -> RoundWriting.air(scene.air());
            case "ambient" -> RoundWriting.ambient(scene.ambient());
            case "initial_fog" -> RoundWriting.fog(scene.initialFog());
            case "numerics" -> RoundWriting.numerics(scene);
            default -> throw new IllegalArgumentException(key);
        };
    }

    /** Wands that stayed are named by their files again. */
    private Object wands(ValueWriting values) {
        return Written.list(scene.wands().keySet().stream().sorted().toList(), name -> {
            WandSpec wand = scene.wands().get(name);
            Object kept =
                    before != null && SceneContent.same(before.wands().get(name), wand) ? keptWand(name, values) : null;
            return kept != null ? kept : WandWriting.wand(Objects.requireNonNull(wand));
        });
    }

    private @Nullable Object keptWand(String name, ValueWriting values) {
        Value.Fields from = source;
        if (from != null && from.get("wands") instanceof Value.Items items) {
            for (Value v : items.values()) {
                if (v instanceof Value.Fields f && f.text("name").equals(name)) {
                    return values.item(
                            v, new Shape.FileOr(WandFormat.WAND), from.place().file());
                }
            }
        }
        return null;
    }
}
