package baymist.study;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.numeric.Workers;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;

/** Sheets and voxels that a planning run was made on, made again: results keep film alone. */
public record StudyShape(Cavity cavity, VoxelGrid grid) {
    /** The shape of a job; the surfels are in the order of {@link StudyResult#filmM}. */
    public static StudyShape of(Scene scene, Planning planning) {
        Cavity cavity = CavityBuilder.build(scene);
        try (Workers one = new Workers(1)) {
            return new StudyShape(
                    cavity,
                    Voxelizer.voxelize(cavity, planning.of(scene, cavity).voxel(), one));
        }
    }

    /**
     * Film of another job on the surfels of this one, m, [surfels]; a surfel that the other one does not have (a hole is cut there) is NaN.
     *
     * @param other the shape of that job, on the same voxels
     */
    public double[] filmOf(StudyShape other, double[] filmM) {
        java.util.Map<Long, Integer> at = new java.util.HashMap<>();
        for (int s = 0; s < other.grid.surfels().count(); s++) {
            at.putIfAbsent(other.key(s), s);
        }
        double[] film = new double[grid.surfels().count()];
        for (int s = 0; s < film.length; s++) {
            Integer o = at.get(key(s));
            film[s] = o == null ? Double.NaN : filmM[o];
        }
        return film;
    }

    /** Cell, part and the side that it looks to. */
    private long key(int s) {
        double x = grid.surfels().normalX()[s];
        double y = grid.surfels().normalY()[s];
        double z = grid.surfels().normalZ()[s];
        double most = Math.max(Math.abs(x), Math.max(Math.abs(y), Math.abs(z)));
        int axis = Math.abs(x) == most ? 0 : Math.abs(y) == most ? 1 : 2;
        int side = 2 * axis + ((axis == 0 ? x : axis == 1 ? y : z) > 0 ? 1 : 0);
        long lattice = grid.latticeOfCell(grid.surfels().cell()[s]);
        return (lattice * 1024 + grid.surfels().part()[s]) * 8 + side;
    }
}
