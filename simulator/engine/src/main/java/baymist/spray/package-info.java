/**
 * From a tip at a place to what lands, what floats, what leaves, and which air moves.
 *
 * <p>In: stations of the wand, the exact sheets (through {@link baymist.spray.SheetTracer}), the voxels (through {@link
 * baymist.spray.SurfelFinder}), supply, droplet sizes. Out: {@link baymist.spray.SprayHits} for each station, as rates while the trigger is held.
 *
 * <ol>
 *   <li>{@link baymist.spray.DropletBins}: the droplets' volume distribution in size bins.
 *   <li>{@link baymist.spray.TipJets}: flow, thrust and direction of each jet ({@link baymist.spray.ChokedOrifice}).
 *   <li>A fixed low-discrepancy set of rays with equal shares of the jet's air and shares of liquid after the fog's profile.
 *   <li>Each ray goes on to the first exact sheet, through open inner openings by their exact outline.
 *   <li>The jet's clear surroundings decide where its free law ends (flat, then shut in).
 *   <li>The drops' speed along the axis follows from their drag in the jet.
 *   <li>At the sheet a share by size lands (impaction); the rest turns with the wall jet and becomes fog in the cells about
 *       the place. What a jet no longer carries becomes fog where the jet ends.
 *   <li>Along the way the ray moves the air of the cells it crosses and draws fog from them that it throws at the same sheet.
 * </ol>
 *
 * <p>Laws kept: landed + fog + escaped = sprayed; a cast is a pure function, the same bits on any number of threads.
 *
 * <p>For the fog stage: {@link baymist.spray.Droplet} (slip, relaxation, settling). For designers: {@link baymist.spray.Atomiser}
 * (published size correlations with their range), {@link baymist.spray.BoreLoss}, {@link baymist.spray.FeedTube}.
 *
 * <p>Not modelled: the wand's shadow, splashing of coarse drops (the splash number is computed, the drop stays), drag of the drops
 * on the jet, the wall jet's own air motion, evaporation. Theory, sources, assumptions: docs/theory/spray.md.
 */
@NullMarked
package baymist.spray;

import org.jspecify.annotations.NullMarked;
