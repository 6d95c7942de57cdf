/**
 * Sizes a wand for a job: how long, how thick, bent or not, with which tip.
 *
 * <p>Inputs: a {@link baymist.scene.Scene} with passes and a {@link baymist.size.SizeRequest}. Output: a {@link baymist.size.SizeResult}.
 *
 * <ol>
 *   <li>Designs are tubes x tips, straight; with bends where no straight one meets the goal. What can't be made (orifices too close, a bend too tight)
 *       is cut.
 *   <li>{@code Way} puts each design into the entries of the job's passes: how deep it goes, what ends it, how it sags, the smallest hole that it passes.
 *       What does not go in is cut.
 *   <li>{@code Bore} gives the losses along the bore. Lengths at which nothing of the pressure is left, or at which the wand's own weight would bend it for good,
 *       are cut.
 *   <li>{@code LengthSearch} runs the scene's job with the wand ({@code Trial}) at lengths in whole marks, in rounds over all designs, at planning resolution
 *       ({@link baymist.study.PlanningRun}), and halves down to one mark.
 *   <li>The shortest, among equals the thinnest, is run at the scene's own resolution. Where it misses the goal there, up to two longer ones are tried.
 * </ol>
 *
 * <p>Assumptions: the hand does what the scene's passes say, but for where a pass begins; a wand may stop short of its length, so that a longer one never
 * gets less. Limits: one wand for all passes; straight or with one bend. The same bits for any number of jobs at once. Theory: docs/theory/size.md.
 */
@NullMarked
package baymist.size;

import org.jspecify.annotations.NullMarked;
