package baymist.run;

import baymist.coverage.Fractions;
import baymist.geom.Vec3;
import baymist.numeric.GridConvergence;
import java.util.List;
import java.util.Locale;

/**
 * Coverage of one scene at three voxel sizes.
 *
 * @param grids finest first
 * @param reached share of area reached
 * @param protectedShare share of area protected
 * @param meanFilmM mean film, m
 */
public record CoverageConvergence(
        List<Grid> grids, GridConvergence reached, GridConvergence protectedShare, GridConvergence meanFilmM) {
    /** Largest spread of a share that counts as converged: three points of a hundred. */
    public static final double LARGEST_SPREAD = 0.03;

    public CoverageConvergence {
        grids = List.copyOf(grids);
    }

    /**
     * One of the sizes.
     *
     * @param voxelM voxel as snapped, m
     * @param cells cavity cells
     * @param reached share of area at or above haze, 0..1
     * @param protectedShare share of area at or above the target build, 0..1
     * @param meanFilmM m
     */
    public record Grid(Vec3 voxelM, int cells, double reached, double protectedShare, double meanFilmM) {
        static Grid of(RunResult r) {
            Fractions all = r.coverage().total();
            return new Grid(
                    r.grid().sizeM(), r.grid().cellCount(), all.reached(), all.protectedShare(), all.meanFilmM());
        }

        /** Edge of a cube of the voxel's volume, m. */
        public double sizeM() {
            return Math.cbrt(voxelM.x() * voxelM.y() * voxelM.z());
        }
    }

    /**
     * What three grids say.
     *
     * @param grids finest first
     */
    public static CoverageConvergence of(List<Grid> grids) {
        double[] size = grids.stream().mapToDouble(Grid::sizeM).toArray();
        return new CoverageConvergence(
                grids,
                GridConvergence.of(
                        size, grids.stream().mapToDouble(Grid::reached).toArray()),
                GridConvergence.of(
                        size, grids.stream().mapToDouble(Grid::protectedShare).toArray()),
                GridConvergence.of(
                        size, grids.stream().mapToDouble(Grid::meanFilmM).toArray()));
    }

    /** Whether reached and protected shares each lie within {@link #LARGEST_SPREAD}. */
    public boolean converged() {
        return reached.spread() <= LARGEST_SPREAD && protectedShare.spread() <= LARGEST_SPREAD;
    }

    /** The verdict in a sentence. */
    public String verdict() {
        return String.format(
                Locale.ROOT,
                "%s: at voxels of %.3g to %.3g mm the reached share spreads over %.1f points and the protected share over %.1f points (%.0f allowed)",
                converged() ? "converged" : "not converged",
                1e3 * grids.get(0).sizeM(),
                1e3 * grids.get(grids.size() - 1).sizeM(),
                100 * reached.spread(),
                100 * protectedShare.spread(),
                100 * LARGEST_SPREAD);
    }
}
