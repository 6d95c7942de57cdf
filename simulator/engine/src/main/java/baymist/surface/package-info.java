/**
 * The structure as triangles that carry film: one geometry for the viewer, for files and for reports.
 *
 * <p><b>Purpose.</b> Film is known on surfels, voxel by voxel; people want to see it on sheets with clean edges and round holes. This
 * package takes the exact cut sheets and maps any quantity of surfels on them, each side of a sheet on its own.
 *
 * <p><b>Algorithm</b> ({@link baymist.surface.Surface#of}):
 *
 * <ol>
 *   <li>Points of the cut sheets that coincide are joined within each part.
 *   <li>Edges longer than wanted, by default 1.5 times the mean voxel size, are cut until none is left; both triangles on an edge agree
 *       about it, so no crack opens. If that makes more triangles than allowed, the length grows; if the sheets alone have more, their
 *       points are merged first (vertex clustering). {@link baymist.surface.SurfaceDetail} says what was done.
 *   <li>Each side of each triangle looks for the nearest surfel of its part whose normal agrees and whose centroid lies within a voxel
 *       along each axis. If there is one, the side faces air of the job and belongs to that surfel's bay; otherwise it faces something
 *       else.
 *   <li>Sides are sorted into patches by part and bay. Triangles that meet at less than some 35 degrees share a normal.
 *   <li>A vertex takes the mean of the surfels of its patch's part, side and bay round it: weight = area x agreement of normals x a tent
 *       over one voxel (or two thirds of the longest edge, if that is more) along each axis. So film on one face of a rib never shows on
 *       the other, and a constant film stays constant.
 * </ol>
 *
 * <p><b>Assumptions.</b> Sheets have no thickness; both sides lie at the same place unless a stand-off is asked for. Every side is wound to
 * be seen from its own air, so back-face culling shows the right one.
 *
 * <p><b>Limits.</b> A side that faces a gap narrower than a voxel has no surfels and is shown like one that faces the open. Film at a
 * vertex is a mean: the least and the greatest surfel show somewhat less extreme. Numbers belong to surfels, pictures to vertices. Closures
 * of openings (masks, plugs) are not part of the surface.
 *
 * <p><b>Sources.</b> Vertex clustering: Rossignac and Borrel (1993), Multi-resolution 3D approximations for rendering complex scenes (from
 * memory).
 */
@NullMarked
package baymist.surface;

import org.jspecify.annotations.NullMarked;
