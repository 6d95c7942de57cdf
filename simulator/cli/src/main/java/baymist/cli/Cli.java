package baymist.cli;

import baymist.problem.Finding;
import baymist.problem.SceneException;
import baymist.problem.SimulationException;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Parses a call, runs its command and turns every failure into a sentence and an exit code. */
final class Cli {
    private Cli() {}

    /** All commands, ready to parse a call, to print help, or to be described in manual pages. */
    static CommandLine line(Console console, Stages stages) {
        CommandLine line = new CommandLine(new BaymistCommand())
                .addSubcommand(new RunCommand(console, stages))
                .addSubcommand(new CheckCommand(console, stages))
                .addSubcommand(new ReachCommand(console, stages))
                .addSubcommand(new ExplainCommand(console, stages))
                .addSubcommand(new SizeCommand(console, stages))
                .addSubcommand(new FieldCommand(console, stages))
                .addSubcommand(new CompareCommand(console, stages))
                .addSubcommand(new PlanCommand(console, stages))
                .addSubcommand(new ReportCommand(console, stages))
                .addSubcommand(new ViewCommand(console, stages))
                .addSubcommand(new ExportCommand(console, stages))
                .addSubcommand(new CardCommand(console, stages))
                .addSubcommand(new FindingsCommand(console, stages))
                .addSubcommand(new SchemaCommand(console, stages))
                .addSubcommand(new VerifyCommand(console, stages))
                .addSubcommand(new CompletionCommand(console))
                .addSubcommand(new CommandLine.HelpCommand());
        line.setOut(console.out());
        line.setErr(console.err());
        line.setUsageHelpWidth(100);
        line.setParameterExceptionHandler(Cli::badCall);
        line.setExecutionExceptionHandler((e, command, parsed) -> report(e, console.err(), debug(command)));
        return line;
    }

    static int execute(String[] args, Console console, Stages stages) {
        try {
            return line(console, stages).execute(args);
        } catch (OutOfMemoryError e) {
            console.err()
                    .println("baymist: out of memory; use larger voxels (--voxel) or give Java more (java -Xmx4g).");
            return Exit.FAILED;
        }
    }

    private static int badCall(ParameterException e, String[] args) {
        PrintWriter err = e.getCommandLine().getErr();
        err.println("baymist: " + e.getMessage());
        CommandLine.UnmatchedArgumentException.printSuggestions(e, err);
        String name = e.getCommandLine().getCommandSpec().qualifiedName();
        err.println("Try '" + name + " --help'.");
        return Exit.BAD_INPUT;
    }

    private static boolean debug(CommandLine command) {
        return command.getCommandSpec().userObject() instanceof DebugOption.Holder holder && holder.debug();
    }

    /** One place for all failures: what the user can put right, what went wrong in the numbers, and the rest. */
    static int report(Exception e, PrintWriter err, boolean debug) {
        if (debug) {
            e.printStackTrace(err);
        }
        if (e instanceof SceneException scene) {
            for (Finding f : scene.findings()) {
                err.println(f);
            }
            return Exit.BAD_INPUT;
        }
        if (e instanceof SimulationException) {
            err.println("The computation failed: " + sentence(e.getMessage()));
            return Exit.FAILED;
        }
        if (e instanceof IOException io) {
            err.println("baymist: " + fileProblem(io));
            return Exit.FAILED;
        }
        if (e instanceof UncheckedIOException io && io.getCause() != null) {
            err.println("baymist: " + fileProblem(io.getCause()));
            return Exit.FAILED;
        }
        String message = e.getMessage() == null ? "" : ": " + e.getMessage();
        err.println("Baymist ran into an error of its own (" + e.getClass().getSimpleName() + message
                + "); please report it with the scene, and with what --debug adds.");
        return Exit.FAILED;
    }

    private static String fileProblem(IOException e) {
        if (e instanceof AccessDeniedException denied) {
            return "no permission to write " + denied.getFile() + ".";
        }
        if (e instanceof FileAlreadyExistsException exists) {
            return exists.getFile() + " is in the way: a folder was expected there.";
        }
        if (e instanceof FileSystemException file && file.getReason() == null) {
            return "could not write " + file.getFile() + ".";
        }
        return "could not read or write a file: " + sentence(e.getMessage());
    }

    private static String sentence(@org.jspecify.annotations.Nullable String message) {
        if (message == null || message.isBlank()) {
            return "no reason was given.";
        }
        String s = message.strip();
        return s.endsWith(".") || s.endsWith("!") ? s : s + ".";
    }
}
