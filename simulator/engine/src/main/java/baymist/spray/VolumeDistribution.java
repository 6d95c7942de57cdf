package baymist.spray;

import baymist.scene.DropletSpec;

/** Share of the liquid's volume in droplets below a diameter (ASTM E799 terms: Dv0.5 median, D32 Sauter mean). */
public sealed interface VolumeDistribution {
    /** Share of volume in droplets smaller than {@code diameterM}, 0..1. */
    double below(double diameterM);

    /** Diameter below which the share {@code p} of the volume lies, m; p in 0..1, both excluded. */
    default double quantileM(double p) {
        double low = Math.log(medianM()) - 30;
        double high = Math.log(medianM()) + 30;
        for (int i = 0; i < 80; i++) {
            double mid = 0.5 * (low + high);
            if (below(Math.exp(mid)) < p) {
                low = mid;
            } else {
                high = mid;
            }
        }
        return Math.exp(0.5 * (low + high));
    }

    double medianM();

    /** Sauter mean D32, m. */
    double sauterM();

    /** Relative span (Dv0.9 - Dv0.1)/Dv0.5 (ASTM E799). */
    default double span() {
        return (quantileM(0.9) - quantileM(0.1)) / medianM();
    }

    static VolumeDistribution of(DropletSpec.RosinRammler spec) {
        double scale = spec.dv50M() / Math.pow(Math.log(2), 1 / spec.spread());
        return new RosinRammler(scale, spec.spread());
    }

    static VolumeDistribution of(DropletSpec.LogNormal spec) {
        return new LogNormal(spec.dv50M(), Math.log(spec.geometricDeviation()));
    }

    static VolumeDistribution of(DropletSpec.Sheet spec) {
        double tenth = 1.2815515655446004;
        return new TwoSided(
                spec.dv50M(),
                Math.log(spec.dv50M() / spec.dv10M()) / tenth,
                Math.log(spec.dv90M() / spec.dv50M()) / tenth);
    }

    /**
     * Two halves of log-normals that meet at the median: the smoothest curve that runs through Dv0.1, Dv0.5 and Dv0.9 of a data
     * sheet exactly. Its density has a step at the median where the two deviations differ.
     */
    record TwoSided(double medianM, double fineDeviation, double coarseDeviation) implements VolumeDistribution {
        @Override
        public double below(double d) {
            double log = Math.log(d / medianM);
            return Special.normalBelow(log / (log < 0 ? fineDeviation : coarseDeviation));
        }

        /** {@code 1/D32 = ∫ f/d}: each half gives {@code exp(s²/2) Φ(∓s)/Dv0.5}, exact. */
        @Override
        public double sauterM() {
            double fine = Math.exp(0.5 * fineDeviation * fineDeviation) * Special.normalBelow(fineDeviation);
            double coarse = Math.exp(0.5 * coarseDeviation * coarseDeviation) * Special.normalBelow(-coarseDeviation);
            return medianM / (fine + coarse);
        }
    }

    /** Every diameter of another distribution times a factor: a finer or coarser setting. */
    record Scaled(VolumeDistribution of, double factor) implements VolumeDistribution {
        @Override
        public double below(double d) {
            return of.below(d / factor);
        }

        @Override
        public double quantileM(double p) {
            return factor * of.quantileM(p);
        }

        @Override
        public double medianM() {
            return factor * of.medianM();
        }

        @Override
        public double sauterM() {
            return factor * of.sauterM();
        }
    }

    /** Rosin and Rammler (1933): {@code 1 - exp(-(d/X)^q)}. */
    record RosinRammler(double scaleM, double exponent) implements VolumeDistribution {
        @Override
        public double below(double d) {
            return -Math.expm1(-Math.pow(d / scaleM, exponent));
        }

        @Override
        public double quantileM(double p) {
            return scaleM * Math.pow(-Math.log1p(-p), 1 / exponent);
        }

        @Override
        public double medianM() {
            return scaleM * Math.pow(Math.log(2), 1 / exponent);
        }

        /** {@code X/Γ(1 - 1/q)}; 0 for q of 1 or less, where the number of fine drops has no limit. */
        @Override
        public double sauterM() {
            return exponent > 1 ? scaleM / Special.gamma(1 - 1 / exponent) : 0;
        }
    }

    /** Log-normal in volume with median Dv0.5 and standard deviation of ln d (Hatch and Choate 1929 for its means). */
    record LogNormal(double medianM, double logDeviation) implements VolumeDistribution {
        @Override
        public double below(double d) {
            return Special.normalBelow(Math.log(d / medianM) / logDeviation);
        }

        @Override
        public double sauterM() {
            return medianM * Math.exp(-0.5 * logDeviation * logDeviation);
        }

        /** Count median diameter, m: {@code Dv0.5 exp(-3 ln²s)}. */
        public double countMedianM() {
            return medianM * Math.exp(-3 * logDeviation * logDeviation);
        }
    }
}
