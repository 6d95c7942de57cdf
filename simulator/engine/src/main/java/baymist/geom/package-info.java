/**
 * Points, boxes, outlines and triangles as immutable values, and the questions asked of them.
 *
 * <p><b>Values.</b> {@link baymist.geom.Vec3} and {@link baymist.geom.Box3}; {@link baymist.geom.TriangleMesh} (indexed
 * triangles, no thickness); {@link baymist.geom.Outline}, the exact edge of an opening, and {@link baymist.geom.PlacedOutline},
 * the same put somewhere in space. Lengths in m; axes x aft, y right, z up.
 *
 * <p><b>Questions.</b>
 *
 * <ol>
 *   <li>On which side does a point lie? {@link baymist.geom.Predicates}: exact signs, a floating-point filter with a proven
 *       bound ahead of exact decimals. The voxeliser rests on it: a sheet can't leak by rounding.
 *   <li>What does a ray meet first? {@link baymist.geom.Bvh#closestHit}: a binned surface-area-heuristic tree in flat arrays,
 *       a watertight triangle test, and a filter through which rays pass open holes. {@link baymist.geom.Ray} keeps a caller's
 *       working memory, so that hot loops do not allocate.
 *   <li>What is near? {@link baymist.geom.Bvh#nearest}, {@link baymist.geom.Bvh#forEachNear},
 *       {@link baymist.geom.Bvh#forEachNearSegment}, {@link baymist.geom.TriangleDistance}.
 *   <li>How far does a rod go? {@link baymist.geom.RodClearance#firstContact}: closed form over each triangle.
 * </ol>
 *
 * <p><b>Assumptions and limits.</b> Coordinates are finite and far from the limits of double precision (a structure within
 * 100 km of the origin). A ray that grazes a triangle edge-on misses it. Everything is a pure function of its input: the same
 * mesh gives the same tree and the same answers on any thread.
 *
 * <p><b>Sources.</b> Shewchuk 1997 (predicates); Wald 2007 (binned SAH); Woop, Benthin and Wald 2013 (watertight test); Ize
 * 2013 (robust slabs); Ericson 2005 (distances). Equations and checks: docs/theory/geometry.md.
 */
@NullMarked
package baymist.geom;

import org.jspecify.annotations.NullMarked;
