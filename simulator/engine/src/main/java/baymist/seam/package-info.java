/**
 * Seams: the lines where sheets of different parts meet, found on the sheets themselves. A seam is as long as the structure makes it, at
 * any voxel size and in any attitude.
 *
 * <p>In: the cavity's sheets with their openings cut out. Out: {@link baymist.seam.SeamSegment}s, straight pieces of line with the two parts,
 * the kind and each wedge of cavity air that looks into the seam. Theory: docs/theory/coverage.md, section 4.
 *
 * <ol>
 *   <li>{@code MeshEdges} lists each edge of the mesh once, corners told apart by their exact coordinates;
 *   <li>{@code LineContacts} finds the triangles of all parts that an edge runs along, and cuts the edge where they begin and end: where it
 *       lies on them to some micrometres, else, for an edge at which a sheet ends, within half of both gauges;
 *   <li>{@code CrossingLines} adds the lines where two sheets pass through each other away from any edge;
 *   <li>{@code SheetFan} sorts the half-planes of sheet round a piece by angle: between two neighbours of different parts lies a wedge, and
 *       how many half-planes each part has tells the kind;
 *   <li>{@code OpenAir} drops wedges of outside air by rays that get away;
 *   <li>{@code KnownLines} keeps a line that two meshes describe twice from counting twice;
 *   <li>{@link baymist.seam.SeamChains} joins pieces that go on from one another to polylines.
 * </ol>
 *
 * <p>Assumptions: sheets have no thickness; an edge counts as lying on a sheet within 2 µm or a ten-millionth of the structure, whichever is
 * more. Limits: folds of one part are no seams; fasteners, beads of sealant and edges of doublers that the model does not hold are not
 * known; lengths on curved sheet are those of its facets.
 *
 * <p>Sources: sorting half-planes about an edge is the radial-edge structure of Weiler (1986), Topological Structures for Geometric Modeling.
 */
@NullMarked
package baymist.seam;

import org.jspecify.annotations.NullMarked;
