package baymist.access;

import baymist.geom.Outline;

/**
 * A hole in a plate of a gauge, and the straight round rods that pass it.
 *
 * <p>A rod of diameter d whose axis runs along (τu, τv, 1) in the hole's coordinates (τ = tangent of the tilt, as a vector in
 * the plate) cuts a plane parallel to the plate in the ellipse about the axis with support function
 *
 * <pre>h(n) = n·c + (d/2) sqrt(1 + (n·τ)²)                                             (docs/theory/access.md, eq. 2)</pre>
 *
 * for unit vectors n, with c where the axis meets the plane. Between the faces of the plate, at heights -t/2 and t/2, c moves by
 * tτ. The rod passes a convex outline exactly if it passes it at both faces; an outline that is not convex is looked at in five planes.
 *
 * @param gaugeM thickness t of the plate, m, at least 0
 */
record PlateHole(Outline outline, double gaugeM) {
    /** Points at which an ellipse is looked at before the nearest ones are refined. */
    private static final int POINTS = 48;

    private static final double GOLDEN = 0.5 * (Math.sqrt(5) - 1);

    /** Largest tilt of a rod in the middle of a round hole, rad: acos(d / sqrt(D² + t²)) - atan(t / D); -1 if it does not pass. */
    static double largestTiltRad(double holeM, double rodM, double gaugeM) {
        if (rodM > holeM) {
            return -1;
        }
        return Math.max(0, Math.acos(rodM / Math.hypot(holeM, gaugeM)) - Math.atan2(gaugeM, holeM));
    }

    /** Largest offset along the tilt from the middle of a round hole, m: (D - d / cosθ - t tanθ) / 2. */
    static double largestOffsetM(double holeM, double rodM, double gaugeM, double tiltRad) {
        return 0.5 * (holeM - rodM / Math.cos(tiltRad) - gaugeM * Math.tan(tiltRad));
    }

    /**
     * Distance that is left between the rod and the hole's edge, m, negative where they overlap. Moving the axis by x in the plate and
     * its tangent by y changes it by no more than x + y (t + d) / 2.
     *
     * @param u,v where the axis crosses the middle of the plate, m
     * @param tu,tv tangent of the tilt along u and v
     */
    double clearanceM(double u, double v, double tu, double tv, double rodM) {
        double least = Double.POSITIVE_INFINITY;
        int planes = convex() ? gaugeM * Math.hypot(tu, tv) > 0 ? 2 : 1 : 5;
        for (int i = 0; i < planes; i++) {
            double z = planes == 1 ? 0 : gaugeM * ((double) i / (planes - 1) - 0.5);
            least = Math.min(least, inPlane(u + z * tu, v + z * tv, tu, tv, 0.5 * rodM));
        }
        return least;
    }

    /** At most this much of {@link #clearanceM}, m; cheap: from the middles of the ellipses and their smallest half axes. */
    double upperM(double u, double v, double tu, double tv, double rodM) {
        double z = 0.5 * gaugeM;
        return Math.min(outline.clearanceM(u - z * tu, v - z * tv), outline.clearanceM(u + z * tu, v + z * tv))
                - 0.5 * rodM;
    }

    /** At least this much of {@link #clearanceM}, m; cheap: from the same with the largest half axis. */
    double lowerM(double u, double v, double tu, double tv, double rodM) {
        double tan = Math.hypot(tu, tv);
        return outline.clearanceM(u, v) - 0.5 * gaugeM * tan - 0.5 * rodM * Math.sqrt(1 + tan * tan);
    }

    private boolean convex() {
        if (!(outline instanceof Outline.Polygon polygon)) {
            return true;
        }
        int n = polygon.points().size();
        for (int k = 0; k < n; k++) {
            double[] a = polygon.points().get(k);
            double[] b = polygon.points().get((k + 1) % n);
            double[] c = polygon.points().get((k + 2) % n);
            if ((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) < 0) {
                return false;
            }
        }
        return true;
    }

    private double inPlane(double cu, double cv, double tu, double tv, double r) {
        double tan = Math.hypot(tu, tv);
        if (outline instanceof Outline.Circle circle) {
            return circle.radiusM() - farthest(cu, cv, tu, tv, r, tan);
        }
        double eu = tan > 0 ? tu / tan : 1;
        double ev = tan > 0 ? tv / tan : 0;
        double a = r * Math.sqrt(1 + tan * tan);
        return least(phi -> {
            double x = a * Math.cos(phi);
            double y = r * Math.sin(phi);
            return outline.clearanceM(cu + x * eu - y * ev, cv + x * ev + y * eu);
        });
    }

    /** Distance of the ellipse's farthest point from the middle of the hole: the largest value of its support function. */
    private static double farthest(double cu, double cv, double tu, double tv, double r, double tan) {
        double c = Math.hypot(cu, cv);
        if (Math.abs(cu * tv - cv * tu) <= 1e-15 * (1 + tan) * c || c == 0) {
            // the offset lies along the tilt: both terms of the support function are largest there (eq. 3)
            return c + r * Math.sqrt(1 + tan * tan);
        }
        if (tan == 0) {
            return c + r;
        }
        return -least(phi -> {
            double nu = Math.cos(phi);
            double nv = Math.sin(phi);
            double t = nu * tu + nv * tv;
            return -(nu * cu + nv * cv + r * Math.sqrt(1 + t * t));
        });
    }

    private interface Around {
        double at(double phi);
    }

    /** Least value of a periodic function: sampled, then the lowest samples refined by golden section. */
    private static double least(Around f) {
        double step = 2 * Math.PI / POINTS;
        double[] value = new double[POINTS];
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < POINTS; i++) {
            value[i] = f.at(i * step);
            lowest = Math.min(lowest, value[i]);
            highest = Math.max(highest, value[i]);
        }
        // a minimum between samples can't lie lower than its neighbours by more than a few steps' worth of the range
        double worth = lowest + 0.1 * (highest - lowest);
        double best = lowest;
        for (int i = 0; i < POINTS; i++) {
            double before = value[(i + POINTS - 1) % POINTS];
            double after = value[(i + 1) % POINTS];
            if (value[i] <= worth && value[i] <= before && value[i] <= after) {
                best = Math.min(best, golden(f, (i - 1) * step, (i + 1) * step));
            }
        }
        return best;
    }

    private static double golden(Around f, double low, double high) {
        double a = low;
        double b = high;
        double x1 = b - GOLDEN * (b - a);
        double x2 = a + GOLDEN * (b - a);
        double f1 = f.at(x1);
        double f2 = f.at(x2);
        while (b - a > 1e-9) {
            if (f1 <= f2) {
                b = x2;
                x2 = x1;
                f2 = f1;
                x1 = b - GOLDEN * (b - a);
                f1 = f.at(x1);
            } else {
                a = x1;
                x1 = x2;
                f1 = f2;
                x2 = a + GOLDEN * (b - a);
                f2 = f.at(x2);
            }
        }
        return Math.min(f1, f2);
    }
}
