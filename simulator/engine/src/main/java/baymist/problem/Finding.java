package baymist.problem;

/**
 * One problem or remark, told so that the user can act on it.
 *
 * @param id stable message id such as {@code SCN-012}; docs/troubleshooting.md is indexed by it
 * @param place file, line and field; for findings about results the file is the scene
 * @param text one clear sentence: what was found and what would be right
 */
public record Finding(String id, Severity severity, SourcePlace place, String text) {
    @Override
    public String toString() {
        return place + ": " + text + " [" + id + "]";
    }
}
