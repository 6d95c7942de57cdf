package baymist.fog;

import java.util.Arrays;

/**
 * Lines of cells that are linked along one axis, and the implicit step along them.
 *
 * <p>A backward Euler step of a line is a tridiagonal system whose columns sum to one plus what the walls take: the matrix
 * is an M-matrix, so the new masses are positive for any step, and nothing is lost but to the walls.
 */
final class FogLines {
    /** First place of each line in {@link #cell}, [lines + 1]. */
    private final int[] start;

    /** Cells in order along the axis, [cells]. */
    private final int[] cell;

    /** Link from the cell at this place to the next, or -1 at the end of a line, [cells]. */
    private final int[] link;

    private final boolean valid;
    private final int longest;

    private FogLines(int[] start, int[] cell, int[] link, boolean valid) {
        this.start = start;
        this.cell = cell;
        this.link = link;
        this.valid = valid;
        int most = 0;
        for (int i = 0; i + 1 < start.length; i++) {
            most = Math.max(most, start[i + 1] - start[i]);
        }
        this.longest = most;
    }

    static FogLines of(FogLinks links, int axis, int cells) {
        int[] up = new int[cells];
        int[] down = new int[cells];
        Arrays.fill(up, -1);
        Arrays.fill(down, -1);
        boolean valid = true;
        for (int l = 0; l < links.count(); l++) {
            if (links.axis[l] == axis) {
                valid &= up[links.low[l]] < 0 && down[links.high[l]] < 0;
                up[links.low[l]] = l;
                down[links.high[l]] = l;
            }
        }
        if (!valid) {
            return new FogLines(new int[1], new int[0], new int[0], false);
        }
        int[] start = new int[cells + 1];
        int[] cell = new int[cells];
        int[] link = new int[cells];
        int lines = 0;
        int place = 0;
        for (int c = 0; c < cells; c++) {
            if (down[c] >= 0) {
                continue;
            }
            int at = c;
            while (true) {
                cell[place] = at;
                link[place++] = up[at];
                if (up[at] < 0) {
                    break;
                }
                at = links.high[up[at]];
            }
            start[++lines] = place;
        }
        return new FogLines(Arrays.copyOf(start, lines + 1), cell, link, place == cells);
    }

    boolean valid() {
        return valid;
    }

    int longest() {
        return longest;
    }

    /**
     * One backward Euler step along every line, in place.
     *
     * @param mass kg, [cells]
     * @param exposure kg s, [cells]; step times new mass is added
     * @param up rate of passing from low to high, 1/s, [links]
     * @param down rate of passing from high to low, 1/s, [links]
     * @param wallRate rate of loss to walls square to the axis, 1/s, [cells]
     * @param work at least 2 * longest
     */
    void step(
            double stepS,
            double[] mass,
            double[] exposure,
            double[] up,
            double[] down,
            double[] wallRate,
            double[] work) {
        for (int line = 0; line + 1 < start.length; line++) {
            int from = start[line];
            int to = start[line + 1];
            double fromBelow = 0;
            double inBelow = 0;
            double keptBelow = 1;
            double previousMass = 0;
            double before = 0;
            for (int p = from; p < to; p++) {
                int c = cell[p];
                int l = link[p];
                before += mass[c];
                double toAbove = l < 0 ? 0 : stepS * up[l];
                double inAbove = l < 0 ? 0 : stepS * down[l];
                // Row: (1 + wall + toAbove + toBelow) m - fromBelow m_below - inAbove m_above = old mass, eliminated
                // without a subtraction: keptBelow is the share of what enters the part below that does not return.
                double kept = 1 + stepS * wallRate[c] + inBelow * keptBelow;
                double pivot = kept + toAbove;
                previousMass = (mass[c] + fromBelow * previousMass) / pivot;
                work[p - from] = inAbove / pivot;
                work[longest + p - from] = previousMass;
                keptBelow = kept / pivot;
                fromBelow = toAbove;
                inBelow = inAbove;
            }
            substituteBack(stepS, from, to, before, mass, wallRate, work);
            for (int p = from; p < to; p++) {
                exposure[cell[p]] += stepS * mass[cell[p]];
            }
        }
    }

    /** Solves upwards to downwards, then scales the line so that what is left and what the walls took is what was there. */
    private void substituteBack(
            double stepS, int from, int to, double before, double[] mass, double[] wallRate, double[] work) {
        double above = 0;
        double after = 0;
        for (int p = to - 1; p >= from; p--) {
            above = work[longest + p - from] + work[p - from] * above;
            int c = cell[p];
            mass[c] = above;
            after += above + stepS * wallRate[c] * above;
        }
        if (!(after > FogBin.VANISHING_KG)) {
            return;
        }
        // The factor is one to rounding: elimination over a long line loses a few digits of the sum, always the same
        // way.
        double factor = before / after;
        for (int p = from; p < to; p++) {
            double m = factor * mass[cell[p]];
            mass[cell[p]] = Math.abs(m) < FogBin.VANISHING_KG ? 0 : m;
        }
    }
}
