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
 *       ribs; block, cylinder, sphere; shell, box section and tube frame ({@code ShellFamily}, {@code BoxSectionFamily}, {@code
 *       TubeFrameFamily}); or a mesh file, laid into structure axes, welded by exact coordinates, without flat and duplicate
 *       triangles, its narrow gaps closed on request. Doors, stiffened voids and free plates are flat plates that are meshed so
 *       as to share edges wherever they meet ({@code PlateMesher}). Protected items are added as parts of their own.
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
 * stringer n", "lower stringer n" (1 = forward), "false spar n". Control surface: "upper skin", "lower skin", "spar",
 * "trailing edge" (if it has a depth), "rib n", "nose skin", "nose root rib", "nose rib n", "nose tip rib", "horn upper skin",
 * "horn lower skin", "horn front", "horn bulkhead", "horn inner rib", "horn outer rib". Lips of flanged holes: "(hole) flange".
 * Block: "forward wall", "aft wall", "left wall", "right wall", "floor", "ceiling". Cylinder: "shell", "forward end", "aft
 * end"; sphere: "shell". Shell (tail cone): "skin", "forward end", "aft end", "frame n" (rings), "bulkhead n" (closed webs),
 * "floor", "stringer n" (from the keel up the right side). Box section: "bottom", "right wall", "top", "left wall", "start
 * end", "far end", "baffle n", "plate n". Tube frame: "tube n", "tube n first end", "tube n last end", "gusset n" or by their names.
 * Door, stiffened void, free plates, bodies: docs/guide/families.
 * Openings named by us: "rib 2 hole 1", "spar hole 1", "rib 2 end gap", "rib 2 upper notch 1", "open tip", "gap 1 (aft end)".
 *
 * <p><b>Assumptions and limits.</b> Sheets have no thickness; the gauge is only a number. Stringers cross ribs as if there were
 * no rib, or through notches. A flanged hole's opening lies at the lip's free edge, over a lid that belongs to the web and is
 * cut out as a whole. A short rib is a whole rib with an opening of kind SHORT_MEMBER. On faceted curved sheet the piece cut
 * out is larger in the sheet than the outline's area, by the secant of the facets' tilt; seen along the normal it is exact.
 * Every gap counts as leading outside until the voxeliser finds out.
 *
 * <p><b>Messages.</b> CAV-001 to CAV-012, CAV-031 to CAV-038, CAV-041 to CAV-049 and CAV-051 to CAV-059 measures of a family,
 * CAV-020 to CAV-030 openings, CAV-061 to CAV-064 protected items, MSH-001 to MSH-016 mesh files.
 *
 * <p>Theory, sources and checks: docs/theory/geometry.md. How each measure is taken: docs/guide/measuring.md.
 */
@NullMarked
package baymist.cavity;

import org.jspecify.annotations.NullMarked;
