package baymist.run;

/**
 * The job at one time.
 *
 * @param timeS job time, s
 * @param airborneKg fog in the air of the cavity, kg
 * @param filmKg product on the structure, kg
 * @param oversprayKg left through openings so far, kg
 * @param reached share of the structure's area at or above haze, 0..1
 * @param peakGaugePa highest gauge pressure of any bay so far, Pa
 */
public record TimePoint(
        double timeS, double airborneKg, double filmKg, double oversprayKg, double reached, double peakGaugePa) {}
