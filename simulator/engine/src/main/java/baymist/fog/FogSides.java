package baymist.fog;

/**
 * A list of links as kernels read it: their cells and their place among the coefficients. For slopes {@code first} is the donor, {@code second} the
 * receiver and {@code behind} the cell behind the donor; for donor cells' exchange low and high.
 */
final class FogSides {
    final int[] first;
    final int[] second;
    final int[] behind;

    /** Link, or its place among those that droplets fall through. */
    final int[] link;

    /** 1 where the donor is the low cell, -1 where it is the high one. */
    final double[] sense;

    /** Levels of the first, second and behind cell. */
    final byte[] firstLevel;

    final byte[] secondLevel;
    final byte[] behindLevel;

    int count;

    FogSides(int most) {
        first = new int[most];
        second = new int[most];
        behind = new int[most];
        link = new int[most];
        sense = new double[most];
        firstLevel = new byte[most];
        secondLevel = new byte[most];
        behindLevel = new byte[most];
    }

    void clear() {
        count = 0;
    }

    void add(int firstCell, int secondCell, int behindCell, int coefficient, double direction, byte[] level) {
        int p = count++;
        first[p] = firstCell;
        second[p] = secondCell;
        behind[p] = behindCell;
        link[p] = coefficient;
        sense[p] = direction;
        firstLevel[p] = level[firstCell];
        secondLevel[p] = level[secondCell];
        behindLevel[p] = level[behindCell];
    }
}
