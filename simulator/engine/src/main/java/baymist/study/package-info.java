/**
 * Jobs held against each other: what would come of doing it another way.
 *
 * <p>Inputs: a {@link baymist.scene.Scene} and edits of it. Outputs: one {@link baymist.study.StudyResult} for each job.
 *
 * <ol>
 *   <li>{@link baymist.study.Change} is one named edit that a technician could make: another clock angle, wand, entry, rate, hang
 * time, hole. It
 *       gives a new scene and says itself in words.
 *   <li>{@link baymist.study.Planning} lowers the resolution of a scene: longer voxels, projected air, fewer rays, bins and stations.
 *   <li>{@link baymist.study.PlanningRun} runs jobs at that resolution with one thread each, several at once. Jobs on the same structure share its
 *       sheets, voxels, ray tree and seams ({@link baymist.run.Structures}). Each result is kept by {@link baymist.study.StudyStore} under the
 *       content hash of its scene and the build of the program, so that a study which was stopped goes on from what it had.
 * </ol>
 *
 * <p>Assumptions: coarse runs put jobs into the right order although each of their figures is off by some points
 * (docs/theory/planning.md says by
 * how many); what is recommended is run again in full. Limits: hands are taken to do what the scene says. Same bits for any number
 * of jobs at once.
 */
@NullMarked
package baymist.study;

import org.jspecify.annotations.NullMarked;
