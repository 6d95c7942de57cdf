package baymist.explain;

import baymist.coverage.UnreachedRegion;
import baymist.problem.Finding;
import baymist.run.RunResult;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Why a place stays bare and what would change it.
 *
 * @param base the job as stated, at planning resolution
 * @param region the place that was asked about
 * @param film what it gets as the job stands
 * @param cause why it stays bare
 * @param proved whether a run with one change proved it; otherwise facts alone speak for it
 * @param fact which fact speaks for the cause, a clause without its full stop
 * @param proof the change whose run proved it, or null if none did
 * @param facts what was found, a tree
 * @param remedies all changes that were run, best first
 * @param recommended the one to begin with, or null if none holds
 * @param needs where none holds: what would have to be true, whole sentences; else empty
 * @param items protected items with and without a mask, those that the question is open for
 * @param notRun changes that could not be run, with the reason
 * @param runs runs that were made, the first one included
 * @param findings warnings about the scene and the first run
 */
public record Explanation(
        RunResult base,
        UnreachedRegion region,
        PatchFilm film,
        Cause cause,
        boolean proved,
        String fact,
        @Nullable Remedy proof,
        List<Fact> facts,
        List<Remedy> remedies,
        @Nullable Remedy recommended,
        List<String> needs,
        List<MaskAdvice> items,
        List<String> notRun,
        int runs,
        List<Finding> findings) {
    public Explanation {
        facts = List.copyOf(facts);
        remedies = List.copyOf(remedies);
        needs = List.copyOf(needs);
        items = List.copyOf(items);
        notRun = List.copyOf(notRun);
        findings = List.copyOf(findings);
    }

    /**
     * The account in whole sentences, plain text without line breaks, in the order in which they are read aloud: the place and its film, the
     * cause, what speaks for it, the run that proves it, what to try first or that nothing is enough and what would have to be true,
     * protected items. Never empty; the same words in the report, on a screen and on a card.
     */
    public List<String> sentences() {
        return Account.of(this);
    }

    /** Which fact and which run decided, in one clause. */
    public String because() {
        return proof == null ? fact : fact + "; and a run proves it: " + Account.outcome(proof);
    }
}
