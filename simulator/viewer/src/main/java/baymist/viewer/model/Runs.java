package baymist.viewer.model;

import baymist.recording.LiveFilm;
import baymist.recording.Preview;
import baymist.recording.Recorder;
import baymist.recording.Recording;
import baymist.recording.RecordingOptions;
import baymist.run.CheckResult;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.io.SceneReader;
import java.nio.file.Path;

/** The work that a window hands to its {@link JobRunner}. */
public final class Runs {
    private Runs() {}

    /** A scene that was read and looked at, nothing sprayed yet. */
    public record Opened(Scene scene, CheckResult check) {}

    /** A preview and what is coarse about it. */
    public record Previewed(Recording recording, String sentence) {}

    /** Reads a scene and builds its structure. */
    public static Work<Opened> open(Path file, RunOptions options) {
        return observer -> {
            observer.stage("reading the scene");
            Scene scene = SceneReader.read(file);
            return new Opened(scene, Simulation.check(scene, options, observer));
        };
    }

    /** The job as it stands. */
    public static Work<Recording> whole(Scene scene, RunOptions options, LiveFilm live) {
        return observer -> Recorder.run(scene, options, RecordingOptions.DEFAULT, observer, live);
    }

    /** The job coarse, within seconds; {@code opened} is the scene that the structure comes from. */
    public static Work<Previewed> preview(Scene scene, Opened opened, RunOptions options, LiveFilm live) {
        return observer -> {
            Preview preview = Preview.of(
                    scene, opened.check().cavity(), opened.check().grid().totalVolumeM3());
            return new Previewed(preview.run(options, observer, live), preview.sentence());
        };
    }
}
