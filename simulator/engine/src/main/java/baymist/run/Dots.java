package baymist.run;

import baymist.film.DotPattern;
import baymist.scene.ProductSpec;
import baymist.scene.Scene;
import baymist.spray.SizeBins;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;

/** Where film is a pattern of dots: the one judgement for gate and outlook, by {@link DotPattern}, spots as old as the hang time. */
final class Dots {
    /** Wetted share from which a sheet counts as evenly covered for {@code FILM-010}. ASSUMED. */
    static final double EVEN_COVER = 0.9;

    private final Scene scene;
    private final SurfelSet surfels;
    private final double[] fogByBinKg;
    private final DotPattern pattern;
    private final double[] fogBuildM;

    /** @param fogByBinKg what fog left, kg, [surfels * bins] */
    Dots(Scene scene, VoxelGrid grid, SizeBins bins, double[] fogByBinKg) {
        this.scene = scene;
        this.surfels = grid.surfels();
        this.fogByBinKg = fogByBinKg;
        this.fogBuildM = new double[bins.count()];
        ProductSpec p = scene.product();
        double spread = p.surfaceTensionNPerM() * Math.max(1, scene.hangS()) / p.viscosityPaS();
        this.pattern = new DotPattern(bins.diameterM(), medianM(bins), spread);
    }

    /** Share of the structure's area. */
    record Shares(double closed, double wetted) {}

    /** Wetted share of one surfel, 0..1. */
    private double wetted(int surfel, double buildM) {
        double kgPerM = scene.product().densityKgPerM3() * surfels.areaM2()[surfel];
        for (int b = 0; b < fogBuildM.length; b++) {
            fogBuildM[b] = fogByBinKg[surfel * fogBuildM.length + b] / kgPerM;
        }
        return pattern.wettedShare(buildM, fogBuildM);
    }

    /** Share of area with a closed film, and wet under a lens. */
    Shares ofAll(double[] buildM) {
        double area = 0;
        double closed = 0;
        double wet = 0;
        for (int s = 0; s < buildM.length; s++) {
            if (surfels.isStructure(s)) {
                double a = surfels.areaM2()[s];
                double share = wetted(s, buildM[s]);
                area += a;
                wet += a * share;
                closed += DotPattern.closed(share) ? a : 0;
            }
        }
        return area > 0 ? new Shares(closed / area, wet / area) : new Shares(0, 0);
    }

    /** Share of the reached area that is not evenly covered. */
    double inReached(double[] buildM) {
        double reached = 0;
        double dotted = 0;
        for (int s = 0; s < buildM.length; s++) {
            if (surfels.isStructure(s) && buildM[s] >= scene.targets().hazeM()) {
                reached += surfels.areaM2()[s];
                dotted += wetted(s, buildM[s]) < EVEN_COVER ? surfels.areaM2()[s] : 0;
            }
        }
        return reached > 0 ? dotted / reached : 0;
    }

    private static double medianM(SizeBins bins) {
        double sum = 0;
        for (int b = 0; b < bins.count(); b++) {
            sum += bins.share()[b];
            if (sum >= 0.5) {
                return bins.diameterM()[b];
            }
        }
        return bins.diameterM()[bins.count() - 1];
    }
}
