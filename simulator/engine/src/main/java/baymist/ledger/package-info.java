/**
 * The account of every kilogram.
 *
 * <p><b>Input:</b> masses that other stages summed from their own fields. <b>Output:</b> {@link baymist.ledger.MassLedger}:
 * sprayed = film + airborne + overspray + dripped + masked.
 *
 * <ol>
 *   <li>A run books each contribution, in a fixed order, with {@link baymist.ledger.MassLedger.Builder}; nothing is found by
 *       difference, so an error in one stage cannot hide in another's account.
 *   <li>{@link baymist.ledger.MassLedger#requireClosed} compares both sides. A run promises 1e-9 of what was sprayed.
 * </ol>
 *
 * <p><b>Limits:</b> what stays in the wand was never sprayed and is not in the account. Non-volatile oils do not evaporate in
 * flight, so there is no account for vapour; a solvent-borne film is weighed wet here.
 *
 * <p><b>Source of the summation:</b> Neumaier (1974), Z. Angew. Math. Mech. 54, 39-51: relative error of the order of one
 * rounding whatever the number of terms.
 */
@NullMarked
package baymist.ledger;

import org.jspecify.annotations.NullMarked;
