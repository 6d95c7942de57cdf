package baymist.explain;

import baymist.coverage.ItemDose;
import baymist.run.RunResult;
import baymist.scene.DrillingSpec;
import baymist.scene.OpeningSpec;
import baymist.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** What has to be heeded with a change: drilling, masks, protected items that it harms. */
final class Cautions {
    private static final String MASK = "A mask is there for a reason: ask first what it keeps dry.";

    private Cautions() {}

    /**
     * Whole sentences, or empty.
     *
     * @param over protected items that the change puts over their limit
     * @param loss of the whole structure's reached share, 0..1; negative = gain
     */
    static String of(ChangeKind kind, Scene before, Scene changed, List<ItemDose> over, double loss) {
        List<String> said = new ArrayList<>();
        List<OpeningSpec> cuts =
                changed.cuts().stream().filter(c -> !before.cuts().contains(c)).toList();
        if (kind.drills() || !cuts.isEmpty()) {
            said.add(Remedy.DRILLING);
            String unnamed = cuts.stream()
                    .map(OpeningSpec::part)
                    .filter(p -> !allowed(before, p))
                    .distinct()
                    .map(Words::the)
                    .collect(Collectors.joining(" or "));
            if (!unnamed.isEmpty()) {
                said.add("The scene does not say that " + unnamed + " may be drilled, so this hole is hypothetical.");
            }
        }
        if (kind == ChangeKind.MASK_OFF) {
            said.add(MASK);
        }
        for (ItemDose d : over) {
            said.add(Words.say(
                    "With it the protected '%s' gets up to %s, more than its limit of %s.",
                    d.name(), Words.film(d.maxM()), Words.film(d.limitM())));
        }
        if (loss > Remedy.LOSS) {
            said.add(Words.say(
                    "It costs elsewhere: of the whole structure %.0f points less are reached than now.", 100 * loss));
        }
        return String.join(" ", said);
    }

    /** Items above their limit in a run that were not in the first one. */
    static List<ItemDose> newlyOver(RunResult base, RunResult run) {
        Set<String> before = MaskAdvice.all(base).stream()
                .filter(ItemDose::exceeded)
                .map(ItemDose::name)
                .collect(Collectors.toSet());
        return MaskAdvice.all(run).stream()
                .filter(d -> d.exceeded() && !before.contains(d.name()))
                .toList();
    }

    /** Whether the scene names a part as one that holes may be thought of in. */
    static boolean allowed(Scene scene, String part) {
        DrillingSpec drilling = scene.studies().drilling();
        return drilling != null && drilling.parts().contains(part) && !forbidden(scene, part);
    }

    /** Whether the scene marks a part as one that is never drilled. */
    static boolean forbidden(Scene scene, String part) {
        DrillingSpec drilling = scene.studies().drilling();
        return drilling != null
                && (drilling.primary().contains(part) || drilling.pressurised().contains(part));
    }
}
