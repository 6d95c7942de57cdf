package baymist.explain;

import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Ranks changes and chooses the one to begin with: docs/theory/explain.md, section 4. */
final class Choice {
    /** Share of the best change's gain from which one that drills nothing is recommended before it. ASSUMED. */
    private static final double GOOD_ENOUGH = 0.5;

    /** Share of the best change's gain from which one that takes less effort is recommended before it. ASSUMED. */
    private static final double NEARLY = 0.75;

    private Choice() {}

    /** Those that hold first, then by gain, then by effort. */
    static List<Remedy> ranked(List<Remedy> remedies) {
        return remedies.stream()
                .sorted(Comparator.comparing((Remedy r) -> !r.holds())
                        .thenComparing(r -> -r.gain())
                        .thenComparing(Remedy::kind))
                .toList();
    }

    /** The one to begin with, or null if none holds; one that harms a protected item or the rest of the structure only if there is no other. */
    static @Nullable Remedy of(List<Remedy> ranked) {
        List<Remedy> hold = ranked.stream().filter(Remedy::holds).toList();
        List<Remedy> harmless = hold.stream().filter(r -> !r.harms()).toList();
        List<Remedy> among = harmless.isEmpty() ? hold : harmless;
        if (among.isEmpty()) {
            return null;
        }
        Remedy best = among.get(0);
        Remedy whole = among.stream()
                .filter(r -> !r.kind().drills() && r.gain() >= GOOD_ENOUGH * best.gain())
                .findFirst()
                .orElse(best);
        return among.stream()
                .filter(r -> r.gain() >= NEARLY * whole.gain())
                .min(Comparator.comparing(Remedy::kind)
                        .thenComparing(r -> r.job().passes().size()))
                .orElse(whole);
    }
}
