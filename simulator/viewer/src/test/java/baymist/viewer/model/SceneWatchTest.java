package baymist.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A change on disk is told once, also that of a file which the scene names, and that a file is gone or back. */
class SceneWatchTest {
    @Test
    void changesOfTheSceneAndOfWhatItNamesAreToldOnce(@TempDir Path folder) throws Exception {
        Path scene = folder.resolve("scene.yaml");
        Path model = folder.resolve("model.yaml");
        Files.writeString(model, "a: 1");
        Files.writeString(scene, "cavity: model.yaml");
        BlockingQueue<String> heard = new LinkedBlockingQueue<>();
        SceneWatch.Listener listener = new SceneWatch.Listener() {
            @Override
            public void changed(Path file) {
                heard.add("changed " + file.getFileName());
            }

            @Override
            public void gone(Path file) {
                heard.add("gone " + file.getFileName());
            }
        };
        try (SceneWatch watch = new SceneWatch(scene, 20, listener)) {
            assertNotNull(watch);
            assertNull(heard.poll(150, TimeUnit.MILLISECONDS));
            Files.writeString(model, "a: 1234");
            assertEquals("changed model.yaml", heard.poll(10, TimeUnit.SECONDS));
            assertNull(heard.poll(150, TimeUnit.MILLISECONDS));
            Files.writeString(scene, "cavity: model.yaml # other");
            assertEquals("changed scene.yaml", heard.poll(10, TimeUnit.SECONDS));
            Files.delete(scene);
            assertEquals("gone scene.yaml", heard.poll(10, TimeUnit.SECONDS));
            Files.writeString(scene, "cavity: model.yaml");
            assertEquals("changed scene.yaml", heard.poll(10, TimeUnit.SECONDS));
            assertNull(heard.poll(150, TimeUnit.MILLISECONDS));
        }
    }
}
