package baymist.run;

import baymist.cavity.Cavity;
import baymist.cavity.CavityBuilder;
import baymist.coverage.SeamMap;
import baymist.geom.Bvh;
import baymist.numeric.Workers;
import baymist.scene.Scene;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import org.jspecify.annotations.Nullable;

/**
 * What a job is sprayed in: sheets, voxels, ray tree, seams, each made when it is first asked for. None of it depends on passes, wands, supply or air, so
 * jobs that differ in those alone may share one; see {@link Structures}. Threads may ask at once: one makes it, the others wait.
 */
public final class Structure {
    private final Scene scene;
    private final Cavity cavity;
    private volatile @Nullable VoxelGrid grid;
    private @Nullable Bvh tree;
    private @Nullable SeamMap seams;

    private Structure(Scene scene, Cavity cavity) {
        this.scene = scene;
        this.cavity = cavity;
    }

    /** The structure of a scene with its sheets built; errors as {@link CavityBuilder#build(Scene)}. */
    static Structure of(Scene scene) {
        return new Structure(scene, CavityBuilder.build(scene));
    }

    static Structure of(Scene scene, Cavity cavity) {
        return new Structure(scene, cavity);
    }

    /** What an earlier run of a scene with the same sheets and voxels was sprayed in. */
    static Structure of(Scene scene, Cavity cavity, VoxelGrid grid) {
        Structure structure = new Structure(scene, cavity);
        structure.grid = grid;
        return structure;
    }

    /** Sheets and openings. */
    public Cavity cavity() {
        return cavity;
    }

    /** Voxels with the bays' names; errors as {@link Voxelizer#voxelize}, GEO-004, and RUN-008 without memory for them. */
    public synchronized VoxelGrid grid(Workers workers) {
        VoxelGrid made = grid;
        if (made == null) {
            MemoryCheck.voxels(scene, cavity, MemoryBudget.ofHeap());
            made = BayNaming.named(Voxelizer.voxelize(cavity, scene.voxel(), workers), scene.bayLabels());
            grid = made;
        }
        return made;
    }

    /** Ray tree of the whole sheets. */
    synchronized Bvh tree() {
        Bvh made = tree;
        if (made == null) {
            made = Bvh.of(cavity.sheets());
            tree = made;
        }
        return made;
    }

    /** Where parts meet, on the voxels. */
    synchronized SeamMap seams(Workers workers) {
        SeamMap made = seams;
        if (made == null) {
            made = SeamMap.of(cavity, grid(workers), scene.targets().seamCreepM());
            seams = made;
        }
        return made;
    }

    /** Forgets voxels and seams, whose memory is wanted; they are made anew when they are asked for again. */
    synchronized void letGo() {
        grid = null;
        seams = null;
    }

    /** Cells that are held; 0 before the voxels are made. */
    long cells() {
        VoxelGrid made = grid;
        return made == null ? 0 : made.cellCount();
    }
}
