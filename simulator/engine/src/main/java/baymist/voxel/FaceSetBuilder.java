package baymist.voxel;

/** Lists the faces that air can cross, in ascending order of low cell, axis and opening, and the neighbours of each cell. */
final class FaceSetBuilder {
    private final int[] low;
    private final int[] high;
    private final byte[] axes;
    private final double[] area;
    private final int[] opening;
    private int faces;
    private final IntList ventCell = new IntList();
    private final IntList ventAxis = new IntList();
    private final IntList ventSign = new IntList();
    private final DoubleList ventArea = new DoubleList();
    private final IntList ventOpening = new IntList();

    private FaceSetBuilder(int count) {
        low = new int[count];
        high = new int[count];
        axes = new byte[count];
        area = new double[count];
        opening = new int[count];
    }

    static FaceSet build(Lattice lattice, BlockedFaces blocked, CavityCells cells, OpeningFaces openings) {
        // counted first, so that no list has to grow: faces are the most numerous thing of a large grid
        FaceSetBuilder b = new FaceSetBuilder(count(lattice, blocked, cells, openings));
        for (int cell = 0; cell < cells.count(); cell++) {
            for (int d = 0; d < 6; d++) {
                int lattCell = cells.latticeOf(cell);
                int key = lattice.faceKey(lattCell, d);
                int other = key < 0 ? -1 : cells.cellAt(lattice.behind(lattCell, d));
                int slot = blocked.slot(key);
                if (slot < 0) {
                    if (other >= 0 && (d & 1) == 1) {
                        b.face(cell, other, d >> 1, lattice.faceAreaM2(d >> 1), -1);
                    }
                    continue;
                }
                for (int e = openings.start()[slot]; e < openings.start()[slot + 1]; e++) {
                    if (other < 0) {
                        b.vent(cell, d, openings.areaM2()[e], openings.opening()[e]);
                    } else if ((d & 1) == 1) {
                        b.face(cell, other, d >> 1, openings.areaM2()[e], openings.opening()[e]);
                    }
                }
            }
        }
        return b.done();
    }

    private static int count(Lattice lattice, BlockedFaces blocked, CavityCells cells, OpeningFaces openings) {
        int count = 0;
        for (int cell = 0; cell < cells.count(); cell++) {
            int lattCell = cells.latticeOf(cell);
            for (int d = 1; d < 6; d += 2) {
                int key = lattice.faceKey(lattCell, d);
                if (key >= 0 && cells.cellAt(lattice.behind(lattCell, d)) >= 0) {
                    int slot = blocked.slot(key);
                    count += slot < 0 ? 1 : openings.start()[slot + 1] - openings.start()[slot];
                }
            }
        }
        return count;
    }

    /** Cavity cell behind each side where no sheet lies, else -1, [6 * cells]. */
    static int[] neighbours(Lattice lattice, BlockedFaces blocked, CavityCells cells) {
        int[] neighbour = new int[6 * cells.count()];
        for (int cell = 0; cell < cells.count(); cell++) {
            int lattCell = cells.latticeOf(cell);
            for (int d = 0; d < 6; d++) {
                int key = lattice.faceKey(lattCell, d);
                boolean open = key >= 0 && blocked.slot(key) < 0;
                neighbour[6 * cell + d] = open ? cells.cellAt(lattice.behind(lattCell, d)) : -1;
            }
        }
        return neighbour;
    }

    private void face(int lowCell, int highCell, int axis, double areaM2, int openingIndex) {
        low[faces] = lowCell;
        high[faces] = highCell;
        axes[faces] = (byte) axis;
        area[faces] = areaM2;
        opening[faces++] = openingIndex;
    }

    private void vent(int cell, int direction, double areaM2, int openingIndex) {
        ventCell.add(cell);
        ventAxis.add(direction >> 1);
        ventSign.add((direction & 1) == 1 ? 1 : -1);
        ventArea.add(areaM2);
        ventOpening.add(openingIndex);
    }

    private FaceSet done() {
        return new FaceSet(
                low,
                high,
                axes,
                area,
                opening,
                ventCell.toArray(),
                bytes(ventAxis),
                bytes(ventSign),
                ventArea.toArray(),
                ventOpening.toArray());
    }

    static byte[] bytes(IntList list) {
        byte[] b = new byte[list.size()];
        for (int i = 0; i < b.length; i++) {
            b[i] = (byte) list.get(i);
        }
        return b;
    }
}
