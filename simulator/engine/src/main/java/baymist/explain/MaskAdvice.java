package baymist.explain;

import baymist.coverage.ItemAssessor;
import baymist.coverage.ItemDose;
import baymist.run.RunResult;
import baymist.scene.ProtectedItem;
import java.util.List;

/**
 * A protected item with and without its mask, from two runs that differ in the mask alone.
 *
 * @param item its name
 * @param limitM film above which it counts as exceeded, m
 * @param maskedNow whether the job as stated masks it
 * @param bareM largest film on it without a mask, m
 * @param onMaskKg product that lands on the mask instead, kg
 * @param needed whether it would exceed its limit without one
 */
public record MaskAdvice(String item, double limitM, boolean maskedNow, double bareM, double onMaskKg, boolean needed) {
    /** Whether a job leaves the question open: what is masked may not need it, what is bare and above its limit does. */
    static boolean isOpen(ItemDose dose) {
        return dose.areaM2() > 0 && (dose.masked() || dose.exceeded());
    }

    /** From the run as stated and the one with the item's mask off (if it is on) or on (if it is off). */
    static MaskAdvice of(ProtectedItem item, RunResult stated, RunResult turned) {
        RunResult bare = item.masked() ? turned : stated;
        RunResult masked = item.masked() ? stated : turned;
        ItemDose without = dose(item, bare);
        return new MaskAdvice(
                item.name(),
                item.limitM(),
                item.masked(),
                without.maxM(),
                dose(item, masked).filmKg(),
                without.exceeded());
    }

    /** The doses of all items of a run. */
    static List<ItemDose> all(RunResult run) {
        return ItemAssessor.assess(run.scene(), run.cavity(), run.grid(), run.filmM());
    }

    private static ItemDose dose(ProtectedItem item, RunResult run) {
        return all(run).stream()
                .filter(d -> d.name().equals(item.name()))
                .findFirst()
                .orElseThrow();
    }

    /** As a sentence. */
    public String says() {
        String gets = Words.say(
                "Without a mask '%s' gets up to %s of film; its limit is %s.",
                item, Words.film(bareM), Words.film(limitM));
        if (needed) {
            return gets
                    + (maskedNow
                            ? Words.say(" The mask is needed: it takes %s of product instead.", Words.mass(onMaskKg))
                            : Words.say(
                                    " Mask it: then %s of product lands on the mask and none on the item.",
                                    Words.mass(onMaskKg)));
        }
        return gets + " By this run it would do without its mask; ask what else the mask is there for.";
    }
}
