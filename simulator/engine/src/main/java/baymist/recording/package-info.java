/**
 * A run kept so that it can be looked at over time: played, stopped, gone back and forth in.
 *
 * <p><b>Purpose.</b> A run leaves the film at its end. A trainer wants to see it grow. {@link baymist.recording.Recorder} looks on while a
 * job runs and keeps film, fog, wand and curves; {@link baymist.recording.Recording} gives them back at any time. A recorded run has the
 * bits of one that nobody watched.
 *
 * <p><b>Algorithm.</b>
 *
 * <ol>
 *   <li>After each moment of the job, film of every surfel and fog of every block of voxels become a frame. Blocks are as small as the
 *       limit on their number allows and never reach across bays, so a thin sheet stays a border for the fog as well.
 *   <li>When there are more frames than allowed, by number or by memory, the one goes that a straight line in time between its neighbours
 *       stands in for with the least mass misplaced, film and fog together (the idea of Visvalingam and Whyatt (1993) for lines, from
 *       memory). So frames gather where much happens.
 *   <li>At a time between frames, film and fog are taken straight between the two.
 *   <li>The wand is not taken from frames: between stations its depth follows the even draw-back that the stations stand for, and the body
 *       follows its own way at that depth. Its jets are drawn to the first sheet on their axis, openings cut out.
 *   <li>What arrived is summed by surfel as jets and fog bring it; what film there is beyond that ran or crept there.
 * </ol>
 *
 * <p><b>Assumptions.</b> Jets are drawn as free round jets whose spray is half as dense at the half angle; where they would be too slow to
 * be felt they end (ASSUMED, for drawing alone).
 *
 * <p><b>Limits.</b> 4 bytes for each surfel and each block of each frame. A dropped frame's own detail is lost; {@link
 * baymist.recording.Recording#statement} says how much at most, measured against its neighbours at the time when it was left out. Values
 * have 24 bits.
 */
@NullMarked
package baymist.recording;

import org.jspecify.annotations.NullMarked;
