package baymist.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;

/** Entry point of {@code baymist.jar}. */
public final class Main {
    private Main() {}

    /** Runs one command and ends the program with its exit code. */
    public static void main(String[] args) {
        System.setProperty("java.awt.headless", "true");
        PrintWriter out = new PrintWriter(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        int code = Cli.execute(args, new Console(out, err, Terminals.watched()), Stages.ENGINE);
        out.flush();
        err.flush();
        System.exit(code);
    }
}
