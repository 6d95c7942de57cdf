/**
 * Runs a scene from start to end: options and observer in, a read-only result with its record out.
 *
 * <p>{@link baymist.run.RunResult} holds what a run found, {@link baymist.run.CheckResult} what can be said before
 * anything is sprayed, {@link baymist.run.RunRecord} what it takes to do the run again.
 */
@NullMarked
package baymist.run;

import org.jspecify.annotations.NullMarked;
