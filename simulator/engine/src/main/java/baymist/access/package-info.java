/**
 * Which openings a wand passes, how deep it goes, what stops it, and where its tip stands while it sprays.
 *
 * <p>In: the cavity's cut sheets and closures, wands, entries, passes. Out: {@link baymist.access.Insertion} for a wand in an
 * entry, {@link baymist.access.PassPlan} with the {@link baymist.access.Station}s of a job in time.
 *
 * <ol>
 *   <li>{@link baymist.access.OpenInPass}: which openings stand open while spraying.
 *   <li>{@link baymist.access.Surroundings}: sheets, closures and obstacles in one tree; the sides of the whole sheets.
 *   <li>{@link baymist.access.AccessFinder}: edge clearance of the tilted rod in the hole of a sheet with a gauge, grommet and second plate;
 *       then the rod's first contact with cut sheets and closed openings (exact), along the entry's direction.
 *   <li>{@link baymist.access.RigidReach}: all lines through an entry by branch and bound, complete to a stated resolution; the deepest, the
 *       most central, or the one that comes nearest to a region.
 *   <li>{@link baymist.access.FlexibleReach}: flexible wands: curvature-bounded ways in the free space, several where openings give a choice,
 *       within length, sum of bends and push; every piece certified against the sheets ({@link baymist.access.FlexRoutes}).
 *   <li>{@link baymist.access.HookReach}: bent rigid tubes threaded through a hole hardly wider than themselves and turned to whatever clock
 *       angle the sheets allow ({@link baymist.access.HookMotion}).
 *   <li>{@link baymist.access.RouteStory}: either in a sentence or two, to be read out.
 *   <li>{@link baymist.access.Sag}: a straight rod as an elastic beam that hangs from its entry and rests on hole edges and skins;
 *       {@link baymist.access.SaggedPath} puts the tip of a pass where it hangs.
 *   <li>{@link baymist.access.ReachShare}: how much of the cavity lies near a place of the tip and in its sight.
 *   <li>{@link baymist.access.ClockAngle}: clock 0 = structure up seen along the wand from outside, forward where the wand is
 *       within 20 degrees of vertical; clockwise looking in.
 *   <li>{@link baymist.access.Stations}: a hold at the start depth, then the draw-back in equal stretches; a depth beyond the stop is
 *       cut with a warning, a wand that does not go in is an error that names every pass concerned.
 * </ol>
 *
 * <p>Assumptions: a straight wand is rigid, is pushed along its own axis and lies free in its holes. The holes of inner members are the
 * polygons of the cut mesh, matched in area: a rod within about half a percent of an inner hole's radius may be judged either way.
 *
 * <p>Messages: ACC-001 unknown opening, ACC-002 direction leads out, ACC-003 wand does not go in, ACC-010 depth cut
 * (warning), ACC-011 search ended early (warning), ACC-030 to ACC-035
 * reach and sag.
 *
 * <p>Theory and sources: docs/theory/access.md, docs/theory/access-flexible.md (flexible wands, hooks),
 * docs/theory/access-sag.md (sag, share in reach).
 */
@NullMarked
package baymist.access;

import org.jspecify.annotations.NullMarked;
