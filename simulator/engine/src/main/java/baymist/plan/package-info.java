/**
 * Plans the passes of a job: which wand through which entry, over which depths, at which clock angle and draw-back rate.
 *
 * <p>In: a scene with wands and entries, limits. Out: {@link baymist.plan.PlanResult}: a scene with the plan's passes, what the dose matrix promised and what runs
 * found.
 *
 * <ol>
 *   <li>{@link baymist.plan.DoseLine}: every entry with every wand that goes in, at clock angles over the period of its tip, cut into stations.
 *   <li>{@link baymist.plan.DoseMatrices}: film per trigger-second on each surfel from each station, by droplet size: a pulse of one second in its own flow, that flow going on without liquid
 *       (carry-over), the fog hanging. Built on all threads, kept by {@link baymist.plan.DoseStore} under a content hash.
 *   <li>{@code ShortfallProgram}: times on stations, none negative, that leave the least area short of haze and of the target build (a linear program on some
 *       500 patches, solved by a library).
 *   <li>{@code PlanSearch}: strokes that a hand can draw (50 to 500 mm/s), improved by small changes, each judged by the matrix on all surfels.
 *   <li>{@link baymist.plan.Planner}: runs the plan at planning resolution; where run and matrix differ, the matrix's rows are corrected and the plan is made again;
 *       the best plan by run is run in full.
 *   <li>{@code FullRounds}: where the full run reaches less than was promised, it sets the matrix right ({@code FineFilm}) and further plans are run in full; the best is kept.
 *   <li>{@code Hands}: the plan done by sampled hands and droplets, by the matrix.
 * </ol>
 *
 * <p>Assumptions: films of stations add up (fog is linear at one flow; the flow of a pass is not the sum of the flows of its stations), one wait between passes, wands along
 * the entry's direction. Limits: holes come from the hole study, not from the search; protected items are not kept clear (the run tells their dose); the matrix never is the result.
 *
 * <p>Equations, sources: docs/theory/plan.md. Messages: PLN-001, PLN-002. Same bits on any number of threads.
 */
@NullMarked
package baymist.plan;

import org.jspecify.annotations.NullMarked;
