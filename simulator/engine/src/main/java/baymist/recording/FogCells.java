package baymist.recording;

import baymist.voxel.VoxelGrid;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Blocks of voxels that fog is kept on: {@code edge} voxels along each side, never across bays. Arrays are shared and must not be written
 * to.
 *
 * @param edge voxels along each side of a block
 * @param count number of blocks
 * @param ofCell block of each cavity cell, [cells]
 * @param centreM middle of each block's air, m, [3 * count]
 * @param sizeM edge lengths of a whole block, m, [3]
 * @param volumeM3 air in each block, m³, [count]
 * @param bay bay of each block, [count]
 */
public record FogCells(
        int edge, int count, int[] ofCell, float[] centreM, float[] sizeM, double[] volumeM3, int[] bay) {
    /** The smallest blocks of which there are not more than {@code most}; one for each bay if that is all that helps. */
    static FogCells of(VoxelGrid grid, int most) {
        int edge = 1;
        int longest = Math.max(grid.nx(), Math.max(grid.ny(), grid.nz()));
        int[] blocks = blocks(grid, edge);
        while (count(blocks) > most && edge < longest) {
            edge++;
            blocks = blocks(grid, edge);
        }
        return filled(grid, edge, blocks);
    }

    private record Key(int i, int j, int k, int bay) {}

    private static int[] blocks(VoxelGrid grid, int edge) {
        Map<Key, Integer> known = new HashMap<>();
        int[] block = new int[grid.cellCount()];
        for (int c = 0; c < block.length; c++) {
            Key key = new Key(grid.i(c) / edge, grid.j(c) / edge, grid.k(c) / edge, grid.bayOfCell(c));
            block[c] = known.computeIfAbsent(key, k -> known.size());
        }
        return block;
    }

    private static int count(int[] blocks) {
        return Arrays.stream(blocks).max().orElse(-1) + 1;
    }

    private static FogCells filled(VoxelGrid grid, int edge, int[] blocks) {
        int count = count(blocks);
        double[] volume = new double[count];
        double[] moment = new double[3 * count];
        int[] bay = new int[count];
        for (int c = 0; c < blocks.length; c++) {
            int b = blocks[c];
            // a cell without air still gives its block a place
            double v = Math.max(grid.volumeM3(c), Double.MIN_NORMAL);
            volume[b] += v;
            bay[b] = grid.bayOfCell(c);
            for (int axis = 0; axis < 3; axis++) {
                moment[3 * b + axis] += v * grid.centre(c).get(axis);
            }
        }
        float[] centre = new float[3 * count];
        for (int n = 0; n < centre.length; n++) {
            centre[n] = (float) (moment[n] / volume[n / 3]);
        }
        float[] size = new float[3];
        for (int axis = 0; axis < 3; axis++) {
            size[axis] = (float) (edge * grid.sizeM().get(axis));
        }
        return new FogCells(edge, count, blocks, centre, size, volume, bay);
    }

    /** What is kept of the fog, in one sentence. */
    public String sentence() {
        return edge == 1
                ? String.format(Locale.ROOT, "Fog is kept in each of the %,d voxels.", count)
                : String.format(
                        Locale.ROOT,
                        "Fog is kept as the mean of blocks of %d x %d x %d voxels: %,d blocks for %,d voxels.",
                        edge,
                        edge,
                        edge,
                        count,
                        ofCell.length);
    }
}
