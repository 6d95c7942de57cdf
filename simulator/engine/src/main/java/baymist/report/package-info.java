/**
 * Results and checks in writing: JSON for programs, plain text for people. Nothing is computed here but sums, shares and
 * units.
 *
 * <p>In: a {@link baymist.run.RunResult} or {@link baymist.run.CheckResult}. Out:
 *
 * <ol>
 *   <li>{@link baymist.report.ResultJson}: every figure under a key with its unit (docs/formats/result.md);
 *   <li>{@link baymist.report.TextReport}: coverage, bare places, where the product went, findings, cautions, in 100
 *       columns of ASCII;
 *   <li>{@link baymist.report.CheckReport}: geometry, openings, leaks and wands before anything is sprayed, in both forms;
 *   <li>{@link baymist.report.Cautions}: what stands on every report, with this run's figures;
 *   <li>{@link baymist.report.AtomicFile}: files that are written whole or not at all.
 * </ol>
 *
 * <p>Limits: the figures for room air and for the fog's mean concentration are estimates from totals, not a survey of the
 * work place. Sources of the limits stand beside them in {@link baymist.report.Cautions}.
 */
@NullMarked
package baymist.report;

import org.jspecify.annotations.NullMarked;
