/**
 * Air motion in the cavity: one {@link baymist.airflow.AirField} for each window of the timeline.
 *
 * <p>In: the grid, what the jets do at each station ({@code SprayHits}), the openings' open shares, the air's properties and
 * the scene's settings. Out: volume fluxes through faces and vents, air sources, rate of compression, eddy diffusivity of
 * each cell, friction speed at each surfel, and the divergence that is left.
 *
 * <p>{@link baymist.airflow.AirStage} is the front. It
 *
 * <ol>
 *   <li>finds, for each state of the openings, the groups of cells that air can move between, and their vents;
 *   <li>integrates the pressure of each group through the whole job ({@link baymist.airflow.CavityPressure}, vents as
 *       {@link baymist.airflow.Orifice}s); groups that merge mix their air;
 *   <li>integrates one turbulent energy for each bay ({@link baymist.airflow.BulkTurbulence}) above a floor of
 *       {@link baymist.airflow.ResidualConvection};
 *   <li>for a window, on demand and in any order: takes the jets' mean velocity as start field, puts the supplied air in at
 *       the tip and the outflow on the vents, and projects ({@link baymist.airflow.AirProjector}) by one solve of a Poisson
 *       equation ({@link baymist.airflow.PoissonSolver}: conjugate gradients with a wall-aware multigrid);
 *   <li>reads the friction speed at each surfel from the tangential speed beside it ({@link baymist.airflow.WallLaw}).
 * </ol>
 *
 * <p>{@link baymist.airflow.ResolvedAir} takes the place of steps 3 to 5 where a scene asks for it. For each window of fog it
 *
 * <ol>
 *   <li>works on {@code FlowGrid}: blocks of voxels, split where sheets pass;
 *   <li>drives the air by what jets hand over at their cap, by supply, vents and compression, and by the weight of fog;
 *   <li>steps {@code FlowSolver}: momentum through {@code FlowLinks} by a {@code FlowKernel}, Heun, one projection a step, k in {@code FlowTurbulence};
 *   <li>projects the window's mean fluxes tightly and refines them to the voxels ({@code FluxRefiner}).
 * </ol>
 *
 * <p>Volume fluxes are at the cavity's own pressure: in every cell, outgoing fluxes = source - expansion x volume.
 *
 * <p>Assumed: isothermal air, one pressure in each group, uniform turbulence in each bay, steady flow within a window (resolved air: its mean).
 * Limits: a projected field has no eddies of its own and under-states the mean speed in a jet's bay three to four times; it
 * ranks plans, resolved air decides. Jets above 5 m/s stay analytic and are not in the field, so friction speeds under a jet's
 * footprint are not either. The weight of fog moves resolved air alone. Equations, sources and the list of assumptions:
 * {@code docs/theory/air.md}.
 */
@NullMarked
package baymist.airflow;

import org.jspecify.annotations.NullMarked;
