package baymist.run;

import baymist.cavity.Cavity;
import baymist.problem.SceneException;
import baymist.scene.Scene;
import baymist.voxel.GridPart;
import baymist.voxel.VoxelGrid;
import java.util.Arrays;

/** Tries how many rings of bays round the sprayed ones have room. */
final class PartTrial {
    /** Bytes a cell that any run takes at least; parts for which not even these are there are not made to be looked at. */
    private static final long LEAST_CELL = 300;

    private final Scene scene;
    private final Cavity cavity;
    private final VoxelGrid whole;
    private final BayRings rings;
    private final boolean[] sprayed;
    private final MemoryCheck.Reckoning takes;
    private final MemoryBudget memory;

    PartTrial(
            Scene scene,
            Cavity cavity,
            VoxelGrid whole,
            BayRings rings,
            boolean[] sprayed,
            MemoryCheck.Reckoning takes,
            MemoryBudget memory) {
        this.scene = scene;
        this.cavity = cavity;
        this.whole = whole;
        this.rings = rings;
        this.sprayed = sprayed;
        this.takes = takes;
        this.memory = memory;
    }

    /** The bays of so many rings, [bays]. */
    boolean[] bays(int count) {
        return rings.around(sprayed, count);
    }

    /**
     * The most rings that have room, from {@code wanted} down to {@code least}.
     *
     * @throws SceneException RUN-008 if not even those have
     */
    int most(int wanted, int least) {
        int found = mostOrNone(wanted, least);
        if (found == 0) {
            ComputedBays bays = ComputedBays.of(whole.bays(), bays(least));
            if (bays.isWhole()) {
                MemoryCheck.job(scene, cavity, whole, takes, memory); // names voxels that fit
            }
            throw MemoryCheck.partWithoutRoom(scene, bays.words(), bytes(least), memory);
        }
        return found;
    }

    /** The same, or 0. */
    int mostOrNone(int wanted, int least) {
        for (int n = wanted; n >= least; n--) {
            if (bytes(n) <= memory.bytes()) {
                return n;
            }
        }
        return 0;
    }

    /** Whether one ring more brings in bays and has room. */
    boolean grows(int from) {
        return !Arrays.equals(bays(from), bays(from + 1)) && bytes(from + 1) <= memory.bytes();
    }

    /** What a run with so many rings takes; a lower bound where it is far too much. */
    long bytes(int count) {
        boolean[] kept = bays(count);
        long least = LEAST_CELL * rings.cells(kept);
        return least > memory.bytes()
                ? least
                : takes.in(GridPart.of(whole, kept).grid()).totalBytes();
    }
}
