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
     * @param limits trigger time, product and slowest rate; the last bounds the time on each station
     * @return trigger time on each station, s, [lines][stations]
     */
    static double[][] solve(DoseMatrix matrix, Patches patches, PlanLimits limits) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        int lines = matrix.lines().size();
        Variable[][] time = new Variable[lines][];
        Expression trigger =
                Double.isFinite(limits.triggerS()) ? model.newExpression("time").upper(1) : null;
        Expression product = Double.isFinite(limits.productM3())
                ? model.newExpression("product").upper(1)
                : null;
        double density = matrix.scene().product().densityKgPerM3();
        double[][][] dose = new double[lines][][];
        double[] there =
                patches.means(matrix.filmM(java.util.List.of()), matrix.grid().surfels());
        double all = java.util.Arrays.stream(patches.areaM2()).sum();
        for (int l = 0; l < lines; l++) {
            DoseLine line = matrix.lines().get(l);
            time[l] = new Variable[line.stations()];
            dose[l] = new double[line.stations()][];
            for (int k = 0; k < line.stations(); k++) {
                dose[l][k] = dose(matrix, patches, l, k);
                time[l][k] = model.newVariable("t" + l + "_" + k)
                        .lower(0)
                        .upper(line.spacingM() / limits.slowestMPerS())
                        .weight(PlanScore.USE_WORTH * limits.use(1, matrix.sprayedKgPerS(l, k) / density));
                if (trigger != null) {
                    trigger.set(time[l][k], 1 / limits.triggerS());
                }
                if (product != null) {
                    product.set(time[l][k], matrix.sprayedKgPerS(l, k) / density / limits.productM3());
                }
            }
        }
        double haze = MARGIN * matrix.scene().targets().hazeM();
        double build = Math.max(haze, matrix.scene().targets().buildM());
        for (int p = 0; p < patches.count(); p++) {
            double share = patches.areaM2()[p] / all;
            level(model, "h" + p, time, dose, p, haze, there[p], share);
            level(model, "b" + p, time, dose, p, build, there[p], PlanScore.BUILD_WORTH * share);
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
            double thereM,
            double worth) {
        Variable shortfall = model.newVariable(name).lower(0).upper(1).weight(worth);
        Expression e = model.newExpression("e" + name).lower(1 - thereM / targetM);
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
