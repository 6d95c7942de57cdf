package baymist.voxel;

import java.util.Arrays;

/**
 * Which lattice cells outside air reaches with every opening closed, and the enclosed compartments that remain.
 */
final class Enclosure {
    static final int AMBIENT = -1;
    private static final int UNSEEN = -2;

    /** Compartment of each lattice cell, or {@link #AMBIENT}, [cells]. */
    private final int[] compartment;
    /** Cells of each compartment. */
    private final int[] sizes;

    private Enclosure(int[] compartment, int[] sizes) {
        this.compartment = compartment;
        this.sizes = sizes;
    }

    /** Floods from the corner of the ring, then numbers what was not reached in ascending order of the first cell. */
    static Enclosure flood(Lattice lattice, BlockedFaces blocked) {
        int[] compartment = new int[lattice.cells()];
        Arrays.fill(compartment, UNSEEN);
        int[] queue = new int[lattice.cells()];
        fill(lattice, blocked, compartment, queue, 0, AMBIENT);
        IntList sizes = new IntList();
        for (int cell = 0; cell < compartment.length; cell++) {
            if (compartment[cell] == UNSEEN) {
                sizes.add(fill(lattice, blocked, compartment, queue, cell, sizes.size()));
            }
        }
        return new Enclosure(compartment, sizes.toArray());
    }

    private static int fill(
            Lattice lattice, BlockedFaces blocked, int[] compartment, int[] queue, int seed, int label) {
        int head = 0;
        int tail = 0;
        compartment[seed] = label;
        queue[tail++] = seed;
        int cells = lattice.cells();
        int across = lattice.count(0);
        int high = lattice.count(1);
        while (head < tail) {
            int cell = queue[head++];
            int rest = cell / across;
            for (int axis = 0; axis < 3; axis++) {
                int place = axis == 0 ? cell - rest * across : axis == 1 ? rest % high : rest / high;
                int below = cell - lattice.stride(axis);
                if (place > 0 && compartment[below] == UNSEEN && blocked.slot(axis * cells + below) < 0) {
                    compartment[below] = label;
                    queue[tail++] = below;
                }
                int above = cell + lattice.stride(axis);
                if (place < lattice.count(axis) - 1
                        && compartment[above] == UNSEEN
                        && blocked.slot(axis * cells + cell) < 0) {
                    compartment[above] = label;
                    queue[tail++] = above;
                }
            }
        }
        return tail;
    }

    int compartments() {
        return sizes.length;
    }

    int size(int compartmentIndex) {
        return sizes[compartmentIndex];
    }

    int of(int cell) {
        return compartment[cell];
    }

    boolean encloses(int cell) {
        return compartment[cell] >= 0;
    }
}
