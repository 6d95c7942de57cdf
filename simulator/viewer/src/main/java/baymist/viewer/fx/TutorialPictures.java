package baymist.viewer.fx;

import baymist.recording.LiveFilm;
import baymist.recording.Preview;
import baymist.recording.Recorder;
import baymist.recording.Recording;
import baymist.recording.RecordingOptions;
import baymist.run.CheckResult;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.run.Simulation;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.scene.io.SceneReader;
import baymist.viewer.ViewRequest;
import baymist.viewer.draw.View;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Makes the pictures of the tutorials: {@code TutorialPictures SCENES_FOLDER PICTURES_FOLDER}. The jobs run coarsely, so that all of them
 * take a minute or two; the tutorials say so. Needs a display.
 */
public final class TutorialPictures {
    private static final int WIDTH = 1120;
    private static final int HEIGHT = 640;

    private final Path scenes;
    private final Path pictures;

    private TutorialPictures(Path scenes, Path pictures) {
        this.scenes = scenes;
        this.pictures = pictures;
    }

    /** Makes all of them and prints their names with what stands in the tutorials' tables. */
    public static void main(String[] args) throws IOException, InterruptedException {
        PictureProgram.needDisplay();
        TutorialPictures t = new TutorialPictures(Path.of(args[0]), Path.of(args[1]));
        t.story("control-surface-pin-forward", "pin-forward", 0.012, View.ISO, 6, View.TOP);
        t.story("control-surface-pin-aft", "pin-aft", 0.012, View.ISO, 6, View.TOP);
        t.story("wing-box-rod", "wing-box", 0.03, View.ISO, 8, View.TOP);
        t.story("tail-cone", "tail-cone", 0.025, View.ISO, 8, View.SIDE);
        System.exit(0);
    }

    private void story(String file, String name, double voxelM, View during, double atS, View after)
            throws IOException, InterruptedException {
        Scene scene = SceneReader.read(scenes.resolve(file + ".yaml"));
        RunOptions two = new RunOptions(2);
        CheckResult check = Simulation.check(scene, two, RunObserver.NONE);
        Scene coarse = Preview.of(scene, check.cavity(), check.grid().totalVolumeM3())
                .scene()
                .withVoxel(new VoxelSpec(voxelM, voxelM, voxelM));
        Recording r = Recorder.run(coarse, two, RecordingOptions.DEFAULT, RunObserver.NONE, LiveFilm.NONE);
        draw(r, during, Math.min(atS, Desk.lastSprayS(r) * 0.6), name + "-during.png");
        draw(r, during, r.endS(), name + "-end.png");
        draw(r, after, r.endS(), name + "-" + after.word() + ".png");
        System.out.printf(
                Locale.ROOT,
                "%s: %.1f %% reached, %.1f g of product, %d bare places%n",
                file,
                100 * r.result().coverage().total().reached(),
                1e3 * r.result().ledger().sprayedKg(),
                r.result().coverage().unreached().size());
    }

    private void draw(Recording r, View view, double timeS, String file) throws IOException, InterruptedException {
        PictureProgram.draw(r, view, timeS, ViewRequest.Look.PLAIN, WIDTH, HEIGHT)
                .write(pictures.resolve(file));
        System.out.println("written: " + file);
    }
}
