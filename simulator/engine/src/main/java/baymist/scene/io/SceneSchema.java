package baymist.scene.io;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * JSON Schema (draft 2020-12) of scene and model files, written from the same description by which {@link SceneReader} reads, for
 * editors that complete and check YAML while it is typed.
 *
 * <p>The schema holds what can be said about one value: keys, kinds, words, units, counts and plain numbers. Ranges of quantities and
 * what values must satisfy together are checked by the reader alone.
 */
public final class SceneSchema {
    private SceneSchema() {}

    /** Schema of a scene file; its {@code $defs} hold cavity, wand, tip and product. */
    public static String json() {
        return of(SceneFormat.SCENE);
    }

    /**
     * Schema of a model file.
     *
     * @param kind "cavity", "wand", "tip", "product" or "findings"
     */
    public static String json(String kind) {
        return switch (kind) {
            case "cavity" -> of(CavityFormat.CAVITY);
            case "wand" -> of(WandFormat.WAND);
            case "tip" -> of(ModelFormat.TIP);
            case "product" -> of(ModelFormat.PRODUCT);
            case "findings" -> of(FindingsFormat.FINDINGS);
            default ->
                throw new IllegalArgumentException(
                        "no model kind " + kind + "; cavity, wand, tip, product and findings are known");
        };
    }

    private static String of(Shape root) {
        ObjectNode schema = new SchemaWriter().schema(root);
        try {
            return new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(schema) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of nodes can always be written", e);
        }
    }
}
