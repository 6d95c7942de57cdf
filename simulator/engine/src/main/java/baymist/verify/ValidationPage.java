package baymist.verify;

import baymist.problem.SceneException;
import baymist.problem.SourcePlace;
import baymist.report.AtomicFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Keeps the tables of a hand-written page (docs/validation.md) those of a report: what stands between two marks is replaced. */
public final class ValidationPage {
    static final String BEGIN = "<!-- cases begin -->\n";
    static final String END = "<!-- cases end -->";

    private ValidationPage() {}

    /**
     * Writes the report's tables into the page.
     *
     * @throws SceneException if the page is not there, lacks the marks or can't be written
     */
    public static void write(Path page, VerificationReport report) {
        String text = read(page);
        String fresh = before(text, page) + BEGIN + "\n" + report.markdown() + "\n" + text.substring(text.indexOf(END));
        try {
            AtomicFile.writeText(page, out -> out.write(fresh));
        } catch (IOException e) {
            throw new SceneException(
                    "VER-006", SourcePlace.of(page.toString()), "the page can't be written: " + e.getMessage());
        }
    }

    /** The tables that stand in the page. */
    static String tables(Path page) {
        String text = read(page);
        return text.substring(before(text, page).length() + BEGIN.length(), text.indexOf(END))
                .strip();
    }

    private static String read(Path page) {
        try {
            return Files.readString(page, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new SceneException(
                    "VER-005", SourcePlace.of(page.toString()), "the page can't be read: " + e.getMessage());
        }
    }

    private static String before(String text, Path page) {
        int begin = text.indexOf(BEGIN);
        if (begin < 0 || text.indexOf(END) < begin) {
            throw new SceneException(
                    "VER-005",
                    SourcePlace.of(page.toString()),
                    "the page has no place for the tables; it must hold the lines \"" + BEGIN.strip() + "\" and \""
                            + END + "\" in this order");
        }
        return text.substring(0, begin);
    }
}
