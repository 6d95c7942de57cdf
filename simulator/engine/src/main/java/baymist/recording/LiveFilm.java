package baymist.recording;

import baymist.cavity.Cavity;
import baymist.voxel.VoxelGrid;

/** Is shown the film while a run goes on, so that people see the first of it long before the end. */
@FunctionalInterface
public interface LiveFilm {
    /** Looks away. */
    LiveFilm NONE = (cavity, grid, timeS, filmM) -> {};

    /**
     * The film at the end of a moment; called on the run's own thread, in order.
     *
     * @param filmM wet build, m, [surfels]; may be kept, must not be written to
     */
    void film(Cavity cavity, VoxelGrid grid, double timeS, float[] filmM);
}
