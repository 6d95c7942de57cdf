package baymist.viewer;

import baymist.scene.VoxelSpec;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * What to show.
 *
 * @param sceneFile scene file
 * @param voxel size of the voxels instead of the scene's, or null
 * @param threads worker threads of a run, at least 1
 * @param look how it looks
 */
public record ViewRequest(Path sceneFile, @Nullable VoxelSpec voxel, int threads, Look look) {
    /**
     * Looks of the window.
     *
     * @param dark light lettering on a dark ground
     * @param mils film in mils instead of micrometres
     * @param scale size of lettering and controls, 1 = as the display has it
     */
    public record Look(boolean dark, boolean mils, double scale) {
        public static final Look PLAIN = new Look(false, false, 1);

        public Look {
            if (!(scale >= 0.5 && scale <= 4)) {
                throw new IllegalArgumentException("scale " + scale + ", 0.5 to 4 expected");
            }
        }
    }
}
