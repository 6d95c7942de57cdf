package baymist.cli;

import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.codegen.docgen.manpage.ManPageGenerator;

/** Writes the source of one manual page per command, out of the same descriptions as {@code --help}. */
public final class ManPages {
    private ManPages() {}

    /**
     * Writes the pages.
     *
     * @param args the folder that gets them
     * @throws IOException if a page can't be written
     */
    public static void main(String[] args) throws IOException {
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        CommandLine line = Cli.line(new Console(nowhere, nowhere, false), Stages.ENGINE);
        int code = ManPageGenerator.generateManPage(
                new File(args[0]), null, new boolean[] {}, true, new CommandSpec[] {line.getCommandSpec()});
        if (code != 0) {
            throw new IOException("the manual pages could not be written to " + args[0]);
        }
    }
}
