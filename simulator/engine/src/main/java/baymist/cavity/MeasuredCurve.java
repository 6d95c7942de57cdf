package baymist.cavity;

import baymist.scene.WingBoxDetail.Station;
import java.util.List;

/**
 * Heights through measured stations.
 *
 * <p>Straight: by halves between neighbours. Curved: piecewise cubics whose slope at each station is that of the parabola
 * through it and its two neighbours (at the ends: of the nearest such parabola), the three-point form of Hermite
 * interpolation (Bessel; de Boor 1978, A Practical Guide to Splines, chapter IV). A parabola is met exactly, for any spacing,
 * so that areas of one agree with Simpson's rule; between stations it follows a smooth skin to third order.
 *
 * @param f chord fractions, ascending, [n]
 * @param heightM heights there, m, [n]
 * @param slopeM slopes there, m per chord, [n]; empty = straight
 */
record MeasuredCurve(double[] f, double[] heightM, double[] slopeM) {
    static MeasuredCurve of(List<Station> stations, double chordM, int side, boolean straight) {
        int n = stations.size();
        double[] f = new double[n];
        double[] h = new double[n];
        for (int i = 0; i < n; i++) {
            f[i] = stations.get(i).aftM() / chordM;
            h[i] = side > 0 ? stations.get(i).upperM() : stations.get(i).lowerM();
        }
        return new MeasuredCurve(f, h, straight ? new double[0] : slopes(f, h));
    }

    MeasuredCurve scaled(double by) {
        double[] h = heightM.clone();
        double[] m = slopeM.clone();
        for (int i = 0; i < h.length; i++) {
            h[i] *= by;
        }
        for (int i = 0; i < m.length; i++) {
            m[i] *= by;
        }
        return new MeasuredCurve(f, h, m);
    }

    private static double[] slopes(double[] f, double[] h) {
        int n = f.length;
        double[] m = new double[n];
        if (n == 2) {
            m[0] = (h[1] - h[0]) / (f[1] - f[0]);
            m[1] = m[0];
            return m;
        }
        for (int i = 0; i < n; i++) {
            int c = Math.min(n - 2, Math.max(1, i));
            double before = (h[c] - h[c - 1]) / (f[c] - f[c - 1]);
            double after = (h[c + 1] - h[c]) / (f[c + 1] - f[c]);
            double second = (after - before) / (f[c + 1] - f[c - 1]);
            // derivative of Newton's form h0 + before (x - x0) + second (x - x0)(x - x1)
            m[i] = before + second * (2 * f[i] - f[c - 1] - f[c]);
        }
        return m;
    }

    /** Height at a chord fraction, m; beyond the stations the outermost piece goes on. */
    double at(double x) {
        int i = 0;
        while (i + 2 < f.length && x > f[i + 1]) {
            i++;
        }
        double w = f[i + 1] - f[i];
        double t = (x - f[i]) / w;
        if (slopeM.length == 0) {
            return heightM[i] + t * (heightM[i + 1] - heightM[i]);
        }
        double rest = 1 - t;
        return heightM[i] * (1 + 2 * t) * rest * rest
                + heightM[i + 1] * t * t * (3 - 2 * t)
                + w * t * rest * (slopeM[i] * rest - slopeM[i + 1] * t);
    }
}
