package baymist.recording;

/**
 * The job over time, at the start and at the end of every moment of the run. Arrays [count], ascending in time, shared: not to be written
 * to.
 *
 * @param timeS job time, s
 * @param sprayedKg product that left the tip so far, kg
 * @param airborneKg fog in the air of the cavity, kg
 * @param filmKg product on the structure and on bare protected items, kg
 * @param oversprayKg product that left through openings so far, kg
 * @param reached share of the structure's area at or above haze, 0..1
 * @param protectedKg product on protected items, masks included, kg
 */
public record Curves(
        double[] timeS,
        double[] sprayedKg,
        double[] airborneKg,
        double[] filmKg,
        double[] oversprayKg,
        double[] reached,
        double[] protectedKg) {
    public int count() {
        return timeS.length;
    }

    /** Fog over what was sprayed so far, 0..1, at point {@code n}; 0 before anything was sprayed. */
    public double airborneShare(int n) {
        return sprayedKg[n] > 0 ? airborneKg[n] / sprayedKg[n] : 0;
    }

    /** A curve at a time, s, straight between its points and level beyond its ends. */
    public double at(double[] curve, double timeS) {
        return Times.mix(this.timeS, timeS, (low, high, w) -> curve[low] + w * (curve[high] - curve[low]));
    }
}
