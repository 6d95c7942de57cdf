package baymist.scene.io;

import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.scene.Scene;
import baymist.scene.WandSpec;
import java.nio.file.Path;

/**
 * Reads a scene file and the model files that it names.
 *
 * <p>The format is described once, in {@link SceneFormat}, {@link CavityFormat} and {@link ModelFormat};
 * docs/formats/scene.md and model.md explain it, and {@link SceneSchema} publishes it.
 */
public final class SceneReader {
    private SceneReader() {}

    /**
     * Reads and validates a scene.
     *
     * @param file scene file; model files are sought relative to the file that names them
     * @return the complete scene in SI units
     * @throws SceneException with every problem found: file, 1-based line, field path (list items counted from 1), the value found
     *     and what would be right; ids SCN-001 to SCN-083, see docs/troubleshooting.md
     */
    public static Scene read(Path file) {
        Problems problems = new Problems();
        SourceFiles files = new SourceFiles(problems);
        Value root = new Decoder(files, problems, file).decodeFile(SceneFormat.SCENE, SourcePlace.of(file.toString()));
        Scene scene = root instanceof Value.Fields f ? new SceneAssembler(files, problems).scene(file, f) : null;
        if (scene == null) {
            throw problems.exception();
        }
        return scene;
    }

    /**
     * Reads and validates a wand file alone.
     *
     * @throws SceneException with every problem found, as {@link #read}
     */
    public static WandSpec readWand(Path file) {
        Problems problems = new Problems();
        SourceFiles files = new SourceFiles(problems);
        Value root = new Decoder(files, problems, file).decodeFile(WandFormat.WAND, SourcePlace.of(file.toString()));
        WandSpec wand = root instanceof Value.Fields f ? new WandAssembler(problems).wand(f) : null;
        if (wand == null || problems.any()) {
            throw problems.exception();
        }
        return wand;
    }
}
