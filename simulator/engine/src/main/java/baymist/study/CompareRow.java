package baymist.study;

import org.jspecify.annotations.Nullable;

/**
 * What came of a candidate.
 *
 * @param result of its run; null if it was not run
 * @param full of its run at the scene's own resolution, for the finalists; else null
 * @param why what kept it from being run: it can't be done, or it was cut; "" if it was run
 * @param cut whether it was left out because it could not win
 * @param pareto whether no other candidate that was run is at least as good in everything and better in something
 */
public record CompareRow(
        Candidate candidate,
        @Nullable StudyResult result,
        @Nullable StudyResult full,
        String why,
        boolean cut,
        boolean pareto) {
    static CompareRow run(Candidate c, StudyResult r) {
        return new CompareRow(c, r, null, "", false, false);
    }

    static CompareRow refused(Candidate c, String why) {
        return new CompareRow(c, null, null, why, false, false);
    }

    static CompareRow cut(Candidate c, String why) {
        return new CompareRow(c, null, null, why, true, false);
    }

    CompareRow marked(boolean isPareto) {
        return new CompareRow(candidate, result, full, why, cut, isPareto);
    }

    CompareRow inFull(StudyResult r) {
        return new CompareRow(candidate, result, r, why, cut, pareto);
    }

    /** The full run where there is one, else the planning run. */
    StudyResult judged() {
        return full != null ? full : outcome();
    }

    public boolean ran() {
        return result != null;
    }

    /** The result of a row that was run. */
    public StudyResult outcome() {
        return java.util.Objects.requireNonNull(result, "the candidate was not run");
    }
}
