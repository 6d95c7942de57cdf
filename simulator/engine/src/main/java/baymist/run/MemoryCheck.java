package baymist.run;

import baymist.cavity.Cavity;
import baymist.geom.Vec3;
import baymist.numeric.Workers;
import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import baymist.scene.Scene;
import baymist.scene.VoxelSpec;
import baymist.units.Quantities;
import baymist.voxel.VoxelGrid;
import baymist.voxel.Voxelizer;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Holds what a run needs against the memory there is, before the run takes it: a refusal in words instead of an error in the middle. */
public final class MemoryCheck {
    /** Id of the refusal. */
    public static final String ID = "RUN-008";

    /** Bytes of a lattice cell while voxels are made, those outside the cavity included (docs/theory/voxels.md, 11). */
    private static final long MAKING = 44;

    /** Bytes of a cavity cell that its voxel takes on top, with faces and surfels, while voxels are made (docs/theory/voxels.md, 11). */
    private static final long FILLED = 110;

    /** Cells from which it is worth while to look first how many lie inside. */
    private static final long MANY = 1_000_000;

    /** Lattice cells with which that is looked at. */
    private static final double LOOKED_AT = 60_000;

    /** Bytes of a lattice cell that a run takes at most before it is known how many are filled; says how much coarser voxels are tried. */
    private static final long RUNNING = 700;

    /** Coarser voxels are made longer by this from trial to trial: whole cells span the cavity, and coarser ones may get finer air. */
    private static final double LONGER = 1.08;

    private static final int TRIALS = 12;

    private MemoryCheck() {}

    /** What a job would take in a grid. */
    @FunctionalInterface
    interface Reckoning {
        MemoryEstimate in(VoxelGrid grid);
    }

    /**
     * To be asked before voxels are made.
     *
     * @throws SceneException RUN-008 if not even the voxels have room
     */
    public static void voxels(Scene scene, Cavity cavity, MemoryBudget memory) {
        long cells = Voxelizer.latticeCells(cavity, scene.voxel());
        long needed = MAKING * cells;
        if (needed <= memory.bytes() && cells > MANY && (MAKING + FILLED) * cells > memory.bytes()) {
            needed += Math.round(FILLED * cells * filledShare(scene, cavity, cells));
        }
        if (needed > memory.bytes()) {
            double longer = Math.cbrt((double) RUNNING * cells / Math.max(1_000_000, memory.bytes()));
            Vec3 sizeM = Voxelizer.sizeM(cavity, scene.voxel()).times(longer);
            String text = text("making the voxels", needed, fit(voxel(sizeM)), memory);
            throw new SceneException(ID, place(scene), text);
        }
    }

    /** About how much of the lattice lies inside, from coarse voxels; 0 if the cavity is lost in them. */
    private static double filledShare(Scene scene, Cavity cavity, long cells) {
        Vec3 size = Voxelizer.sizeM(cavity, scene.voxel()).times(Math.cbrt(cells / LOOKED_AT));
        try (Workers one = new Workers(1)) {
            VoxelGrid g = Voxelizer.voxelize(cavity, new VoxelSpec(size.x(), size.y(), size.z()), one);
            return g.cellCount() / ((g.nx() - 2.0) * (g.ny() - 2.0) * (g.nz() - 2.0));
        } catch (SceneException lost) {
            return 0;
        }
    }

    /**
     * To be asked before a job's arrays are made.
     *
     * @return bytes that it takes
     * @throws SceneException RUN-008 if they have no room
     */
    static long job(Scene scene, Cavity cavity, VoxelGrid grid, Reckoning reckoning, MemoryBudget memory) {
        Finding refusal = finding(Severity.ERROR, scene, cavity, grid, reckoning, memory);
        if (refusal != null) {
            throw new SceneException(List.of(refusal));
        }
        return reckoning.in(grid).totalBytes();
    }

