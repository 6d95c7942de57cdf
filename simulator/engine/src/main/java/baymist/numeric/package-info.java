/**
 * Numerics that every stage shares: a team of threads whose results never depend on their number, and a hash that tells
 * whether two runs agree bit for bit.
 *
 * <p>Rules that make results independent of the thread count:
 *
 * <ol>
 *   <li>work is cut into pieces whose size does not depend on the number of threads;
 *   <li>a piece writes only to places of its own;
 *   <li>sums over pieces are formed afterwards, in the order of the pieces;
 *   <li>sampling uses index-based low-discrepancy sequences, never a shared random stream.
 * </ol>
 *
 * <p>Limits: threads are made here alone (an architecture test holds that). No vector kernels yet.
 */
@NullMarked
package baymist.numeric;

import org.jspecify.annotations.NullMarked;
