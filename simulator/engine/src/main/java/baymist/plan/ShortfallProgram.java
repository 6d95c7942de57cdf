package baymist.plan;

import baymist.voxel.SurfelSet;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/**
 * Times on stations, none negative, that leave the least area short of its film: a linear program (docs/theory/plan.md, (3)).
 *
 * <p>A patch counts as reached a little above haze, since its film is a mean over what is uneven, and as built at the target.
 */
final class ShortfallProgram {
    /** Mean film of a patch over haze from which all of it is taken to be reached (ASSUMED: film within a patch varies that much). */
    static final double MARGIN = 3;

    private ShortfallProgram() {}

    /**
     * Solves it.
     *
     * @param limitS trigger time allowed, s
     * @param slowestMPerS slowest draw-back: bounds the time on each station, m/s
     * @return trigger time on each station, s, [lines][stations]
     */
    static double[][] solve(DoseMatrix matrix, Patches patches, double limitS, double slowestMPerS) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        int lines = matrix.lines().size();
        Variable[][] time = new Variable[lines][];
        Expression budget = model.newExpression("time").upper(limitS);
        double[][][] dose = new double[lines][][];
        double all = java.util.Arrays.stream(patches.areaM2()).sum();
        for (int l = 0; l < lines; l++) {
            DoseLine line = matrix.lines().get(l);
            time[l] = new Variable[line.stations()];
            dose[l] = new double[line.stations()][];
            for (int k = 0; k < line.stations(); k++) {
                dose[l][k] = dose(matrix, patches, l, k);
                time[l][k] = model.newVariable("t" + l + "_" + k)
                        .lower(0)
                        .upper(line.spacingM() / slowestMPerS)
                        .weight(PlanScore.TIME_WORTH / limitS);
                budget.set(time[l][k], 1);
            }
        }
        double haze = MARGIN * matrix.scene().targets().hazeM();
        double build = Math.max(haze, matrix.scene().targets().buildM());
        for (int p = 0; p < patches.count(); p++) {
            double share = patches.areaM2()[p] / all;
            level(model, "h" + p, time, dose, p, haze, share);
            level(model, "b" + p, time, dose, p, build, PlanScore.BUILD_WORTH * share);
        }
        Optimisation.Result result = model.minimise();
        double[][] seconds = new double[lines][];
        for (int l = 0; l < lines; l++) {
            seconds[l] = new double[time[l].length];
            for (int k = 0; k < time[l].length; k++) {
                double t = result.doubleValue(model.indexOf(time[l][k]));
                seconds[l][k] = result.getState().isFeasible() && t > 0 ? t : 0;
            }
        }
        return seconds;
    }

    /** Film over target + shortfall is at least 1. */
    private static void level(
            ExpressionsBasedModel model,
            String name,
            Variable[][] time,
            double[][][] dose,
            int patch,
            double targetM,
            double worth) {
        Variable shortfall = model.newVariable(name).lower(0).upper(1).weight(worth);
        Expression e = model.newExpression("e" + name).lower(1);
        e.set(shortfall, 1);
        for (int l = 0; l < time.length; l++) {
            for (int k = 0; k < time[l].length; k++) {
                double d = dose[l][k][patch] / targetM;
                if (d > 1e-6) {
                    e.set(time[l][k], d);
                }
            }
        }
    }

    private static double[] dose(DoseMatrix matrix, Patches patches, int line, int station) {
        SurfelSet s = matrix.grid().surfels();
        double[] rate = new double[s.count()];
        for (int i = 0; i < rate.length; i++) {
            rate[i] = matrix.filmMPerS(line, station, i);
        }
        return patches.means(rate, s);
    }
}
