/**
 * Checks of the engine against values published elsewhere, kept as data.
 *
 * <p>{@code scenes/verification/cases.csv} holds one row a check: inputs with units, the quantity, the expected value, the
 * tolerance, the source and how the value is known (seen in a document, derived, from memory). A row either names a formula
 * of the engine, evaluated directly, or a scene that is run through the whole chain and read off at a time and place.
 *
 * <ol>
 *   <li>{@code CaseTable} reads the table; a faulty row is a finding with its line.
 *   <li>{@code FormulaQuantities} and {@code SceneQuantities} map a quantity's name to the code that computes it.
 *   <li>{@code Verification} evaluates all rows and says for each by how much it is off.
 * </ol>
 *
 * <p>Limits: tolerances are those argued in the row's source or scheme order, not tuned to pass. Sources stand in the table.
 */
@NullMarked
package baymist.verify;

import org.jspecify.annotations.NullMarked;
