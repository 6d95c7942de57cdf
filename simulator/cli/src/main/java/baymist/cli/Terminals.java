package baymist.cli;

import org.jspecify.annotations.Nullable;

/** Whether somebody watches. */
final class Terminals {
    private Terminals() {}

    /**
     * Whether both ends of the program are a terminal that can redraw a line. Java has no way to ask about standard error
     * alone, so a piped standard output counts as nobody watching.
     */
    @SuppressWarnings("SystemConsoleNull") // null still answers the question up to Java 21; newer ones are asked below
    static boolean watched() {
        java.io.Console console = System.console();
        return console != null && isTerminal(console) && canRedraw(System.getenv("TERM"));
    }

    static boolean canRedraw(@Nullable String term) {
        return !"dumb".equals(term);
    }

    /** Calls {@code Console.isTerminal()}, which there is from Java 22 on; before, a console is a terminal. */
    private static boolean isTerminal(java.io.Console console) {
        try {
            return (boolean) java.io.Console.class.getMethod("isTerminal").invoke(console);
        } catch (ReflectiveOperationException e) {
            return true;
        }
    }
}
