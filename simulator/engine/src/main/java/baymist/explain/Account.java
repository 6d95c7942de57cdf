package baymist.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Tells an explanation as whole sentences, in the order in which one says them: place, cause, evidence, advice, cautions. */
final class Account {
    private Account() {}

    static List<String> of(Explanation e) {
        List<String> said = new ArrayList<>();
        place(e, said);
        said.add("The cause is " + e.cause().word() + ": " + lower(e.cause().sentence()));
        said.add((e.proved() ? "What was found: " : "No run proves it; what speaks for it: ") + e.fact() + ".");
        Remedy proof = e.proof();
        if (proof != null) {
            said.add((proof.holds() ? "A run proves it: " : "A run bears it out, though it is not enough by itself: ")
                    + outcome(proof) + ".");
        }
        advice(e, said);
        said.addAll(e.needs());
        e.items().forEach(i -> said.add(i.says()));
        return List.copyOf(said);
    }

    private static void place(Explanation e, List<String> said) {
        String where = e.region().where();
        if (e.region().id() > 0) {
            said.add(Words.say(
                    "Bare region %d (%s), %s in all: %s.",
                    e.region().id(), e.region().label(), Words.area(e.region().areaM2()), where));
            said.add("It gets " + film(e.film()) + ".");
        } else {
            said.add(upper(Words.the(where)) + " gets " + film(e.film()) + ".");
        }
    }

    /** "no film", "0.4 um of film, and 12 % of it is reached". */
    private static String film(PatchFilm f) {
        String film = f.meanM() <= 0 ? "no film" : Words.film(f.meanM()) + " of film on average";
        return f.reached() <= 0 ? film : film + ", and " + Words.share(f.reached()) + " of it is reached";
    }

    /** One change and what it brings, as a clause. */
    static String outcome(Remedy r) {
        return lower(r.change()) + ", and the film there goes from "
                + Words.film(r.before().meanM()) + " to "
                + Words.film(r.after().meanM()) + " and the reached share from "
                + Words.share(r.before().reached()) + " to "
                + Words.share(r.after().reached());
    }

    private static void advice(Explanation e, List<String> said) {
        Remedy best = e.recommended();
        if (best == null) {
            said.add(
                    e.remedies().isEmpty()
                            ? "No change was run."
                            : Words.say(
                                    "None of the %s run is enough, alone or together.",
                                    e.remedies().size() == 1
                                            ? "changes that could be"
                                            : e.remedies().size() + " changes that were"));
            return;
        }
        Remedy proof = e.proof();
        if (best.equals(proof)) {
            said.add("Try that first: of the whole structure " + Words.share(best.wholeAfter())
                    + " is then reached instead of " + Words.share(best.wholeBefore()) + ".");
        } else {
            String lead = proof == null || !proof.holds()
                    ? "What is enough: "
                    : proof.harms()
                            ? "Try this first, as it does not cost the rest of the structure: "
                            : "Try this first, as it takes less effort or brings more: ";
            said.add(lead + outcome(best) + "; of the whole structure " + Words.share(best.wholeAfter())
                    + " is then reached instead of " + Words.share(best.wholeBefore()) + ".");
        }
        if (!best.caution().isEmpty()) {
            said.add(best.caution());
        }
    }

    static String lower(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
    }

    static String upper(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
