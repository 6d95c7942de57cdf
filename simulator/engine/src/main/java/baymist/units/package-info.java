/**
 * Quantities with units: text in, SI doubles out, and back to text in the trade's units.
 *
 * <p>Front class: {@link baymist.units.Quantities}. It reads {@code 8 ft}, {@code 3/64 in}, {@code 80 psi}, {@code 25 mL/min},
 * {@code 40 cSt} and {@code "#30 drill"} by {@link baymist.units.Dimension}. {@link baymist.units.ViscosityTemperature} gives the
 * viscosity of an oil at its temperature of use from two measured points; {@link baymist.units.Air} holds the properties of air.
 *
 * <p>How a text becomes a number:
 *
 * <ol>
 *   <li>Signs that look alike are made one (µ and u, superscripts, the middle dot).
 *   <li>The text is split into an exact fraction and a unit; a length or time may have two terms ({@code 4 ft 6 in}).
 *   <li>The unit is looked up in the table of the wanted dimension. What is not there is refused with the units that would be
 *       right; nothing is guessed from the size of a number.
 *   <li>The JSR 385 unit object (indriya, systems-common) converts the fraction; the result is rounded to a double once.
 * </ol>
 *
 * <p>Assumptions: pressures are gauge above a standard atmosphere of 101 325 Pa unless the unit says absolute; gallon and fluid ounce
 * are those of the United States; the pound-force is a pound under 9.80665 m/s².
 *
 * <p>Limits: the table is closed. Units of a person's own making, ambiguous ones ({@code oz} for a volume) and the Imperial gallon
 * are refused. Loading the unit library costs about a tenth of a second once a process.
 *
 * <p>Sources: NIST SP 811 (2008) appendix B (factors); ASME B94.11M (number drills); ASTM D341 (viscosity and temperature); US
 * Standard Atmosphere 1976 and Hinds (1999) (air).
 */
@NullMarked
package baymist.units;

import org.jspecify.annotations.NullMarked;
