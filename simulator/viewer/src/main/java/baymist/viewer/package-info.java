/**
 * See it: a window that shows a scene, its run in time and what stays bare.
 *
 * <p>Three layers, each of which may use only those before it:
 *
 * <ol>
 *   <li>{@code baymist.viewer.model}: what is shown, without a window: a recorded run, answers about places, what-if, work in the
 *       background;
 *   <li>{@code baymist.viewer.draw}: the arithmetic of showing it: patches of sheet, camera, order of drawing, places of labels;
 *       no window either;
 *   <li>{@code baymist.viewer.fx}: the window, in JavaFX.
 * </ol>
 *
 * <p>Nothing outside {@code fx} names a JavaFX type, so that commands without a window never load it.
 */
@NullMarked
package baymist.viewer;

import org.jspecify.annotations.NullMarked;
