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
 * @param because which fact and which run decided
 * @param facts what was found, a tree
 * @param remedies all changes that were run, best first
 * @param recommended the one to begin with, or null if none holds
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
        String because,
        List<Fact> facts,
        List<Remedy> remedies,
        @Nullable Remedy recommended,
        List<String> notRun,
        int runs,
        List<Finding> findings) {
    public Explanation {
        facts = List.copyOf(facts);
        remedies = List.copyOf(remedies);
        notRun = List.copyOf(notRun);
        findings = List.copyOf(findings);
    }
}
