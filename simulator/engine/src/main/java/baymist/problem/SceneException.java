package baymist.problem;

import java.util.List;
import java.util.stream.Collectors;

/** Input that the user can put right. Carries every problem found, not the first alone. */
public final class SceneException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<Finding> findings;

    public SceneException(List<Finding> findings) {
        super(findings.stream().map(Finding::toString).collect(Collectors.joining("\n")));
        this.findings = List.copyOf(findings);
    }

    public SceneException(String id, SourcePlace place, String text) {
        this(List.of(new Finding(id, Severity.ERROR, place, text)));
    }

    public List<Finding> findings() {
        return findings;
    }
}
