/**
 * Reach field: for every place where a tip could be, the share of what it releases that ends on a given region.
 *
 * <p>In: a scene and a region of its inside ({@link baymist.field.RegionChoice}). Out: {@link baymist.field.ReachField}, two fields over the cells, the best pose that
 * the scene's wands reach, and a forward run with it.
 *
 * <ol>
 *   <li>Region: {@link baymist.field.FieldRegion}, surfels of a bare place of the scene's own run, of a spot, or of a part.
 *   <li>Jets ({@link baymist.field.JetField}): rays go from the region's pieces to every cell; where they meet no sheet, the free jet's law ({@link
 *       baymist.spray.JetReach}) says what a piece catches; the aim moves to the middle of what it strikes.
 *   <li>Fog ({@link baymist.field.FogField}): one solve with the transpose of the first-order fog operator for each size ({@link
 *       baymist.fog.FogDestiny}), in place of a forward run for each cell.
 *   <li>Poses: every entry with every wand, depths and clock angles; each is cast forward with all its jets, its direct share counted and its fog weighed
 *       with the fog's field. The best few are refined.
 *   <li>Confirmation ({@link baymist.field.Confirmation}): the best pose is held after the scene's passes in a whole run.
 * </ol>
 *
 * <p>Assumptions: air frozen and quiet for the fog (residual eddies, settling, openings as while the fog hangs): the flow that a jet makes is not in the field, only
 * in the confirming run. Jets of the field are free, without neighbours; those of the poses are the caster's own. Fog does not meet other fog.
 *
 * <p>Limits: the share is of mass, not of evenness: a pose that wets one corner of the region thickly may come first; the confirming run tells how
 * much of it is reached. Sag is that of the pass. Protected items are not looked at.
 *
 * <p>Equations and sources: docs/theory/field.md. Messages: FLD-001 to FLD-004.
 */
@NullMarked
package baymist.field;

import org.jspecify.annotations.NullMarked;
