/**
 * The work card on paper and on a screen, both from one page.
 *
 * <p>In: a {@link baymist.card.WorkCard} and its source. Out: a PDF (A4 or Letter) and an HTML page that needs no other file.
 *
 * <ol>
 *   <li>{@code CardWords} turns figures into words in the user's units, under the names that the template uses;
 *   <li>{@code card.mustache} is the page: XHTML with its style sheet, the order and the fixed words of the card;
 *   <li>the page as it stands is the HTML; its pictures are SVG elements within it;
 *   <li>{@code CardPdf} lays the same page out on paper; where an SVG element stands, {@code PictureDrawer} draws the picture of that id.
 * </ol>
 *
 * <p>Letters of the PDF are those of DejaVu Sans Condensed, which the program carries and embeds; letters within pictures are outlines.
 * Neither needs a font, a font configuration or a display on the machine. Everything is black and grey, so that it survives a copier.
 * The same card gives the same bytes: no clock is written.
 */
@NullMarked
package baymist.print;

import org.jspecify.annotations.NullMarked;
