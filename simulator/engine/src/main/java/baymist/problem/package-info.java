/**
 * How problems are told.
 *
 * <p>A {@link baymist.problem.Finding} is one problem or remark: a stable id, a {@link baymist.problem.Severity}, a
 * {@link baymist.problem.SourcePlace} (file, 1-based line, field path) and one sentence that names the value found and what would
 * be right. Validators collect findings and go on, so that a person learns of all of them at once.
 *
 * <p>The family of exceptions has three members:
 *
 * <ol>
 *   <li>{@link baymist.problem.SceneException}: input that the user can put right. It carries every finding.
 *   <li>{@link baymist.problem.SimulationException}: the numbers went wrong; it says stage, place and time.
 *   <li>{@link IllegalArgumentException}: a programmer's error.
 * </ol>
 *
 * <p>Ids: {@code SCN-0xx} are those of scene and model files. docs/troubleshooting.md has a paragraph for each id.
 */
@NullMarked
package baymist.problem;

import org.jspecify.annotations.NullMarked;
