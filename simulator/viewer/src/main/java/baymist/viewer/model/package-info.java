/**
 * What a window shows, without a window: every decision that can be made and tested without a display.
 *
 * <p><b>Purpose.</b> A window is hard to test and easy to get wrong. Here stands all of it that is no drawing; {@code fx} only shows it and
 * hands back clicks and keys.
 *
 * <p><b>Parts.</b>
 *
 * <ol>
 *   <li>Work: {@link baymist.viewer.model.JobRunner} does one piece of {@link baymist.viewer.model.Work} at a time on a thread of its own;
 *       the newest cancels the one before. {@link baymist.viewer.model.Runs} are the pieces: open, whole run, preview. {@link
 *       baymist.viewer.model.Sentences} turns what goes wrong into words.
 *   <li>Time: {@link baymist.viewer.model.TimeModel} is a pure function of a clock that the window reads; {@link
 *       baymist.viewer.model.ChartModel} holds the curves that follow it.
 *   <li>Structure: {@link baymist.viewer.model.SceneModel} says what is hidden, cut and drawn apart.
 *   <li>Answers: {@link baymist.viewer.model.SurfelStory} for a place that was clicked, {@link baymist.viewer.model.RegionList} for what
 *       stays bare, {@link baymist.viewer.model.Shade} for what stands before it (at once), {@link baymist.viewer.model.RegionAnswer} for
 *       why and for the best pose of the tip (seconds to minutes).
 *   <li>What if: {@link baymist.viewer.model.WhatIf} edits a job field by field, {@link baymist.viewer.model.Difference} holds two runs
 *       against each other, {@link baymist.viewer.model.CompareModel} shows them side by side.
 *   <li>The file: {@link baymist.viewer.model.SceneWatch} hears when it changes on disk.
 * </ol>
 *
 * <p><b>Rules.</b> Records are immutable and in SI; units appear in words alone, film through {@link baymist.viewer.model.FilmUnit}. No
 * JavaFX type, no clock but the one that is handed in, nothing printed. Listeners are called on the worker's thread.
 *
 * <p><b>Limits.</b> One job at a time. Previews are for looking, never for numbers: their sentence says so. Answers about a place are
 * computed at planning resolution, where small regions can look different.
 */
@NullMarked
package baymist.viewer.model;

import org.jspecify.annotations.NullMarked;
