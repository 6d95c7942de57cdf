package baymist.cavity;

import baymist.scene.CavitySpec.WingBox;
import baymist.scene.WingBoxDetail.Station;
import java.util.List;

/** Heights of a wing's surfaces over its chord line, anywhere along the span. */
sealed interface WingShape {
    /**
     * Height above the chord line, m.
     *
     * @param yM station along the span
     * @param f chord fraction
     * @param side +1 upper, -1 lower
     */
    double heightM(double yM, double f, int side);

    /** Slope of the surface in the section's plane there. */
    double slope(double yM, double f, int side);

    /** Local chord, m. */
    static double chordM(WingBox spec, double yM) {
        return spec.rootChordM() + (spec.tipChordM() - spec.rootChordM()) * yM / spec.spanM();
    }

    /** A NACA section scaled with the chord. */
    record Naca(WingBox spec, Naca4 section) implements WingShape {
        @Override
        public double heightM(double yM, double f, int side) {
            return chordM(spec, yM) * section.height(f, side);
        }

        @Override
        public double slope(double yM, double f, int side) {
            double h = 1e-5;
            return (section.height(f + h, side) - section.height(f - h, side)) / (2 * h);
        }
    }

    /** Heights measured at root and tip; straight lines of equal chord fraction between them. */
    record Measured(WingBox spec, MeasuredCurve[] root, MeasuredCurve[] tip) implements WingShape {
        static Measured of(WingBox spec) {
            List<Station> root = spec.detail().root();
            List<Station> tip = spec.detail().tip();
            boolean straight = spec.detail().straight();
            double ratio = spec.tipChordM() / spec.rootChordM();
            MeasuredCurve[] atRoot = new MeasuredCurve[2];
            MeasuredCurve[] atTip = new MeasuredCurve[2];
            for (int k = 0; k < 2; k++) {
                int side = k == 0 ? -1 : 1;
                atRoot[k] = MeasuredCurve.of(root, spec.rootChordM(), side, straight);
                atTip[k] = tip.isEmpty()
                        ? atRoot[k].scaled(ratio)
                        : MeasuredCurve.of(tip, spec.tipChordM(), side, straight);
            }
            return new Measured(spec, atRoot, atTip);
        }

        @Override
        public double heightM(double yM, double f, int side) {
            int k = side > 0 ? 1 : 0;
            double s = yM / spec.spanM();
            return (1 - s) * root[k].at(f) + s * tip[k].at(f);
        }

        @Override
        public double slope(double yM, double f, int side) {
            double h = 1e-5;
            return (heightM(yM, f + h, side) - heightM(yM, f - h, side)) / (2 * h * chordM(spec, yM));
        }
    }
}
