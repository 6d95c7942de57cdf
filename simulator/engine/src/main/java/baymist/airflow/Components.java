package baymist.airflow;

import baymist.voxel.FaceSet;
import baymist.voxel.VoxelGrid;

/**
 * Groups of cavity cells that air can move between under a given state of the openings. Groups are numbered by their lowest
 * cell; immutable.
 */
final class Components {
    private final int[] groupOfCell;
    private final double[] volumeM3;

    private Components(int[] groupOfCell, double[] volumeM3) {
        this.groupOfCell = groupOfCell;
        this.volumeM3 = volumeM3;
    }

    /** @param openFraction [openings] open share of each opening, 0..1 */
    static Components of(VoxelGrid grid, double[] openFraction) {
        FaceSet faces = grid.faces();
        UnionFind sets = new UnionFind(grid.cellCount());
        for (int f = 0; f < faces.count(); f++) {
            if (openAreaM2(faces, f, openFraction) > 0) {
                sets.join(faces.low()[f], faces.high()[f]);
            }
        }
        int[] group = sets.numbered();
        double[] volume = new double[sets.sets()];
        for (int c = 0; c < group.length; c++) {
            volume[group[c]] += grid.volumeM3(c);
        }
        return new Components(group, volume);
    }

    /** Groups of any cells joined by faces of open area. */
    static Components of(int cells, int[] low, int[] high, double[] volumeM3) {
        UnionFind sets = new UnionFind(cells);
        for (int f = 0; f < low.length; f++) {
            sets.join(low[f], high[f]);
        }
        int[] group = sets.numbered();
        double[] volume = new double[sets.sets()];
        for (int c = 0; c < cells; c++) {
            volume[group[c]] += volumeM3[c];
        }
        return new Components(group, volume);
    }

    /** Area of a face entry that is open now, m². */
    static double openAreaM2(FaceSet faces, int face, double[] openFraction) {
        int opening = faces.opening()[face];
        return opening < 0 ? faces.areaM2()[face] : faces.areaM2()[face] * openFraction[opening];
    }

    int count() {
        return volumeM3.length;
    }

    int groupOf(int cell) {
        return groupOfCell[cell];
    }

    double volumeM3(int group) {
        return volumeM3[group];
    }
}
