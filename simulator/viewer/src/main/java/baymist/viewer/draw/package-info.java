/**
 * The arithmetic of showing a cavity, without a window.
 *
 * <ol>
 *   <li>{@code PatchBuilder} cuts the sheets into patches about as large as a surfel and gives each side of each patch that faces
 *       air the surfel it shows and the bay it looks into;
 *   <li>{@code Clusters} gathers patches by bay, part and place into pieces small enough to be sorted and moved one by one;
 *   <li>{@code Camera} says where the eye is and where a point falls on the picture;
 *   <li>{@code DrawOrder} says in which order see-through pieces are drawn, far ones first, and which of them is to be sorted
 *       anew next;
 *   <li>{@code PieceSight} says which pieces need no sorting, because they can't hide themselves, and which are seen from behind and
 *       so not drawn;
 *   <li>{@code PassHandle} says what of a pass a pointer takes hold of and what dragging it does.
 * </ol>
 *
 * <p>Lengths in metres, angles in radians, picture positions in pixels from the top left corner.
 */
@NullMarked
package baymist.viewer.draw;

import org.jspecify.annotations.NullMarked;
