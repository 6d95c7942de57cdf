/**
 * Builds the sheet-metal body of a job: sheets with names, openings with exact outlines.
 *
 * <p><b>In:</b> a {@link baymist.scene.CavitySpec} (tape-measure family or mesh file), the scene's cuts, states and entries.
 * <b>Out:</b> a {@link baymist.cavity.Cavity}, immutable. Front class: {@link baymist.cavity.CavityBuilder}.
 *
 * <p><b>Steps.</b>
 *
 * <ol>
 *   <li>Sheets. Wing box and control surface: sections square to y, skins ruled between them through the very vertices of the
 *       ribs; block, cylinder, sphere; or a mesh file, welded by exact coordinates, without flat and duplicate triangles. Doors,
 *       stiffened voids and free plates are flat plates that are meshed so as to share edges wherever they meet ({@code
 *       PlateMesher}).
 *   <li>Gaps of a mesh: closed loops of free edges are capped with virtual triangles (part -1) and become openings of kind GAP.
 *   <li>Openings are placed: at the nearest point of their part, along the sheet's normal there. Rays from either side tell
 *       which side is the open air; the normal of an outer opening points into the cavity, that of an inner one outboard.
 *   <li>States of the scene replace those of the model; entries must name an opening.
 *   <li>Openings are cut out by splitting triangles along their area-matched polygons; the pieces become closures. An opening
 *       that reaches over the edge of its part, overlaps another one, or meets its part twice is refused.
 * </ol>
 *
 * <p>Several bodies: the first three steps for each in its own axes, then {@link baymist.cavity.Placement} moves sheets and
 * openings, sheets that lie on each other become one part ({@code SheetFusion}), stated pairs of openings become one, and the
 * last two steps follow for all ({@code BodiesBuilder}).
 *
 * <p><b>Parts by family.</b> Wing box: "upper skin", "lower skin", "front spar", "rear spar", "rib n" (1 = root), "upper
 * stringer n", "lower stringer n" (1 = forward). Control surface: "upper skin", "lower skin", "spar", "trailing edge" (if it
 * has a depth), "rib n". Block: "forward wall", "aft wall", "left wall", "right wall", "floor", "ceiling". Cylinder: "shell",
 * "forward end", "aft end"; sphere: "shell". Door, stiffened void, free plates, bodies: docs/guide/families. Openings named by us: "rib 2 hole 1", "rib 2 end gap", "gap 1 (aft end)".
 *
 * <p><b>Assumptions and limits.</b> Sheets have no thickness; the gauge is only a number. Stringers pass ribs without
 * notches. A short rib is a whole rib with an opening of kind SHORT_MEMBER. On faceted curved sheet the piece cut out is
 * larger in the sheet than the outline's area, by the secant of the facets' tilt; seen along the normal it is exact. Mesh
 * coordinates are taken as structure axes. Every gap counts as leading outside until the voxeliser finds out.
 *
 * <p><b>Messages.</b> CAV-001 to CAV-012 measures of a family, CAV-020 to CAV-030 openings, CAV-051 to
 * CAV-059 doors, voids, plates and bodies, MSH-001 to MSH-015 mesh files.
 *
 * <p>Theory, sources and checks: docs/theory/geometry.md. How each measure is taken: docs/guide/measuring.md.
 */
@NullMarked
package baymist.cavity;

import org.jspecify.annotations.NullMarked;
