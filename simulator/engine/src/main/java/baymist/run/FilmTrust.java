package baymist.run;

import baymist.scene.DropletSpec;
import baymist.scene.ProductSpec;
import baymist.scene.TargetSpec;
import baymist.spray.DropletBins;
import baymist.spray.SizeBins;
import baymist.spray.SprayDetail;
import baymist.spray.SprayHits;
import baymist.voxel.SurfelSet;

/**
 * What is kept beside the film to say how sure it is: direct film by droplet size and by half of the rays, shear, splash.
 *
 * <p>Film is linear in the droplets: as long as neither coagulation nor the fog's weight acts back on the air, what a size leaves on a
 * surfel is its share of the spray times a response that no other share changes. So one run that keeps film by size holds the film
 * of every
 * other median over the same sizes; three runs would cost three times as much and say the same (docs/theory/spray.md, 12).
 */
final class FilmTrust {
    /** Steps of the median through its range; shares need not be largest or least at its ends. */
    private static final int MEDIANS = 9;

    private final SurfelSet surfels;
    private final int bins;
    /** Direct film of one half of the rays, kg, [surfels]. */
    private final double[] half;

    /** All direct film as thrown, before anything ran, kg, [surfels]. */
    private final double[] thrown;

    /** The same by bin, kg, [surfels * bins]. */
    private final double[] byBin;

    /** Sum of shear slope times time of the jets that strike a surfel squarely, Pa s/m, [surfels]. */
    private final double[] shearTime;

    private double splashKg;
    private double landedKg;

    FilmTrust(SurfelSet surfels, int bins) {
        this.surfels = surfels;
        this.bins = bins;
        half = new double[surfels.count()];
        thrown = new double[surfels.count()];
        byBin = new double[surfels.count() * bins];
        shearTime = new double[surfels.count()];
    }

    /** Adds what the jets throw over a moment. */
    void advance(SprayHits hits, SprayDetail detail, Moment moment) {
        double dt = moment.durationS();
        for (int i = 0; i < hits.hitSurfel().length; i++) {
            int s = hits.hitSurfel()[i];
            thrown[s] += hits.hitKgPerS()[i] * dt;
            landedKg += hits.hitKgPerS()[i] * dt;
            half[s] += detail.halfKgPerS()[i] * dt;
            for (int b = 0; b < bins; b++) {
                byBin[s * bins + b] += detail.byBinKgPerS()[i * bins + b] * dt;
            }
        }
        splashKg += detail.splashKgPerS() * dt;
        double travel = moment.station() == null ? 0 : moment.station().travelM();
        for (int j = 0; j < detail.shearSurfel().length; j++) {
            double dwell = travel > 0 ? dt * 2 * detail.shearRadiusM()[j] / travel : dt;
            shearTime[detail.shearSurfel()[j]] += detail.shearPaPerM()[j] * dwell;
        }
    }

    /** Share of what landed from the jets that struck above the splash limit. */
    double splashShare() {
        return landedKg > 0 ? splashKg / landedKg : 0;
    }

    /** Sum of shear slope times time on a surfel, Pa s/m. */
    double shearTimePaSPerM(int surfel) {
        return shearTime[surfel];
    }

    /**
     * Range of the shares.
     *
     * @param build wet build at the end, m, [surfels]
     * @param fogByBinKg what fog left, kg, [surfels * bins]
     * @param size bins of the run, of {@code sizes}
     */
    Confidence confidence(
            double[] build,
            double[] fogByBinKg,
            SizeBins size,
            DropletSpec sizes,
            ProductSpec product,
            TargetSpec targets) {
        double factor = Math.max(1, sizes.dv50Factor());
        double[] reached = {1, 0};
        double[] treated = {1, 0};
        for (int k = 0; k < MEDIANS; k++) {
            double move = Math.pow(factor, 2.0 * k / (MEDIANS - 1) - 1);
            double[] shares = shares(moved(build, fogByBinKg, size, sizes, move), targets);
            widen(reached, shares[0]);
            widen(treated, shares[1]);
        }
        double[] now = shares(build, targets);
        widen(reached, now[0]);
        widen(treated, now[1]);
        double[] first = halfBuild(build, product, 1);
        double[] second = halfBuild(build, product, -1);
        return new Confidence(
                factor,
                reached[0],
                reached[1],
                treated[0],
                treated[1],
                rayError(first, second, build, targets.hazeM()),
                rayError(first, second, build, targets.buildM()));
    }

    private static void widen(double[] range, double share) {
        range[0] = Math.min(range[0], share);
        range[1] = Math.max(range[1], share);
    }

    /**
     * Standing error of the share of area above a film, from two estimates of the film with half the rays each. Scatter: half the
     * difference of their shares, or half the root of the sum of squares of the surfels on which they differ, whichever is more (one
     * difference alone may be small by chance). Bias: the distance of their mean share from the whole's is what doubling the rays
     * did; as much is
     * taken to be left, as for a bias that goes with one over the rays.
     */
    private double rayError(double[] first, double[] second, double[] whole, double thresholdM) {
        double all = 0;
        double a = 0;
        double b = 0;
        double w = 0;
        double apart = 0;
        for (int s = 0; s < whole.length; s++) {
            if (surfels.isStructure(s)) {
                double area = surfels.areaM2()[s];
                all += area;
                a += first[s] >= thresholdM ? area : 0;
                b += second[s] >= thresholdM ? area : 0;
                w += whole[s] >= thresholdM ? area : 0;
                apart += first[s] >= thresholdM != second[s] >= thresholdM ? area * area : 0;
            }
        }
        double scatter = Math.max(0.5 * Math.abs(a - b), 0.5 * Math.sqrt(apart));
        return all > 0 ? Math.hypot(scatter, 0.5 * (a + b) - w) / all : 0;
    }

    /** Film of the whole job if only one half of the rays had been sent, twice as strong each. */
    private double[] halfBuild(double[] build, ProductSpec product, int sign) {
        double[] out = new double[build.length];
        for (int s = 0; s < out.length; s++) {
            double extra = sign * (2 * half[s] - thrown[s]) / (product.densityKgPerM3() * surfels.areaM2()[s]);
            out[s] = Math.max(0, build[s] + extra);
        }
        return out;
    }

    /** Film if the median were moved by a factor; what ran is moved as the film around it. */
    private double[] moved(double[] build, double[] fogByBinKg, SizeBins size, DropletSpec sizes, double factor) {
        double[] to = DropletBins.movedShares(sizes, bins, factor);
        double[] weight = new double[bins];
        for (int b = 0; b < bins; b++) {
            weight[b] = size.share()[b] > 0 ? to[b] / size.share()[b] : 0;
        }
        double[] out = new double[build.length];
        for (int s = 0; s < out.length; s++) {
            double before = 0;
            double after = 0;
            for (int b = 0; b < bins; b++) {
                double kg = byBin[s * bins + b] + fogByBinKg[s * bins + b];
                before += kg;
                after += weight[b] * kg;
            }
            out[s] = before > 0 ? build[s] * after / before : build[s];
        }
        return out;
    }

    /** Reached and protected share of the structure's area. */
    private double[] shares(double[] film, TargetSpec targets) {
        double all = 0;
        double reached = 0;
        double treated = 0;
        for (int s = 0; s < film.length; s++) {
            if (surfels.isStructure(s)) {
                double area = surfels.areaM2()[s];
                all += area;
                reached += film[s] >= targets.hazeM() ? area : 0;
                treated += film[s] >= targets.buildM() ? area : 0;
            }
        }
        return all > 0 ? new double[] {reached / all, treated / all} : new double[2];
    }
}
