package baymist.run;

import baymist.geom.Vec3;
import baymist.problem.Finding;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import java.util.List;

/**
 * Runs a scene at three voxel sizes, stated, coarser and finer, and says whether its coverage depends on them. Everything else
 * stays: rays, stations, size bins, time. Sizes are snapped to the structure like any others, so their ratio differs a little from the wanted one;
 * what is reckoned with are the sizes as snapped.
 */
public final class VoxelStudy {
    /** Ratio of neighbouring sizes; Roache asks for 1.1 at least, Celik et al. (2008) for 1.3. */
    public static final double RATIO = 1.3;

    private VoxelStudy() {}

    /**
     * The result at the stated size, with {@link RunResult#convergence} and, where it is not converged, finding CNV-001.
     *
     * @param ratio ratio of neighbouring voxel sizes, 1.1 to 2
     * @throws IllegalArgumentException if the ratio lies outside, or two sizes snap to the same voxels
     */
    public static RunResult run(Scene scene, double ratio, RunOptions options, RunObserver observer) {
        if (!(ratio >= 1.1 && ratio <= 2)) {
            throw new IllegalArgumentException("ratio of voxel sizes " + ratio + ", 1.1 to 2 expected");
        }
        // Cells grow with the third power of the ratio and steps with the first.
        double fine = Math.pow(ratio, 4);
        double coarse = 1 / fine;
        double all = 1 + fine + coarse;
        RunResult stated = Simulation.run(scene, options, new Part(observer, "stated voxels: ", 0, 1 / all));
        Vec3 voxel = stated.grid().sizeM();
        CoverageConvergence.Grid coarser = CoverageConvergence.Grid.of(Simulation.run(
                scene.withVoxel(scaled(voxel, ratio)),
                options,
                new Part(observer, "coarser voxels: ", 1 / all, coarse / all)));
        CoverageConvergence.Grid finer = CoverageConvergence.Grid.of(Simulation.run(
                scene.withVoxel(scaled(voxel, 1 / ratio)),
                options,
                new Part(observer, "finer voxels: ", (1 + coarse) / all, fine / all)));
        CoverageConvergence c = CoverageConvergence.of(List.of(finer, CoverageConvergence.Grid.of(stated), coarser));
        return studied(stated, c);
    }

    /** A result with what a study of its voxel size found, and CNV-001 where it is not converged. */
    public static RunResult studied(RunResult stated, CoverageConvergence c) {
        List<Finding> findings = c.converged()
                ? List.of()
                : List.of(new Finding(
                        "CNV-001",
                        Severity.WARNING,
                        SourcePlace.of(stated.scene().file()),
                        c.verdict() + "; use smaller voxels, or take the spread as the uncertainty of the result"));
        return stated.with(c, findings);
    }

    private static VoxelSpec scaled(Vec3 voxel, double by) {
        return new VoxelSpec(by * voxel.x(), by * voxel.y(), by * voxel.z());
    }

    /** Tells the whole study's observer about one of its runs. */
    private record Part(RunObserver whole, String lead, double from, double share) implements RunObserver {
        @Override
        public void stage(String name) {
            whole.stage(lead + name);
        }

        @Override
        public void note(String text) {
            whole.note(lead + text);
        }

        @Override
        public void progress(double done, double jobTimeS) {
            whole.progress(Math.min(1, from + share * done), jobTimeS);
        }

        @Override
        public boolean cancelled() {
            return whole.cancelled();
        }
    }
}
