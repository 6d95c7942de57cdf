package baymist.plan;

import baymist.study.Planning;

/**
 * How finely doses are computed.
 *
 * @param planning resolution of voxels, sizes and rays
 * @param spacingM distance of stations, m
 * @param mostStations most stations on one way
 * @param clocks clock angles in a whole turn; a tip that repeats needs fewer
 * @param pulseS length of the pulse of spray, s
 * @param carryS time that the flow of the pulse goes on without liquid, s
 */
public record DoseSettings(
        Planning planning, double spacingM, int mostStations, int clocks, double pulseS, double carryS) {
    public static final DoseSettings DEFAULT = new DoseSettings(new Planning(3, 4, 128, 1), 0.05, 32, 8, 1, 2);
}
