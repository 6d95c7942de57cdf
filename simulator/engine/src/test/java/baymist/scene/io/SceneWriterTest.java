package baymist.scene.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SceneContent;
import baymist.scene.SceneEdit;
import baymist.scene.WandSpec;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SceneWriterTest {
    @TempDir
    Path folder;

    @Test
    void everySceneOfTheProjectReadsBackTheSame() throws IOException {
        List<Path> scenes = scenes();
        assertTrue(scenes.size() >= 8, "found " + scenes);
        for (Path file : scenes) {
            Scene scene = SceneReader.read(file);
            Path out = folder.resolve("kept-" + file.getFileName());
            SceneWriter.write(scene, out);
            assertTrue(SceneContent.same(scene, SceneReader.read(out)), file + " kept");
            assertEquals(scene.title(), SceneReader.read(out).title());
            assertEquals(scene.story(), SceneReader.read(out).story());
        }
    }

    @Test
    void everySceneWrittenFromItsRecordsAloneReadsBackTheSame() throws IOException {
        for (Path file : scenes()) {
            Scene scene = SceneReader.read(file);
            Path out = folder.resolve("plain-" + file.getFileName());
            Files.writeString(out, SceneWriter.plainText(scene, folder));
            assertNull(SceneContent.difference(scene, SceneReader.read(out)), file.toString());
        }
    }

    @Test
    void everyCavityOfTheProjectReadsBackTheSame() throws IOException {
        Path cavities = root().resolve("models/cavities");
        for (Path model : list(cavities)) {
            String inline = "\n" + Files.readString(model);
            Path file = Files.createDirectories(folder.resolve("in")).resolve(model.getFileName());
            Files.writeString(
                    file,
                    "baymist: 1\ntitle: " + model.getFileName() + "\ncavity:" + inline.replace("\n", "\n  ")
                            + "\nproduct: " + root().resolve("models/products/ambergale-40.yaml")
                            + "\nsupply: {droplets: tracer}\n");
            Scene scene = SceneReader.read(file);
            SceneWriter.write(scene, folder.resolve("out/" + model.getFileName()));
        }
    }

    @Test
    void everyWandOfTheProjectReadsBackTheSame() throws IOException {
        for (Path file : list(root().resolve("models/wands"))) {
            WandSpec wand = SceneReader.readWand(file);
            Path out = folder.resolve(file.getFileName());
            Files.writeString(out, SceneWriter.text(wand));
            assertNull(SceneContent.difference(wand, SceneReader.readWand(out)), file.toString());
        }
    }

    @Test
    void randomEditsOfPassesReadBackTheSame() throws IOException {
        Scene scene = SceneReader.read(root().resolve("scenes/wing-box.yaml"));
        Random random = new Random(20260);
        Path out = folder.resolve("edited.yaml");
        for (int k = 0; k < 40; k++) {
            Scene edited = SceneEdit.of(scene)
                    .eachPass(p -> draw(p, random))
                    .hangS(600 * random.nextDouble())
                    .done();
            SceneWriter.write(edited, out);
            assertTrue(SceneContent.same(edited, SceneReader.read(out)), "draw " + k);
        }
    }

    @Test
    void whatWasNotEditedStaysInItsAuthorsWords() throws IOException {
        Scene scene = SceneReader.read(root().resolve("scenes/wing-box.yaml"));
        Path out = folder.resolve("later.yaml");
        SceneWriter.write(scene.withHangS(120), out);
        String text = Files.readString(out);
        assertTrue(text.contains("pressure: 80 psi"), text);
        assertTrue(text.contains("moorhen-wing-box.yaml"), text);
        assertTrue(text.contains("hang: 120 s") || text.contains("hang: 2 min"), text);
    }

    @Test
    void nothingIsLeftBehindWhenTheStructureHasChangedSince() throws IOException {
        Path file = folder.resolve("box.yaml");
        String text = "baymist: 1\ntitle: box\ncavity: {family: block, name: box, size: [1 m, 1 m, 1 m]}\nproduct: "
                + root().resolve("models/products/ambergale-40.yaml") + "\nsupply: {droplets: tracer}\n";
        Files.writeString(file, text);
        Scene scene = SceneReader.read(file);
        Files.writeString(file, text.replace("[1 m", "[2 m"));
        Path out = folder.resolve("out.yaml");
        assertThrows(IllegalStateException.class, () -> SceneWriter.write(scene, out));
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(List.of(file), left.toList());
        }
    }

    private static PassSpec draw(PassSpec p, Random random) {
        double from = random.nextDouble() * 2;
        return p.withClockRad(2 * Math.PI * random.nextDouble())
                .withDepthsM(from, from * random.nextDouble())
                .withDrawBackMPerS(0.01 + random.nextDouble())
                .withHoldS(random.nextBoolean() ? 0 : 10 * random.nextDouble())
                .withHangS(100 * random.nextDouble());
    }

    private static List<Path> scenes() throws IOException {
        List<Path> readable = new ArrayList<>();
        for (Path file : list(root().resolve("scenes"))) {
            // Scenes of open meshes need files beside the project.
            if (!Files.readString(file).contains("shared/data")
                    || Files.isDirectory(root().resolve("../shared/data"))) {
                readable.add(file);
            }
        }
        return readable;
    }

    private static List<Path> list(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
        }
    }

    private static Path root() {
        Path at = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(at.resolve("scenes"))) {
            at = java.util.Objects.requireNonNull(at.getParent());
        }
        return at;
    }
}
