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
        while (head < tail) {
            int cell = queue[head++];
            for (int d = 0; d < 6; d++) {
                int key = lattice.faceKey(cell, d);
                if (key < 0 || blocked.slot(key) >= 0) {
                    continue;
                }
                int next = lattice.behind(cell, d);
                if (compartment[next] == UNSEEN) {
                    compartment[next] = label;
                    queue[tail++] = next;
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
