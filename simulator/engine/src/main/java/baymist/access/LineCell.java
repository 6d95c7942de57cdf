package baymist.access;

/**
 * A box in the space of lines through an opening: all lines whose (u, v, tu, tv) differ from those of the middle line by no more
 * than the half sizes.
 *
 * @param middle the line in the middle
 * @param half half sizes: m, m, tangent, tangent
 * @param heightM height above the opening, along its normal, that no line of the cell gets beyond, m
 * @param depthM depth along the wand that no line of the cell gets beyond, m
 */
record LineCell(RodLine middle, double[] half, double heightM, double depthM) {
    /** How far lines of the cell stray from the middle one in the plane at a height, m. */
    double strayM(double atHeightM) {
        return Math.hypot(half[0] + atHeightM * half[2], half[1] + atHeightM * half[3]);
    }

    /** The same at the greatest height that any of them reaches. */
    double strayM() {
        return strayM(heightM);
    }

    /** Largest tangent of the tilt of a line of the cell. */
    double largestTangent() {
        return Math.hypot(Math.abs(middle.tu()) + half[2], Math.abs(middle.tv()) + half[3]);
    }

    /** The coordinate in which the lines differ most where they reach farthest. */
    int widest() {
        double[] w = {half[0], half[1], heightM * half[2], heightM * half[3]};
        int best = 0;
        for (int i = 1; i < 4; i++) {
            if (w[i] > w[best]) {
                best = i;
            }
        }
        return best;
    }
}
