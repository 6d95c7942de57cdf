/**
 * From a tip at a place to what lands, what floats, what leaves, and which air moves.
 *
 * <p>In: stations of the wand, the exact sheets (through {@link baymist.spray.SheetTracer}), the voxels (through {@link
 * baymist.spray.SurfelFinder}), supply, droplet sizes. Out: {@link baymist.spray.SprayHits} for each station, as rates while the trigger is held.
 *
 * <ol>
 *   <li>{@link baymist.spray.DropletBins}: the droplets' volume distribution in size bins.
 *   <li>{@link baymist.spray.TipFlow}: what the tip gets from the supply after the losses along the bores ({@link
 *       baymist.spray.FeedTube}, {@link baymist.spray.LiquidMeter}).
 *   <li>{@link baymist.spray.TipJets}: flow, thrust and direction of each jet ({@link baymist.spray.ChokedOrifice}).
 *   <li>{@link baymist.spray.JetMerging}: neighbouring jets superpose their momentum.
 *   <li>{@link baymist.spray.CastSettings}: two fixed low-discrepancy sets of rays, one with equal shares of the jet's air, one for its liquid,
 *       nearly even in solid angle.
 *   <li>Each ray goes on to the first exact sheet, through open inner openings by their exact outline.
 *   <li>The jet's clear surroundings decide where its free law ends (flat, then shut in).
 *   <li>The drops' speed along the axis follows from their drag in the jet, how far they sink from gravity.
 *   <li>A ray's liquid is spread over the surfels within the bundle that it stands for. There a share by size lands (impaction); the rest turns with the wall jet and becomes fog in the cells about
 *       the place. What a jet no longer carries becomes fog where the jet ends.
 *   <li>Along the way the ray moves the air of the cells it crosses and draws fog from them that it throws at the same sheet.
 * </ol>
 *
 * <p>Laws kept: landed + fog + escaped = sprayed; a cast is a pure function, the same bits on any number of threads.
 *
 * <p>For the fog stage: {@link baymist.spray.Droplet} (slip, relaxation, settling). For sizes: {@link baymist.spray.Atomiser}
 * (published correlations with their range) and {@link baymist.spray.AtomisedSizes}. {@link baymist.spray.SprayDetail} keeps what says how sure
 * the direct film is.
 *
 * <p>Not modelled: the wand's shadow, splashing of coarse drops and film wiped by the jets' air (told, not taken off), drag of the drops
 * on the jet, the wall jet's own air motion, evaporation. Theory, sources, assumptions: docs/theory/spray.md.
 */
@NullMarked
package baymist.spray;

import org.jspecify.annotations.NullMarked;
