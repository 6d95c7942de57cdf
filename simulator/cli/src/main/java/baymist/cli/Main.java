package baymist.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.logging.Level;
import java.util.logging.Logger;

/** Entry point of {@code baymist.jar}. */
public final class Main {
    /** The PDF library tells of fonts that it would use if a page asked for them; held, so that its level stays set. */
    private static final Logger PDF_LIBRARY = Logger.getLogger("org.apache.pdfbox");

    private Main() {}

    /** Runs one command and ends the program with its exit code. */
    public static void main(String[] args) {
        System.setProperty("java.awt.headless", "true");
        PDF_LIBRARY.setLevel(Level.SEVERE);
        PrintWriter out = new PrintWriter(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        System.exit(run(args, out, err, Terminals.watched()));
    }

    /**
     * Runs one command for a caller who goes on afterwards, such as a check of many commands.
     *
     * @param watched whether somebody sees progress as it goes
     * @return the exit code
     */
    public static int run(String[] args, PrintWriter out, PrintWriter err, boolean watched) {
        int code = Cli.execute(args, new Console(out, err, watched), Stages.ENGINE);
        out.flush();
        err.flush();
        return code;
    }
}
