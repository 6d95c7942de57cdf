package baymist.cli;

import java.io.PrintWriter;

/**
 * Where a command writes.
 *
 * @param out results
 * @param err progress and problems
 * @param terminal whether somebody watches: both ends of the program are a terminal
 */
record Console(PrintWriter out, PrintWriter err, boolean terminal) {}
