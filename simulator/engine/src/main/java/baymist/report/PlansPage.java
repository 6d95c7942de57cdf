package baymist.report;

import baymist.plan.GriddedPasses;
import baymist.plan.PlanProof;
import baymist.run.RunResult;
import java.util.Locale;
import java.util.TreeMap;

/** The page that holds plans against gridded passes (docs/validation/plans.md): one row a scene; a scene that is proved again gets its row anew. */
public final class PlansPage {
    private static final String HEAD =
            "# Plans against a hundred gridded passes\n\nWritten by `baymist verify --write DIR --plans SCENE` (with"
                    + " `--full` for the last two columns); do not edit. *Grid*: single passes through one entry, evenly over entries and wands,"
                    + " clock angles, draw-back rates and start depths (`GriddedPasses`), each run at planning resolution with projected air. *Best"
                    + " pass*: the one that reaches most. *Plan*: by `baymist plan` with no more product than the best pass takes, run in the same"
                    + " way. *Reached*: share of all structure inside with 1 µm or what the scene states as haze. *Full*: the same two jobs at"
                    + " the scene's own resolution with its air. *All*: plan and best pass alike reach all that is not in a bay which no wand at hand"
                    + " can spray.\n\n"
                    + "| scene | grid | best pass | product | plan | product | passes | runs | best pass, full | plan, full |\n"
                    + "|---|---|---|---|---|---|---|---|---|---|\n";

    private PlansPage() {}

    /** The page with a row put in. */
    public static String with(String page, String scene, PlanProof proof) {
        TreeMap<String, String> rows = new TreeMap<>();
        page.lines()
                .filter(l -> l.startsWith("| ") && !l.startsWith("| scene "))
                .forEach(l -> rows.put(l.substring(2, l.indexOf(" |", 2)), l));
        rows.put(scene, row(scene, proof));
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
        return p.wins()
                ? "the plan reaches more"
                : p.nothingMore() ? "both reach all that is not in a blind bay" : "the plan does not reach more";
    }

    private static String row(String scene, PlanProof p) {
        GriddedPasses.Row best = p.best();
        RunResult verified = p.plan().verified();
        RunResult grid = p.gridFull();
        return String.format(
                Locale.ROOT,
                "| %s | %d | %.1f %% | %.1f mL | %.1f %%%s | %.1f mL | %d | %d | %s | %s |",
                scene,
                p.grid(),
                100 * best.score().reached(),
                1e6 * best.score().productM3(),
                100 * p.plan().checked().reached(),
                !p.wins() && p.nothingMore() ? " (all)" : "",
                1e6 * p.plan().checked().productM3(),
                p.plan().planned().passes().size(),
                p.plan().runs(),
                grid == null ? "" : full(grid),
                verified == null ? "" : full(verified));
    }

    private static String full(RunResult run) {
        return String.format(
                Locale.ROOT,
                "%.1f %%, %s air",
                100 * run.coverage().total().reached(),
                run.record().settings().getOrDefault("air", "its"));
    }
}
