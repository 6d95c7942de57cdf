package baymist.study;

import org.jspecify.annotations.Nullable;

/**
 * What came of a candidate.
 *
 * @param result of its run; null if it was not run
 * @param why what kept it from being run: it can't be done, or it was cut; "" if it was run
 * @param cut whether it was left out because it could not win
 * @param pareto whether no other candidate that was run is at least as good in everything and better in something
 */
public record CompareRow(
        Candidate candidate, @Nullable StudyResult result, String why, boolean cut, boolean pareto) {
    static CompareRow run(Candidate c, StudyResult r) {
        return new CompareRow(c, r, "", false, false);
    }

    static CompareRow refused(Candidate c, String why) {
        return new CompareRow(c, null, why, false, false);
    }

    static CompareRow cut(Candidate c, String why) {
        return new CompareRow(c, null, why, true, false);
    }

    CompareRow marked(boolean isPareto) {
        return new CompareRow(candidate, result, why, cut, isPareto);
    }

    public boolean ran() {
        return result != null;
    }

    /** The result of a row that was run. */
    public StudyResult outcome() {
        return java.util.Objects.requireNonNull(result, "the candidate was not run");
    }
}
