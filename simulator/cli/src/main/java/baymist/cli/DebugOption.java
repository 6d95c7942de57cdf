package baymist.cli;

import picocli.CommandLine.Option;

/** The option that adds stack traces; mixed into every command. */
final class DebugOption {
    @Option(names = "--debug", description = "Also print where in the program a failure happened.")
    boolean debug;

    /** A command that has the option. */
    interface Holder {
        boolean debug();
    }
}
