package baymist.fog;

/**
 * How hard the transport had to work so far.
 *
 * @param explicitSteps explicit sub-steps, those of the finest level where cells have levels, summed over bins
 * @param updates cells and links that explicit sub-steps updated, summed over bins
 * @param implicitSteps sub-steps with implicit lines, summed over bins
 * @param smallestStepS smallest explicit step limit met, s; infinite if nothing moved
 * @param limitCell cell that set it, or -1
 * @param limitBin bin that set it, or -1
 * @param reason that limit in words
 * @param airBudgetError largest relative error met in a cell's air volume budget: |in + supplied - out - stored| over the
 *     larger of in + supplied and out; a uniform fog drifts from uniform by no more than this share of what passes
 */
public record FogStats(
        long explicitSteps,
        long updates,
        long implicitSteps,
        double smallestStepS,
        int limitCell,
        int limitBin,
        String reason,
        double airBudgetError) {}
