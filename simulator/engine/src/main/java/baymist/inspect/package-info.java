/**
 * Inspection back into the model: findings on the structure held against the prediction, settings fitted to them, and passes for what was
 * found bare.
 *
 * <p>In: a {@link baymist.card.CardSource} (a run) and a {@link baymist.scene.Inspection} (what was seen). Out: an
 * {@link baymist.inspect.InspectionResult}.
 *
 * <ol>
 *   <li>{@code PlaceSamples} finds the surface elements of each place: those of its part within the radius looked at, or of its region;
 *   <li>{@code HitTable} counts what was predicted against what was seen: wet, thin, dry;
 *   <li>{@code Brier} scores the forecast probabilities; they come from a log-normal spread about the predicted film;
 *   <li>{@code Refit} varies the liquid rate and the droplets' median within their ranges at planning resolution and takes the setting
 *       that makes the findings most likely. Planning runs tell how a film changes, the run tells its level;
 *   <li>{@code TouchUp} casts the jets of every wand at every depth and clock angle of the scene's ways and keeps the stretches that
 *       throw most on the places found thin or dry.
 * </ol>
 *
 * <p>Assumptions: a predicted film is right within a factor {@link baymist.inspect.FilmSpread#FACTOR} (one standard deviation of its
 * logarithm), findings are independent, a measured film is right within {@link baymist.inspect.FilmSpread#GAUGE}. Limits: a fit needs findings
 * of both sorts, films that are there and places that are dry; with a handful of findings its ranges are as wide as what was known before, and
 * are told. Creases that the voxels do not resolve can't be held against anything.
 *
 * <p>Sources: Brier (1950), Verification of forecasts expressed in terms of probability, Monthly Weather Review 78(1), 1-3. Ranges by the
 * likelihood ratio: Wilks (1938), Annals of Mathematical Statistics 9, 60-62.
 */
@NullMarked
package baymist.inspect;

import org.jspecify.annotations.NullMarked;