    /**
     * Bytes that fog and projected air of one job take in a grid that is there already.
     *
     * @throws SceneException RUN-008 if they have no room beside the grid
     */
    public static long room(Scene scene, Cavity cavity, VoxelGrid grid, MemoryBudget memory) {
        MemoryEstimate m = MemoryEstimate.of(grid, scene.sizeBins());
        return job(scene, cavity, grid, g -> MemoryEstimate.of(g, scene.sizeBins()), memory) - m.gridBytes();
    }

    /** The refusal, as an error or as a warning for a scene that is only looked at; null if there is room. */
    static @Nullable Finding finding(
            Severity severity, Scene scene, Cavity cavity, VoxelGrid grid, Reckoning reckoning, MemoryBudget memory) {
        long needed = reckoning.in(grid).totalBytes();
        if (needed <= memory.bytes()) {
            return null;
        }
        String what = String.format(Locale.ROOT, "a run with %,d cells", grid.cellCount());
        String fits = fitting(cavity, grid.sizeM(), reckoning, needed, memory);
        return new Finding(ID, severity, place(scene), text(what, needed, fit(fits), memory));
    }

    /** The refusal of a run of which not even the sprayed bays and their neighbours have room. */
    static SceneException partWithoutRoom(Scene scene, String bays, long needed, MemoryBudget memory) {
        String what = "a run of " + bays + ", the sprayed ones and their neighbours,";
        return new SceneException(ID, place(scene), text(what, needed, "take coarser voxels (--voxel), or ", memory));
    }

    /** Whether an exception is this refusal. */
    public static boolean isRefusal(SceneException e) {
        return e.findings().get(0).id().equals(ID);
    }

    /** Voxels in which the job was found to have room, or none. */
    private static String fitting(Cavity cavity, Vec3 sizeM, Reckoning reckoning, long needed, MemoryBudget memory) {
        double longer = Math.cbrt((double) needed / Math.max(1_000_000, memory.bytes()));
        try (Workers one = new Workers(1)) {
            for (int n = 0; n < TRIALS; n++) {
                longer *= LONGER;
                Vec3 tried = sizeM.times(longer);
                VoxelSpec spec = new VoxelSpec(metres(tried.x()), metres(tried.y()), metres(tried.z()));
                if (reckoning.in(Voxelizer.voxelize(cavity, spec, one)).totalBytes() <= memory.bytes()) {
                    return voxel(tried);
                }
            }
        } catch (SceneException tooCoarse) {
            // the cavity is lost in such voxels: there is nothing to name
            return "";
        }
        return "";
    }

    private static String fit(String voxels) {
        return voxels.isEmpty() ? "" : "voxels of " + voxels + " would fit (--voxel), or ";
    }

    private static SourcePlace place(Scene scene) {
        return new SourcePlace(scene.file(), 0, "voxel");
    }

    private static String text(String what, long needed, String advice, MemoryBudget memory) {
        return String.format(
                Locale.ROOT,
                "%s needs about %s of memory, and Java has %s for it here; %sstart Java with -Xmx%dg",
                what,
                bytes(needed),
                bytes(memory.bytes()),
                advice,
                (long) Math.ceil(MemoryBudget.heapFor(needed) / (double) (1 << 30)));
    }

    /** Lengths as {@code --voxel} takes them. */
    private static String voxel(Vec3 sizeM) {
        return mm(sizeM.x()) + " x " + mm(sizeM.y()) + " x " + mm(sizeM.z());
    }

    private static String mm(double metres) {
        return Quantities.number(1e3 * metres(metres), 3) + " mm";
    }

    /** Rounded up to three digits. */
    private static double metres(double length) {
        double unit = Math.pow(10, Math.floor(Math.log10(length)) - 2);
        return unit * Math.ceil(length / unit - 1e-9);
    }

    private static String bytes(long count) {
        return count >= 1e9
                ? String.format(Locale.ROOT, "%.1f GB", count * 1e-9)
                : String.format(Locale.ROOT, "%.0f MB", count * 1e-6);
    }
}
