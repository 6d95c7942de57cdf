package baymist.coverage;

import baymist.voxel.SurfelSet;

/** How the interior surfels of one part lie: which axis their normals follow, and whether both faces are inside. */
final class PartShape {
    /** A part is flat when this share of its summed normals lies along one axis. ASSUMED: a sphere has 0.5. */
    private static final double FLAT = 0.7;
    /** Both faces count as inside when the smaller one has this share of the part's area. ASSUMED. */
    private static final double SECOND_FACE = 0.1;
    /** How squarely a surfel must look along an axis to count for a face: cosine. ASSUMED: 60 degrees. */
    private static final double LOOKS_ALONG = 0.5;

    private final double[] sumOfNormals = new double[3];
    private final double[] sumUp = new double[3];
    private final double[] sumDown = new double[3];
    private double areaM2;

    void add(SurfelSet surfels, int s) {
        double a = surfels.areaM2()[s];
        double[] n = {surfels.normalX()[s], surfels.normalY()[s], surfels.normalZ()[s]};
        areaM2 += a;
        for (int axis = 0; axis < 3; axis++) {
            sumOfNormals[axis] += a * Math.abs(n[axis]);
            sumUp[axis] += n[axis] > LOOKS_ALONG ? a : 0;
            sumDown[axis] += n[axis] < -LOOKS_ALONG ? a : 0;
        }
    }

    /** Axis (0, 1, 2) that the normals follow most; the higher axis wins a tie, so that a sphere has floor and ceiling. */
    int axis() {
        int best = 2;
        for (int axis = 1; axis >= 0; axis--) {
            if (sumOfNormals[axis] > sumOfNormals[best]) {
                best = axis;
            }
        }
        return best;
    }

    boolean isFlat() {
        return areaM2 > 0 && sumOfNormals[axis()] >= FLAT * areaM2;
    }

    boolean hasBothFaces() {
        return Math.min(sumUp[axis()], sumDown[axis()]) >= SECOND_FACE * areaM2;
    }
}
