/**
 * The window, in JavaFX. Everything here runs on the JavaFX thread unless its text says otherwise.
 *
 * <p>What is opaque is drawn first: film on the sides of sheets that look at the eye, lines, the wand, droplets. Sheets seen from
 * behind are see-through and drawn afterwards, far ones first; patches lie off their sheet by a hair, so that sides of one sheet never
 * fight for a pixel. Light comes from everywhere alike, so that a
 * colour on the structure is the colour of the legend; only a see-through sheet before it shades it a little.
 */
@NullMarked
package baymist.viewer.fx;

import org.jspecify.annotations.NullMarked;
