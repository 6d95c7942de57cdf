package baymist.scene.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.problem.SceneException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

class SceneSchemaTest {
    private static final Path ROOT = Path.of("../..");
    private static final Path BROKEN = Path.of("src/test/resources/broken");

    /** Ids of problems that a schema sees: keys, kinds, words, counts, units, plain numbers. */
    private static final Set<String> STRUCTURE = Set.of(
            "SCN-020", "SCN-021", "SCN-022", "SCN-023", "SCN-024", "SCN-025", "SCN-026", "SCN-027", "SCN-028",
            "SCN-030", "SCN-031", "SCN-032", "SCN-033");

    /** Takes a second to compile, so it is shared; it keeps no state. */
    private static final Schema SCENE = schema(SceneSchema.json());

    private static Schema schema(String json) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(json);
    }

    private static List<Error> validate(Schema schema, Path yaml) throws IOException {
        Object tree = new Load(
                        LoadSettings.builder().setAllowDuplicateKeys(true).build())
                .loadFromString(Files.readString(yaml));
        return schema.validate(new ObjectMapper().writeValueAsString(tree), InputFormat.JSON);
    }

    @Test
    void everySceneOfTheProjectPasses() throws IOException {
        List<Path> scenes = new ArrayList<>();
        try (Stream<Path> list = Files.list(ROOT.resolve("scenes"))) {
            list.filter(p -> p.toString().endsWith(".yaml")).forEach(scenes::add);
        }
        scenes.add(BROKEN.resolve("whole.yaml"));
        assertTrue(scenes.size() >= 5);
        for (Path scene : scenes) {
            assertEquals(List.of(), validate(SCENE, scene), scene.toString());
        }
    }

    @ParameterizedTest
    @CsvSource({"cavities, cavity", "wands, wand", "wands/tips, tip", "products, product"})
    void everyModelOfTheProjectPasses(String folder, String kind) throws IOException {
        Schema schema = schema(SceneSchema.json(kind));
        try (Stream<Path> list = Files.list(ROOT.resolve("models").resolve(folder))) {
            for (Path model : list.filter(p -> p.toString().endsWith(".yaml")).toList()) {
                assertEquals(List.of(), validate(schema, model), model.toString());
            }
        }
    }

    @Test
    void schemaRefusesWhatTheReaderRefusesForItsStructure() throws IOException {
        int refused = 0;
        for (String scene : BrokenScenesTest.table().keySet()) {
            Path file = BROKEN.resolve(scene);
            SceneException e = assertThrows(SceneException.class, () -> SceneReader.read(file));
            boolean inThisFile = e.findings().stream()
                    .anyMatch(
                            f -> STRUCTURE.contains(f.id()) && f.place().file().equals(file.toString()));
            boolean knownToTheReaderAlone =
                    Set.of("point-without-mass.yaml", "list-as-key.yaml").contains(scene);
            if (inThisFile && !knownToTheReaderAlone) {
                assertFalse(validate(SCENE, file).isEmpty(), scene);
                refused++;
            }
        }
        assertTrue(refused > 25, "only " + refused);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "bore: 2 um",
                "bore: 2 µm",
                "bore: 3/64 in",
                "bore: \"#30 drill\"",
                "bore: No. 30 drill",
                "bore: 1 3/8 in"
            })
    void schemaTakesEverySpellingThatTheReaderTakes(String bore, @org.junit.jupiter.api.io.TempDir Path folder)
            throws IOException {
        String text = Files.readString(BROKEN.resolve("whole.yaml"))
                .replace("bore: 2 mm", bore)
                .replace("outer_diameter: 0.25 in", "outer_diameter: 2 in");
        Path file = Files.writeString(folder.resolve("s.yaml"), text);
        assertEquals("broken on purpose", SceneReader.read(file).title());
        assertEquals(List.of(), validate(SCENE, file));
    }

    @Test
    void schemaIsAValidSchemaAndSaysItsDraft() {
        String json = SceneSchema.json();
        assertTrue(json.contains("https://json-schema.org/draft/2020-12/schema"));
        Schema meta = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(com.networknt.schema.SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertEquals(List.of(), meta.validate(json, InputFormat.JSON));
        assertEquals(json, SceneSchema.json(), "the same text every time");
        assertThrows(IllegalArgumentException.class, () -> SceneSchema.json("hangar"));
    }
}
