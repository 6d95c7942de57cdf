/**
 * The work card: what a technician does, in order, and where to look afterwards, worked out from a scene and its run.
 *
 * <p>In: a {@link baymist.card.CardSource}, from a run just made or from one that was kept. Out: a {@link baymist.card.WorkCard}, figures
 * and words in SI without layout; units, paper and pictures belong to whoever prints it.
 *
 * <ol>
 *   <li>{@code CardOrder} puts the passes low before high: by the mean height of the tip against gravity, in steps, the scene's order
 *       where heights agree;
 *   <li>{@code CardSteps} writes each pass as an order: entry, wand, depth marks, clock angle and where it points, seconds for half a
 *       metre, trigger, wait;
 *   <li>{@code CardOpenings} says what each opening to the outside is for (entry, vent, drain, panel, mask) and what is done with it
 *       before spraying, while the fog hangs and at close-up; what is masked is counted;
 *   <li>{@code CardQuantities} sums product with allowance, refills, air at the hose end, time;
 *   <li>{@code CardPoints} finds the places where the film is least sure: bare, near the haze limit, wetted by fog alone, bare seams;
 *   <li>{@code CardCautions} says the usual cautions first, with the run's figures where it has any.
 * </ol>
 *
 * <p>Assumptions: a film within a factor of two of the haze limit is not sure, which is what droplet sizes known within a factor of 1.3 and
 * the error of ray sampling leave open; product that stays in bores is wasted; setting up and masking take the shop's own time and are not
 * in the total. Limits: a card is a computed proposal. It replaces neither approved data nor the product's data sheet nor a qualified
 * person's judgement, and says so.
 *
 * <p>Sources: exposure and confined-space lines of 29 CFR 1910.146, 1910.242 and 1910.1000; order low before high, seconds for half a
 * metre, drip sheets, counting of masks: common practice, no source.
 */
@NullMarked
package baymist.card;

import org.jspecify.annotations.NullMarked;
