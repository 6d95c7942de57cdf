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
    private final Scene scene;
    private final Cavity cavity;
    private final VoxelGrid grid;
    private final List<DoseLine> lines;
    private final DoseColumn[][] columns;

    /** All sizes together, m/s, [lines][stations][surfels]. */
    private final float[][][] film;

    /** Correction of each surfel by what runs have shown, [surfels]. */
    private final double[] correction;

    DoseMatrix(
            Scene scene,
            Cavity cavity,
            VoxelGrid grid,
            List<DoseLine> lines,
            DoseColumn[][] columns,
            double[] binWeight,
            double[] correction) {
        this.scene = scene;
        this.cavity = cavity;
        this.grid = grid;
        this.lines = lines;
        this.columns = columns;
        this.correction = correction;
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
        return new DoseMatrix(scene, cavity, grid, lines, columns, binWeight, correction);
    }

    /** The same with its rows multiplied, [surfels]. */
    DoseMatrix corrected(double[] factor) {
        double[] ones = new double[columns[0][0].bins()];
        java.util.Arrays.fill(ones, 1);
        double[] both = correction.clone();
        for (int s = 0; s < both.length; s++) {
            both[s] *= factor[s];
        }
        return new DoseMatrix(scene, cavity, grid, lines, columns, ones, both);
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

    /** Film of a plan on each surfel, m, [surfels]. */
    public double[] filmM(List<Stroke> plan) {
        double[] sum = new double[correction.length];
        for (Stroke s : plan) {
            add(s, 1, sum);
        }
        return sum;
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

    /** What a plan is worth, by the matrix. */
    public PlanScore score(double[] filmM, double triggerS) {
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
        return new PlanScore(reached / all, built / all, triggerS);
    }

    /** What a plan is worth, by the matrix. */
    public PlanScore score(List<Stroke> plan) {
        return score(filmM(plan), plan.stream().mapToDouble(this::triggerS).sum());
    }
}
