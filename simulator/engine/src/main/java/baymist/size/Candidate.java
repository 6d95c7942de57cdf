package baymist.size;

import baymist.study.StudyResult;

/**
 * One wand of the sweep: a design at one length.
 *
 * @param marks its length in marks
 * @param lengthM usable length from the tip along the tube, m
 * @param depthM how deep it goes, m
 * @param stopM depth at which its best pass begins, m, not above {@code depthM}
 * @param at what a run from there gave, at planning resolution
 * @param sagM how far its tip hangs off its straight line when it stands at {@code stopM}, m; not a number for a bent one
 * @param holeM smallest round hole that it passes, m
 * @param bore what its bore does to the supply
 * @param tubeKg mass of the tube without oil, kg
 * @param filledKg the same with its bore full of oil, kg
 * @param meets whether it meets the goal
 */
public record Candidate(
        Design design,
        int marks,
        double lengthM,
        double depthM,
        double stopM,
        StudyResult at,
        double sagM,
        double holeM,
        Bore bore,
        double tubeKg,
        double filledKg,
        boolean meets) {}
