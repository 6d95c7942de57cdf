package baymist.access;

import baymist.geom.Outline;
import baymist.geom.PlacedOutline;
import baymist.geom.Vec3;

/**
 * How much room a straight rod has in a hole of a plate.
 *
 * <p>A rod of diameter d tilted by θ cuts a plane parallel to the plate in an ellipse of semi-axes d/(2 cosθ) along the tilt and
 * d/2 across. Over the gauge t the ellipse moves by t tanθ. The rod passes if the ellipses at both faces of the plate lie in
 * the outline (between the faces they lie in their convex hull, so for a convex outline nothing more is needed). The clearance
 * is the least distance from the ellipses to the outline. For a circle of diameter D it is exactly {@code (D - d/cosθ - t
 * tanθ)/2}: on the ellipse {@code (c + A cosφ, B sinφ)} with A at least B the squared distance from the centre is convex in cosφ and
 * largest at φ = 0 (docs/theory/access.md, 1). Other outlines are sampled at 180 points an ellipse.
 *
 * @param clearanceM radial play left, m, negative = does not pass
 * @param u,v where the rod's axis crosses the middle of the plate, outline coordinates, m
 */
record HoleFit(double clearanceM, double u, double v) {
    private static final int POINTS = 180;

    /**
     * Best place of a rod in a hole.
     *
     * @param axis unit vector going in, with a component along the outline's normal
     */
    static HoleFit of(PlacedOutline place, Vec3 axis, double rodM, double gaugeM) {
        double cos = axis.dot(place.normal());
        if (!(cos > 0)) {
            throw new IllegalArgumentException("the rod must go in along the outline's normal");
        }
        double alongU = axis.dot(place.uAxis()) / cos;
        double alongV = axis.dot(place.vAxis()) / cos;
        double tan = Math.hypot(alongU, alongV);
        if (place.outline() instanceof Outline.Circle circle) {
            return new HoleFit(circle.radiusM() - rodM / (2 * cos) - 0.5 * gaugeM * tan, 0, 0);
        }
        double[][] rim = rim(alongU, alongV, tan, cos, rodM, gaugeM);
        Outline outline = place.outline();
        HoleFit best = new HoleFit(clearance(outline, rim, 0, 0), 0, 0);
        return outline instanceof Outline.Polygon ? search(outline, rim, best) : best;
    }

    /** Points of both ellipses about the place where the axis crosses the middle of the plate, [2 * POINTS][u, v]. */
    private static double[][] rim(double alongU, double alongV, double tan, double cos, double rodM, double gaugeM) {
        double eu = tan > 0 ? alongU / tan : 1;
        double ev = tan > 0 ? alongV / tan : 0;
        double[][] rim = new double[2 * POINTS][];
        for (int face = 0; face < 2; face++) {
            double shift = (face - 0.5) * gaugeM * tan;
            for (int i = 0; i < POINTS; i++) {
                double phi = 2 * Math.PI * i / POINTS;
                double a = shift + rodM / (2 * cos) * Math.cos(phi);
                double b = rodM / 2 * Math.sin(phi);
                rim[face * POINTS + i] = new double[] {a * eu - b * ev, a * ev + b * eu};
            }
        }
        return rim;
    }

    private static double clearance(Outline outline, double[][] rim, double u, double v) {
        double least = Double.POSITIVE_INFINITY;
        for (double[] p : rim) {
            least = Math.min(least, outline.clearanceM(u + p[0], v + p[1]));
        }
        return least;
    }

    /** Compass search for the roomiest place, from a coarse grid down to a micrometre. */
    private static HoleFit search(Outline outline, double[][] rim, HoleFit start) {
        HoleFit best = start;
        double reach = outline.reachM();
        for (int i = -8; i <= 8; i++) {
            for (int j = -8; j <= 8; j++) {
                best = better(outline, rim, best, reach * i / 8, reach * j / 8);
            }
        }
        for (double step = reach / 16; step > 1e-6; step /= 2) {
            HoleFit centre;
            do {
                centre = best;
                for (int k = 0; k < 8; k++) {
                    double angle = Math.PI * k / 4;
                    best = better(
                            outline, rim, best, centre.u + step * Math.cos(angle), centre.v + step * Math.sin(angle));
                }
            } while (best.clearanceM > centre.clearanceM + 1e-9);
        }
        return best;
    }

    private static HoleFit better(Outline outline, double[][] rim, HoleFit best, double u, double v) {
        double c = clearance(outline, rim, u, v);
        return c > best.clearanceM ? new HoleFit(c, u, v) : best;
    }
}
