/**
 * The wall film: how thick, from where, and where it runs.
 *
 * <p><b>Input:</b> direct hits ({@link baymist.spray.SprayHits}), fog deposit (kg by surfel), the product, gravity, the openings'
 * state. <b>Output:</b> {@link baymist.film.FilmState}: wet and dry build by origin, masses on sheet, on masks, dripped.
 *
 * <ol>
 *   <li>{@link baymist.film.FilmState} adds what jets and fog leave on each surfel. Build = m/(rho A).
 *   <li>{@link baymist.film.FilmRuns} moves film downhill over shared edges with the Nusselt flux, in explicit donor-cell
 *       sub-steps, never below a residual film.
 *   <li>At the rim of an open hole to the outside the film leaves: dripped.
 *   <li>Below ceilings drops grow at the Rayleigh-Taylor rate and fall onto the first surface below (film again) or out.
 *   <li>{@link baymist.film.FilmCreep} spreads film over dry sheet where the product does that; {@link baymist.film.FilmAgeing} follows a
 *       copy of the film for hours after the job; {@link baymist.film.DotPattern} tells film from dots.
 *   <li>{@link baymist.film.FilmFormulas} holds the closed forms: drainage, hanging drops, creep into gaps, product needed, and
 *       the build below which drops are a pattern of dots and not a film.
 * </ol>
 *
 * <p><b>Assumptions:</b> Newtonian liquid above a residual film; no surface-tension gradients; air does not drag the film; the
 * length of the edge between two surfels is the lattice edge's. <b>Limits:</b> puddles on level floors do not spread or level;
 * film stops at inner holes and covers; creep into seams is a formula, not part of the state.
 *
 * <p><b>Sources:</b> Nusselt (1916); Jeffreys (1930); Washburn (1921); Huppert (1982); Fermigier et al. (1992). See
 * docs/theory/film.md.
 */
@NullMarked
package baymist.film;

import org.jspecify.annotations.NullMarked;
