package baymist.report;

import baymist.plan.PlanResult;
import baymist.plan.PlanScore;
import baymist.run.RunResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What full runs made of a plan, in words. */
final class PlanFullWords {
    /** Points of coverage that don't count as a difference. */
    private static final double SAME = 0.01;

    private PlanFullWords() {}

    /** A line of the table of what was promised and found. */
    record Row(String what, PlanScore score) {}

    static List<Row> rows(PlanResult r) {
        RunResult run = r.verified();
        List<Row> all = new ArrayList<>();
        if (run == null) {
            return all;
        }
        String air = run.record().settings().getOrDefault("air", "as stated");
        List<PlanResult.Round> rounds = r.fullRounds();
        int handed = handed(r);
        for (int i = 0; i < rounds.size(); i++) {
            String plan = i == handed ? "the plan" : "plan " + (i + 1) + " tried in full";
            if (i > 0) {
                all.add(new Row(plan + ", matrix set right by it", rounds.get(i).predicted()));
            }
            all.add(new Row(plan + ", full run, air: " + air, rounds.get(i).found()));
        }
        return all;
    }

    /** Which of the plans that were run in full was handed over. */
    private static int handed(PlanResult r) {
        RunResult run = r.verified();
        for (int i = 0; run != null && i < r.fullRounds().size(); i++) {
            if (r.fullRounds().get(i).found().reached()
                    == run.coverage().total().reached()) {
                return i;
            }
        }
        return 0;
    }

    /** Whether the full run keeps what the planning run promised, and what was done where it does not; empty without a full run. */
    static String agreement(PlanResult r) {
        List<PlanResult.Round> rounds = r.fullRounds();
        if (rounds.isEmpty()) {
            return "";
        }
        PlanResult.Round first = rounds.get(0);
        double off = first.found().reached() - first.predicted().reached();
        if (off >= -SAME) {
            return off <= SAME
                    ? "Full and planning run agree within a point of coverage."
                    : String.format(
                            Locale.ROOT,
                            "The full run reaches %.1f points more than the planning run promised.",
                            100 * off);
        }
        String less = String.format(
                Locale.ROOT,
                "The full run reaches %.1f points less than the planning run promised: finer voxels and the air's own eddies show"
                        + " what coarse ones smear. ",
                -100 * off);
        if (rounds.size() == 1) {
            return less + "Set right by it, the matrix knows no plan that promises more.";
        }
        int handed = handed(r);
        return less
                + (handed == 0
                        ? "What the matrix, set right by it, proposed instead did not do better in full, so the plan stands."
                        : String.format(
                                Locale.ROOT,
                                "The matrix, set right by it, proposed another that gains %.1f points in full.",
                                100
                                        * (rounds.get(handed).found().reached()
                                                - first.found().reached())));
    }
}
