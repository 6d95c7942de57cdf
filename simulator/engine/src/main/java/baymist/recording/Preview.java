package baymist.recording;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.scene.AirSpec;
import baymist.scene.PassSpec;
import baymist.scene.Scene;
import baymist.scene.SceneEdit;
import baymist.scene.VoxelSpec;
import baymist.scene.WandSpec;
import baymist.voxel.Voxelizer;
import java.util.Locale;

/**
 * A job so coarse that its film can be seen in seconds: for trying things out, never for numbers.
 *
 * <p>The structure, the wand's ways, the supply and the times are those of the job; what is coarse is named by {@link #sentence}. Air is
 * projected.
 */
public final class Preview {
    /** Cells that a preview aims at. */
    private static final int CELLS = 4_000;
    /** Fewest voxels across the structure along each axis. */
    private static final int ACROSS = 6;

    private static final int FRAMES = 60;
    private static final int BINS = 3;
    private static final int RAYS = 48;
    /** Stations of a whole job, about. */
    private static final int STATIONS = 24;

    private final Scene coarse;
    private final Vec3 voxelM;

    private Preview(Scene coarse, Vec3 voxelM) {
        this.coarse = coarse;
        this.voxelM = voxelM;
    }

    /**
     * The preview of a job.
     *
     * @param volumeM3 air of the cavity, m³, from any grid of it; it sets the voxels, so that edits of the same structure share them
     */
    public static Preview of(Scene scene, Cavity cavity, double volumeM3) {
        Vec3 own = Voxelizer.sizeM(cavity, scene.voxel());
        Vec3 extent = cavity.sheets().bounds().size();
        double edge = Math.cbrt(volumeM3 / CELLS);
        double[] size = new double[3];
        for (int axis = 0; axis < 3; axis++) {
            size[axis] = Math.max(own.get(axis), Math.min(edge, extent.get(axis) / ACROSS));
        }
        double spacing = Math.max(0.025, stroke(scene, extent.length()) / STATIONS);
        Scene coarse = SceneEdit.of(scene)
                .voxel(new VoxelSpec(size[0], size[1], size[2]))
                .air(
                        scene.air().mode() == AirSpec.Mode.STILL
                                ? scene.air()
                                : scene.air().withMode(AirSpec.Mode.PROJECTED, 0))
                .numerics(
                        Math.min(scene.sizeBins(), BINS),
                        Math.min(scene.raysPerJet(), RAYS),
                        Math.max(scene.stationSpacingM(), spacing))
                .done();
        return new Preview(coarse, new Vec3(size[0], size[1], size[2]));
    }

    /** Length of all draw-backs, m; one that begins as deep as the wand goes counts as long as wand and structure allow. */
    private static double stroke(Scene scene, double extentM) {
        double sum = 0;
        for (PassSpec pass : scene.passes()) {
            WandSpec wand = scene.wands().get(pass.wand());
            double deepest = wand == null ? extentM : Math.min(extentM, wand.lengthM());
            double from = Math.min(pass.fromDepthM(), deepest);
            sum += Math.max(0, from - pass.toDepthM());
        }
        return sum;
    }

    /** The job at the preview's resolution. */
    public Scene scene() {
        return coarse;
    }

    /** Runs it, errors as {@link Recorder#run}. */
    public Recording run(RunOptions options, RunObserver observer, LiveFilm live) {
        return Recorder.run(coarse, options, RecordingOptions.DEFAULT.withFrames(FRAMES), observer, live);
    }

    /** What is coarse about it, in one sentence for those who look at it. */
    public String sentence() {
        return String.format(
                Locale.ROOT,
                "Preview: voxels of about %.0f x %.0f x %.0f mm, %d droplet sizes, %d rays a jet, stations at least"
                        + " %.0f mm apart, projected air. Run the scene itself before you trust a number.",
                1e3 * voxelM.x(),
                1e3 * voxelM.y(),
                1e3 * voxelM.z(),
                coarse.sizeBins(),
                coarse.raysPerJet(),
                1e3 * coarse.stationSpacingM());
    }
}
