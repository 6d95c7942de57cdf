package baymist.verify;

import baymist.problem.SceneException;
import baymist.problem.SimulationException;
import baymist.problem.SourcePlace;
import baymist.run.RunObserver;
import baymist.run.RunOptions;
import baymist.units.QuantityException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Evaluates the verification table. */
public final class Verification {
    private Verification() {}

    /**
     * Evaluates the cases of a folder.
     *
     * @param folder holds {@code cases.csv} and the scenes that it names
     * @param caseId one case, or empty for all
     * @throws SceneException if the table is faulty or has no such case
     */
    public static VerificationReport run(Path folder, String caseId, RunOptions options, RunObserver observer) {
        Path table = folder.resolve("cases.csv");
        List<VerificationCase> cases = CaseTable.read(table).stream()
                .filter(c -> caseId.isEmpty() || c.id().equals(caseId))
                .toList();
        if (cases.isEmpty()) {
            throw new SceneException(
                    "VER-004",
                    SourcePlace.of(table.toString()),
                    caseId.isEmpty() ? "the table holds no case" : "there is no case \"" + caseId + "\"");
        }
        observer.stage("cases");
        SceneQuantities scenes = new SceneQuantities(options);
        FormulaQuantities formulas = new FormulaQuantities();
        List<Outcome> outcomes = new ArrayList<>();
        for (VerificationCase c : cases) {
            outcomes.add(evaluate(c, scenes, formulas));
            observer.progress((double) outcomes.size() / cases.size(), 0);
        }
        return new VerificationReport(outcomes);
    }

    private static Outcome evaluate(VerificationCase c, SceneQuantities scenes, FormulaQuantities formulas) {
        try {
            double value = scenes.has(c.quantity())
                    ? scenes.value(c.quantity(), c.inputs())
                    : formulas.value(c.quantity(), c.inputs());
            return new Outcome(c, value, "");
        } catch (IllegalArgumentException | QuantityException | SceneException | SimulationException e) {
            return new Outcome(c, Double.NaN, String.valueOf(e.getMessage()));
        }
    }
}
