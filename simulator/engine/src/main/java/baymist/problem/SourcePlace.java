package baymist.problem;

/** Where in the input something stands: file as the user named it, 1-based line (0 = unknown), field path. */
public record SourcePlace(String file, int line, String field) {
    public static SourcePlace of(String file) {
        return new SourcePlace(file, 0, "");
    }

    @Override
    public String toString() {
        String place = line > 0 ? file + ":" + line : file;
        return field.isEmpty() ? place : place + " " + field;
    }
}
