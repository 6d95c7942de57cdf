package baymist.plan;

import baymist.cavity.Cavity;
import baymist.scene.Scene;
import baymist.scene.TargetSpec;
import baymist.voxel.SurfelSet;
import baymist.voxel.VoxelGrid;
import java.util.List;

/**
 * Film per trigger-second on each surfel from each station: the film of a plan is a sum over its strokes. An estimate: never told as a result.
 */
public final class DoseMatrix {
    /** Largest factor by which a run corrects a surfel, either way (ASSUMED: keeps rounds from swinging). */
    private static final double MOST_CORRECTION = 4;

    /** Film in units of haze that counts as none in that correction. */
    private static final double LITTLE = 0.1;

    private final Scene scene;
    private final Cavity cavity;
    private final VoxelGrid grid;
    private final List<DoseLine> lines;
    private final DoseColumn[][] columns;

    /** All sizes together, m/s, [lines][stations][surfels]. */
    private final float[][][] film;

    /** Correction of each surfel by what runs have shown, [surfels]. */
    private final double[] correction;

    /** Film that runs found beside what stations give, m, [surfels]. */
    private final double[] offsetM;

    DoseMatrix(
            Scene scene,
            Cavity cavity,
            VoxelGrid grid,
            List<DoseLine> lines,
            DoseColumn[][] columns,
            double[] binWeight,
            double[] correction,
            double[] offsetM) {
        this.scene = scene;
        this.cavity = cavity;
        this.grid = grid;
        this.lines = lines;
        this.columns = columns;
        this.correction = correction;
        this.offsetM = offsetM;
        this.film = new float[columns.length][][];
        for (int l = 0; l < columns.length; l++) {
            film[l] = new float[columns[l].length][];
            for (int k = 0; k < columns[l].length; k++) {
                film[l][k] = columns[l][k].together(binWeight);
            }
        }
    }

    /** The same with other shares of the sizes over those that it was made with, [bins]. */
    DoseMatrix weighted(double[] binWeight) {
        return new DoseMatrix(scene, cavity, grid, lines, columns, binWeight, correction, offsetM);
    }

    /**
     * The same, right about one plan: rows times what a run of it found over what the matrix says, within a factor, and what is then missing as film that is
     * there anyway.
     *
     * @param filmM film of a run of the plan, m, [surfels]
     */
    DoseMatrix anchored(List<Stroke> plan, double[] filmM) {
        double[] says = new double[correction.length];
        for (Stroke s : plan) {
            add(s, 1, says);
        }
        double little = LITTLE * scene.targets().hazeM();
        double[] factor = new double[correction.length];
        double[] beside = new double[correction.length];
        for (int s = 0; s < factor.length; s++) {
            double ratio = (filmM[s] + little) / (Math.max(0, says[s]) + little);
            double held = Math.max(1 / MOST_CORRECTION, Math.min(MOST_CORRECTION, ratio));
            factor[s] = correction[s] * held;
            beside[s] = filmM[s] - held * says[s];
        }
        double[] ones = new double[columns[0][0].bins()];
        java.util.Arrays.fill(ones, 1);
        return new DoseMatrix(scene, cavity, grid, lines, columns, ones, factor, beside);
    }

    /** The scene at the resolution of the matrix, with the passes that it states. */
    public Scene scene() {
        return scene;
    }

    public Cavity cavity() {
        return cavity;
    }

    public VoxelGrid grid() {
        return grid;
    }

    public List<DoseLine> lines() {
        return lines;
    }

    /** Liquid leaving the tip at a station, kg/s. */
    double sprayedKgPerS(int line, int station) {
        return columns[line][station].sprayedKgPerS();
    }

    /** Film per trigger-second on a surfel, m/s. */
    public double filmMPerS(int line, int station, int surfel) {
        return correction[surfel] * film[line][station][surfel];
    }

    /** Trigger time of a stroke, s. */
    public double triggerS(Stroke s) {
        return (s.last() - s.first() + 1) * lines.get(s.line()).spacingM() / s.rateMPerS();
    }

    /** Liquid of a stroke, m³. */
    public double productM3(Stroke s) {
        DoseLine line = lines.get(s.line());
        double kgPerS = 0;
        for (int k = s.first(); k <= s.last(); k++) {
            kgPerS += sprayedKgPerS(s.line(), k);
        }
        return kgPerS * line.spacingM() / s.rateMPerS() / scene.product().densityKgPerM3();
    }

    /** Film of a plan on each surfel, m, [surfels]. */
    public double[] filmM(List<Stroke> plan) {
        double[] sum = offsetM.clone();
        for (Stroke s : plan) {
            add(s, 1, sum);
        }
        return sum;
    }

    /** Film that runs found beside what stations give, m, on a surfel. */
    double offsetM(int surfel) {
        return offsetM[surfel];
    }

    /** Adds a stroke's film times a sign. */
    void add(Stroke stroke, double sign, double[] filmM) {
        double time = sign * lines.get(stroke.line()).spacingM() / stroke.rateMPerS();
        for (int k = stroke.first(); k <= stroke.last(); k++) {
            float[] rate = film[stroke.line()][k];
            for (int s = 0; s < filmM.length; s++) {
                filmM[s] += time * correction[s] * rate[s];
            }
        }
    }

    /** Adds what a station gives in a time, s. */
    void addAt(int line, int station, double timeS, double[] filmM) {
        float[] rate = film[line][station];
        for (int s = 0; s < filmM.length; s++) {
            filmM[s] += timeS * correction[s] * rate[s];
        }
    }

    /** What a film is worth. */
    PlanScore score(double[] filmM, double triggerS, double productM3) {
        SurfelSet surfels = grid.surfels();
        TargetSpec target = scene.targets();
        double all = 0;
        double reached = 0;
        double built = 0;
        for (int s = 0; s < filmM.length; s++) {
            if (surfels.isStructure(s)) {
                double area = surfels.areaM2()[s];
                all += area;
                reached += filmM[s] >= target.hazeM() ? area : 0;
                built += filmM[s] >= target.buildM() ? area : 0;
            }
        }
        return new PlanScore(reached / all, built / all, triggerS, productM3);
    }

    /** What a plan is worth, by the matrix. */
    public PlanScore score(List<Stroke> plan) {
        return score(
                filmM(plan),
                plan.stream().mapToDouble(this::triggerS).sum(),
                plan.stream().mapToDouble(this::productM3).sum());
    }
}
