/**
 * Checks of the engine against values published elsewhere, kept as data.
 *
 * <p>{@code scenes/verification/cases.csv} holds one row a check: inputs with units, the quantity, the expected value, the
 * tolerance, the source and how the value is known (seen in a document, derived, from memory). A row either names a formula
 * of the engine, evaluated directly, or a scene that is run through the whole chain and read off at a time and place.
 *
 * <ol>
 *   <li>{@code CaseTable} reads the table; a faulty row is a finding with its line.
 *   <li>{@code FormulaQuantities} gathers the formulas of each stage ({@code DropletQuantities}, {@code AirQuantities} ...), the
 *       fog in a plain box ({@code FogBox}) among them.
 *   <li>{@code SceneQuantities} gathers what is read off a scene: from its file, after its geometry is built ({@code
 *       VoxelReadings} ...), or after its run ({@code RunReadings}, {@code CoverageReadings}); {@code SceneRuns} does each once.
 *   <li>{@link baymist.verify.Verification} evaluates all rows and says for each by how much it is off.
 *   <li>{@link baymist.verify.OrderStudy} measures the order of the operators; {@link baymist.verify.ValidationFolder} writes tables and plots
 *       into docs/validation.
 * </ol>
 *
 * <p>To add a check, add a row; a new quantity is one line in the class of its stage. Limits: a quantity says nothing about
 * places that its row does not name; tolerances are those argued in the row's source or scheme order, not tuned to pass.
 */
@NullMarked
package baymist.verify;

import org.jspecify.annotations.NullMarked;
