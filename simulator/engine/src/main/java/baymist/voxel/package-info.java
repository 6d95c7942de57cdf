/**
 * Turns the sheets of a cavity into cells of air with walls on faces.
 *
 * <p><b>In:</b> a {@link baymist.cavity.Cavity} and a wished voxel size. <b>Out:</b> a {@link baymist.voxel.VoxelGrid}: cavity
 * cells with their air volume, the faces that air can cross with their open area, surface elements (surfels) with the
 * sheets' true area and normal, bays, and what could not be held. Front classes: {@link baymist.voxel.Voxelizer},
 * {@link baymist.voxel.SurfelLocator}. Theory with equations: {@code docs/theory/voxels.md}.
 *
 * <ol>
 *   <li>A lattice over the bounding box, whole cells across it, one ring of outside cells round it ({@code PitchRule},
 *       {@code Lattice}).
 *   <li>A face is blocked where the segment between two cell centres crosses a sheet, by exact predicates with one
 *       symbolic shift of the whole lattice ({@code SheetCrossings}, {@code LatticePredicates}).
 *   <li>Outside air floods from the ring with every opening closed; what it doesn't reach is enclosed ({@code Enclosure}).
 *       Laps between outside and inside are put in order, skin outermost ({@code BlockedFaces}).
 *   <li>Every opening's outline is clipped to the lattice columns and laid on blocked faces of its own part; an outside
 *       opening becomes a vent ({@code OpeningFootprint}, {@code OpeningPlacer}).
 *   <li>The enclosed compartments that hang together through openings with the inside point are the cavity ({@code
 *       CavityCells}); if there is none, {@code LeakFinder} says where air comes in.
 *   <li>Faces and neighbours are listed ({@code FaceSetBuilder}).
 *   <li>Every sheet triangle is cut along the lattice planes; each piece gives its area, front and back, to the surfels
 *       that face it. Area that none faces is recorded as unresolved ({@code TriangleSlicer}, {@code PieceSharer}, {@code
 *       ClosureSharer}, {@code SurfaceTotals}, {@code SurfelBuilder}).
 *   <li>Cell volumes follow the distance of the sheets and together match the volume inside the surface ({@code
 *       CellVolumes}).
 *   <li>Bays are the compartments with all openings closed ({@code BayFinder}).
 * </ol>
 *
 * <p><b>Holds by construction:</b> a continuous sheet never leaks, whatever its place against the lattice; resolved plus
 * unresolved area is the sheets' exact interior area; an opening's entries add up to its outline's area; the same bits on
 * any number of threads.
 *
 * <p><b>Assumptions and limits:</b> sheets have no thickness here; triangles of {@code cutSheets} keep the winding of the
 * sheet they are cut from. A space without a cell centre isn't stored: its area is unresolved, an opening into it is
 * treated as closed and told in {@link baymist.voxel.VoxelGrid#leaks()}. Default cell numbers are ASSUMED, see {@code
 * PitchRule}.
 *
 * <p><b>Sources:</b> Shewchuk (1997), Adaptive precision floating-point arithmetic and fast robust geometric predicates;
 * Edelsbrunner and Mücke (1990), Simulation of simplicity; Sutherland and Hodgman (1974), Reentrant polygon clipping.
 */
@NullMarked
package baymist.voxel;

import org.jspecify.annotations.NullMarked;
