/**
 * The suspended droplets: carried by the air, spread by eddies, pulled down by gravity, caught by walls, let out by vents.
 *
 * <p><b>Input:</b> the grid, droplet bins, an {@link baymist.airflow.AirField} that holds over a window, and what the jets do
 * ({@link baymist.spray.SprayHits}: fog sources, beams that draw fog in). <b>Output:</b> concentration by cell and bin, deposit by
 * surfel and bin, overspray by opening and bin. {@link baymist.fog.FogStepper} owns the state; {@link baymist.fog.DepositionLaw}
 * is the wall law.
 *
 * <p>One window, for each bin (bins do not meet; those that go side by side share one set of levels, and up to eight of them are a piece of parallel work):
 *
 * <ol>
 *   <li>Rates. Through each open face the flux of drift plus diffusion is exponentially fitted (Scharfetter and Gummel 1969):
 *       positive, conservative, exact for constant coefficients; the donor cell where diffusion is nil. Settling crosses open
 *       area only; at a blocked face the wall law stands in its place. Closures catch with the share that is closed. Through
 *       vents fog leaves with the net drift outwards; air that enters is clean.
 *   <li>Slopes. As far as that flux diffuses more than the eddies do, a limited slope and the donor's change until the middle of the step mend it
 *       (Koren 1993, Colella 1990): second order, positive, no new extremes along a line of cells. At walls, edges and links through sheets it stays as it is.
 *       Only where {@link baymist.scene.Transport} asks for it. By default a size below 1e-9 of all fog rests.
 *   <li>Steps. Explicit, 0.9 of the fastest cell's emptying time, 0.6 of it where drift with slopes empties it; where a few fast cells would hold up many slow ones,
 *       each cell at the pace of its level, in steps of 1, 2, 4 ... 32 times the shortest, with what crosses between levels gathered so
 *       that no mass is lost. Cells lie sorted by level; each gathers what its neighbours of the same level give, and links between levels are booked one
 *       by one ({@link baymist.fog.FogGroupSteps}); or, where settling and eddies are much faster than the
 *       air and the fog changes slowly, split steps: air explicitly, then backward Euler along the lines of cells of each
 *       axis (unconditionally positive), with a step that lets some 0.4 % of the bin move. Both conserve mass to rounding.
 *   <li>Books. Rates are constant in a window, so a wall's, vent's or beam's share is its rate times the cell's time integral of
 *       mass. Sizes side by side are stepped in single precision; an audit makes what is left and what was taken add up to what was there.
 *   <li>Checks. A negative or broken mass stops the run with cell, bin and time.
 * </ol>
 *
 * <p><b>Air budget.</b> Fog is advanced as mass with the air's own fluxes. In a cell whose inflow, supply and outflow balance
 * (less what compression stores) a uniform fog stays uniform; supplied air is clean and dilutes; compression raises kg/m³ as
 * it raises the air's density. A field that does not balance makes an error of the size of its residual, which is reported
 * ({@link baymist.fog.FogStats#airBudgetError}).
 *
 * <p><b>Determinism.</b> A bin, or a group of bins that are stepped side by side, is advanced by one thread in one order; set-up goes in blocks of cells
 * and links whose size is fixed; sums over bins are taken in order of bins.
 *
 * <p><b>Order.</b> By default first order where drift rules and second where eddies do. With slopes second order in space, and in time for explicit drift; first order for eddies,
 * sources, walls and split steps.
 *
 * <p><b>Beside it:</b> {@link baymist.fog.Coagulation} and {@link baymist.fog.Exposure} estimate how often droplets meet and what people outside
 * breathe; walls may be smooth by theory or as measured in ducts.
 *
 * <p><b>Limits:</b> passive droplets of constant size: no coagulation in the state, no evaporation, no droplet inertia in the bulk; fog's weight
 * acts through the air field; no eddy exchange through vents. <b>Sources:</b> see docs/theory/fog.md. <b>Cases:</b> FogSettlingTest,
 * FogDiffusionTest, DepositionLawTest, FogLawTest, FogLevelsTest, FogOrderTest, FogKernelTest.
 */
@NullMarked
package baymist.fog;

import org.jspecify.annotations.NullMarked;
