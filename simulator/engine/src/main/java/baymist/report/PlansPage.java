package baymist.report;

import baymist.plan.PlanProof;
import baymist.plan.PlanResult;
import baymist.plan.PlanScore;
import baymist.run.RunResult;
import java.util.Locale;
import java.util.TreeMap;

/** The page that holds plans against gridded passes (docs/validation/plans.md): one row a scene; a scene that is proved again gets its row anew. */
public final class PlansPage {
    private static final String HEAD = """
            # Plans against a hundred gridded passes

            Written by `baymist verify --write DIR --plans SCENE` (with `--full` for the last two columns); do not edit. *Grid*: single passes through one entry, \
            evenly over entries and wands, clock angles, draw-back rates and start depths (`GriddedPasses`), each run at planning resolution with projected air. \
            *Best pass*: the one that reaches most. *Plan*: by `baymist plan` with no more product than the best pass takes, run in the same way. First figure: \
            share of all structure inside with 1 µm or what the scene states as haze (reached); second, where given: share with the build that protects. *Full*: the reached \
            shares of the same two jobs at the scene's own resolution with its air. *Drilled*: where a scene allows drilling and no plan reaches more, the plan \
            with holes, within the same product. *All*: plan and best pass alike reach all that is not in a bay which no wand at hand can spray; there \
            the plan has to protect more or take less.

            | scene | grid | best pass | product | plan | product | passes | runs | best pass, full | plan, full |
            |---|---|---|---|---|---|---|---|---|---|
            """;

    private static final String DRILLED = ", drilled";

    private PlansPage() {}

    /** The page with a row put in. */
    public static String with(String page, String scene, PlanProof proof) {
        TreeMap<String, String> rows = new TreeMap<>();
        page.lines()
                .filter(l -> l.startsWith("| ") && !l.startsWith("| scene "))
                .forEach(l -> rows.put(l.substring(2, l.indexOf(" |", 2)), l));
        rows.keySet().removeIf(k -> k.equals(scene) || k.equals(scene + DRILLED));
        rows.put(scene, row(scene, proof, proof.plan(), !proof.reachesMore() && proof.betterAtTheSame()));
        PlanResult drilled = proof.drilled();
        if (drilled != null) {
            rows.put(scene + DRILLED, row(scene + DRILLED, proof, drilled, false));
        }
        return HEAD + String.join("\n", rows.values()) + "\n";
    }

    /** One sentence for the console. */
    public static String sentence(PlanProof p) {
        return String.format(
                Locale.ROOT,
                "best of %d passes %.1f %% with %.1f mL, plan %.1f %% with %.1f mL: %s",
                p.grid(),
                100 * p.best().score().reached(),
                1e6 * p.best().score().productM3(),
                100 * p.plan().checked().reached(),
                1e6 * p.plan().checked().productM3(),
                verdict(p));
    }

    private static String verdict(PlanProof p) {
        PlanResult drilled = p.drilled();
        String holes = drilled == null
                ? ""
                : String.format(
                        Locale.ROOT,
                        "; drilled (%s) %.1f %% with %.1f mL",
                        String.join(
                                ", ",
                                PlanReport.holes(drilled).stream()
                                        .map(h -> h.name())
                                        .toList()),
                        100 * drilled.checked().reached(),
                        1e6 * drilled.checked().productM3());
        return (p.reachesMore()
                        ? "the plan reaches more"
                        : p.betterAtTheSame()
                                ? "both reach all that is not in a blind bay, the plan protects more or takes less"
                                : "the plan does not reach more")
                + holes;
    }

    private static String row(String scene, PlanProof p, PlanResult plan, boolean all) {
        PlanScore best = p.best().score();
        PlanScore checked = plan.checked();
        RunResult verified = plan.verified();
        RunResult grid = p.gridFull();
        return String.format(
                Locale.ROOT,
                "| %s | %d | %s | %.2f mL | %s%s | %.2f mL | %d | %d | %s | %s |",
                scene,
                p.grid(),
                shares(best),
                1e6 * best.productM3(),
                shares(checked),
                all ? " (all)" : "",
                1e6 * checked.productM3(),
                plan.planned().passes().size(),
                plan.runs(),
                grid == null ? "" : full(grid),
                verified == null ? "" : full(verified));
    }

    private static String shares(PlanScore s) {
        return String.format(Locale.ROOT, "%.1f %%, %.1f %%", 100 * s.reached(), 100 * s.protectedShare());
    }

    private static String full(RunResult run) {
        return String.format(
                Locale.ROOT,
                "%.1f %%, %s air",
                100 * run.coverage().total().reached(),
                run.record().settings().getOrDefault("air", "its"));
    }
}
