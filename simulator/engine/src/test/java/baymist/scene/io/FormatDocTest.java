package baymist.scene.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * The tables of docs/formats are those of the format. After a change of the format run this test with
 * {@code -Dbaymist.docs=write} to write them anew.
 */
class FormatDocTest {
    private static final Path DOCS = Path.of("../../docs");
    private static final String BEGIN = "<!-- fields begin -->\n";
    private static final String END = "<!-- fields end -->";

    private final Map<String, Shape.Group> groups = new LinkedHashMap<>();

    /** Groups whose tables stand in the file that is being checked. */
    private Set<String> here = Set.of();

    private void collect(Shape shape) {
        if (shape instanceof Shape.Group g && groups.putIfAbsent(g.name(), g) == null) {
            g.fields().forEach(f -> collect(f.shape()));
        } else if (shape instanceof Shape.Family f) {
            f.members().values().forEach(this::collect);
        } else if (shape instanceof Shape.Either e) {
            e.options().forEach(this::collect);
        } else if (shape instanceof Shape.FileOr f) {
            collect(f.content());
        } else if (shape instanceof Shape.ListOf l) {
            collect(l.item());
        } else if (shape instanceof Shape.MapOf m) {
            collect(m.value());
        }
    }

    private String value(Shape shape) {
        if (shape instanceof Shape.Group g) {
            return "[" + g.name() + "](" + (here.contains(g.name()) ? "" : "model.md") + "#" + g.name() + ")";
        }
        if (shape instanceof Shape.Family f) {
            return "a " + f.name() + " ([model.md](model.md))";
        }
        if (shape instanceof Shape.FileOr f) {
            return "file or " + value(f.content());
        }
        if (shape instanceof Shape.ListOf l) {
            return (l.fewest() == l.most() ? l.fewest() + " of " : "list of ") + value(l.item());
        }
        if (shape instanceof Shape.MapOf m) {
            return "mapping of " + value(m.value());
        }
        if (shape instanceof Shape.Either e) {
            return String.join(" or ", e.options().stream().map(this::value).toList());
        }
        return ShapeWords.of(shape);
    }

    private String table(Shape.Group g) {
        StringBuilder out = new StringBuilder("### " + g.name() + "\n\n" + g.doc() + "\n\n");
        for (Shape.Pick pick : g.picks()) {
            out.append(pick.required() ? "Exactly one of `" : "At most one of `")
                    .append(String.join("`, `", pick.keys()))
                    .append("`.\n\n");
        }
        out.append("| key | value | default | meaning |\n|---|---|---|---|\n");
        for (Shape.Field f : g.fields()) {
            String fallback = f.required()
                    ? "required"
                    : f.defaultText().isEmpty() || f.defaultText().equals("{}") ? "" : "`" + f.defaultText() + "`";
            out.append("| `" + f.key() + "` | " + value(f.shape()) + " | " + fallback + " | " + f.doc() + " |\n");
        }
        return out.append('\n').toString();
    }

    private void check(String file, Map<String, Shape.Group> wanted) throws IOException {
        here = wanted.keySet();
        StringBuilder tables = new StringBuilder();
        wanted.values().forEach(g -> tables.append(table(g)));
        Path path = DOCS.resolve("formats").resolve(file);
        String text = Files.readString(path);
        int from = text.indexOf(BEGIN) + BEGIN.length();
        int to = text.indexOf(END);
        assertTrue(from >= BEGIN.length() && to >= from, file + " has lost its marks");
        if ("write".equals(System.getProperty("baymist.docs"))) {
            Files.writeString(path, text.substring(0, from) + "\n" + tables + text.substring(to));
            return;
        }
        assertEquals(("\n" + tables), text.substring(from, to), file + ": run this test with -Dbaymist.docs=write");
    }

    @Test
    void tablesOfTheDocsAreThoseOfTheFormat() throws IOException {
        collect(CavityFormat.CAVITY);
        collect(WandFormat.WAND);
        collect(ModelFormat.PRODUCT);
        Map<String, Shape.Group> models = new LinkedHashMap<>(groups);
        collect(SceneFormat.SCENE);
        Map<String, Shape.Group> scene = new LinkedHashMap<>(groups);
        scene.keySet().removeAll(models.keySet());
        check("model.md", models);
        check("scene.md", scene);
        collect(FindingsFormat.FINDINGS);
        Map<String, Shape.Group> findings = new LinkedHashMap<>(groups);
        findings.keySet().removeAll(models.keySet());
        findings.keySet().removeAll(scene.keySet());
        check("findings.md", findings);
    }

    @Test
    void everyMessageIdHasItsParagraph() throws IOException {
        String text = Files.readString(DOCS.resolve("troubleshooting.md"));
        for (SceneProblem p : SceneProblem.values()) {
            assertTrue(text.contains("\n### " + p.id() + " "), p.id() + " is missing in docs/troubleshooting.md");
        }
    }
}
