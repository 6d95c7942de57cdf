/**
 * A whole job from scene to result.
 *
 * <p>{@link baymist.run.Simulation#run} lists the stages in order: sheets and openings, voxels, wand, spray, air, fog, film,
 * coverage. The job is cut into {@code Moment}s over which tip, air and openings stand still: one a spray station, and
 * hanging times in pieces that grow as the air calms down.
 *
 * <ol>
 *   <li>{@code Approach} puts each pass's wand into its entry; {@code Timeline} makes the moments.
 *   <li>{@code Spraying} casts every station's jets, stations in parallel.
 *   <li>{@code Airing} plans pressure and turbulence over the whole job, refuses a cavity that would be pumped up, and
 *       computes the air of a few moments ahead of the fog.
 *   <li>{@code Job} owns what changes (fog, film, history) and turns it into a {@code RunResult} whose ledger closes.
 *   <li>{@code OutlookBuilder} adds what becomes of it later: {@link baymist.run.Outlook}.
 *   <li>{@link baymist.run.VoxelStudy} runs a scene at three voxel sizes and says whether its coverage hangs on them.
 * </ol>
 *
 * <p>Assumptions: the jets of a station do not feel the fog; the air of a moment is steady; an entry's gap round the wand is
 * a vent. Limits: see docs/theory. Same bits for any number of threads; the wall clock is read for the record alone.
 */
@NullMarked
package baymist.run;

import org.jspecify.annotations.NullMarked;
