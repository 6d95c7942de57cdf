package baymist.cli;

import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.units.Dimension;
import baymist.units.Quantities;
import baymist.units.QuantityException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The scene and what may be changed about it from the command line. */
final class SceneOptions {
    @Spec(Spec.Target.MIXEE)
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "SCENE", description = "Scene file (YAML).")
    @SuppressWarnings("NullAway.Init")
    Path scene;

    @Option(
            names = "--voxel",
            paramLabel = "SIZE",
            description =
                    "Voxel size instead of the scene's: one length with its unit (\"5 mm\"), or three for x, y and"
                            + " z (\"4 mm x 10 mm x 2 mm\").")
    @Nullable
    String voxel;

    @Option(names = "--threads", paramLabel = "N", description = "Worker threads; the result does not depend on it.")
    @Nullable
    Integer threads;

    /** Reads the scene and applies the changes. */
    Scene read(Stages stages) {
        VoxelSpec size = voxelSize();
        Scene read = stages.read(scene);
        return size == null ? read : read.withVoxel(size);
    }

    /** The size stated instead of the scene's, or null. */
    @Nullable
    VoxelSpec voxelSize() {
        return voxel == null ? null : voxelSpec(voxel);
    }

    int threadCount() {
        int count = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
        if (count < 1 || count > 1024) {
            throw new ParameterException(spec.commandLine(), "--threads " + count + ": 1 to 1024 expected");
        }
        return count;
    }

    private VoxelSpec voxelSpec(String text) {
        String[] sizes = text.split("\\s+x\\s+|\\s*,\\s*", -1);
        if (sizes.length != 1 && sizes.length != 3) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--voxel \"" + text
                            + "\": one length or three expected, such as \"5 mm\" or \"4 mm x 10 mm x 2 mm\"");
        }
        double[] m = new double[3];
        for (int axis = 0; axis < 3; axis++) {
            m[axis] = lengthM("--voxel", sizes.length == 1 ? sizes[0] : sizes[axis]);
        }
        return new VoxelSpec(m[0], m[1], m[2]);
    }

    /** A length of either sign as an option states it, m. */
    double coordinateM(String option, String text) {
        try {
            return Quantities.parse(text.strip(), Dimension.LENGTH);
        } catch (QuantityException e) {
            throw new ParameterException(spec.commandLine(), option + ": " + e.getMessage(), e);
        }
    }

    /** A length above 0 as an option states it, m. */
    double lengthM(String option, String text) {
        double m = coordinateM(option, text);
        if (!(m > 0)) {
            throw new ParameterException(spec.commandLine(), option + " \"" + text + "\": a length above 0 expected");
        }
        return m;
    }
}
