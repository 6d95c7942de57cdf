/**
 * Why a corner is missed, and what would change it, proved by runs.
 *
 * <p><b>Purpose.</b> A coverage map shows what stays bare. A trainer must be able to say why, an engineer what to change. This
 * package answers for one bare region at a time; {@link baymist.explain.Explain#of} is the whole of it.
 *
 * <p><b>Algorithm.</b>
 *
 * <ol>
 *   <li>The job is brought to planning resolution (coarser voxels, fewer rays, sizes and stations) so that a run takes seconds.
 *   <li>It is run as stated while an observer keeps fog, friction and what passes each inner opening.
 *   <li>Facts about the region are gathered: could the tip get near, did a jet see it, did drops arrive, did fog arrive and could
 *       it stick, was there enough product and time, was the way open.
 *   <li>Facts propose changes: the clock angle at which the region would be in the pattern, the place where the tip would see most of it,
 *       the length that the wand lacks, a vent, a wider hole and so on. Each is one change of the scene.
 *   <li>Every change is run alone; film on the same region is compared before and after.
 *   <li>{@link baymist.explain.CauseRule}: among causes whose fact holds, the one wins whose own changes bring most of the wanted film.
 *   <li>If no single change holds, the best are run together.
 * </ol>
 *
 * <p><b>Assumptions.</b> What helps at planning resolution helps at the scene's own; the guide says how to confirm it. Guesses of what jets
 * do ({@link baymist.explain.JetGuess}) are by straight sight and the free jet's law; they choose what is run and never what is said.
 *
 * <p><b>Limits.</b> Projected air does not carry the weight of fog. A change that is not proposed is not found. Regions are those of the planning
 * run. The theory with the published table of causes is docs/theory/explain.md; formats are in docs/formats/explain.md.
 *
 * <p><b>Sources.</b> Cause by counterfactual: Lewis (1973), Causation, J. Philos. 70, 556-567 (an effect depends on a cause if it would not be without
 * it; from memory). Thresholds are ASSUMED and listed in the theory.
 */
@NullMarked
package baymist.explain;

import org.jspecify.annotations.NullMarked;
