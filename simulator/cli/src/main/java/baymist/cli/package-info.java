/**
 * The command line: thin commands over the engine, one place that turns failures into sentences and exit codes.
 *
 * <p>{@code baymist run} reads a scene, runs it, writes result, picture and summary, and prints the summary. {@code check}
 * builds the geometry alone. {@code schema} prints the scene format for editors. {@code verify} runs the reference cases.
 *
 * <p>Results go to standard output; titles of machine-read output, progress and problems go to standard error. Exit codes:
 * 0 done; 2 the input or the call is wrong; 3 the computation failed; 4 done, but a limit that the caller set is not met.
 */
@NullMarked
package baymist.cli;

import org.jspecify.annotations.NullMarked;
