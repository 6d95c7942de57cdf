package baymist.scene.io;

import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.Severity;
import baymist.problem.SourcePlace;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Collects every problem of one reading, in the order found; the same finding counts once. */
final class Problems {
    /** More than a person would read; a file of another kind would give thousands. */
    private static final int MOST = 200;

    private final Set<Finding> findings = new LinkedHashSet<>();

    void add(SceneProblem problem, SourcePlace place, String text) {
        if (findings.size() < MOST) {
            findings.add(new Finding(problem.id(), Severity.ERROR, place, text));
        }
    }

    boolean any() {
        return !findings.isEmpty();
    }

    SceneException exception() {
        return new SceneException(List.copyOf(findings));
    }
}
