package baymist.viewer.model;

import baymist.problem.SceneException;
import baymist.problem.SimulationException;
import java.io.IOException;
import java.nio.file.NoSuchFileException;

/** What went wrong, in words for the one who looks at the window. */
public final class Sentences {
    private Sentences() {}

    /** One sentence or more; for a scene every problem on a line of its own. */
    public static String of(Throwable problem) {
        String text = problem.getMessage() == null ? "" : problem.getMessage();
        if (problem instanceof SceneException || problem instanceof SimulationException) {
            return text;
        }
        if (problem instanceof NoSuchFileException) {
            return "There is no file " + text + ".";
        }
        if (problem instanceof IOException) {
            return "A file could not be read or written: " + text + ".";
        }
        if (problem instanceof OutOfMemoryError) {
            return "There is not enough memory for this; take larger voxels, or start the program with more (-Xmx4g).";
        }
        return "The computation ended with an error of the program itself ("
                + problem.getClass().getSimpleName() + (text.isEmpty() ? "" : ": " + text) + "); nothing was written.";
    }
}
