package baymist.viewer.draw;

/**
 * A scale of time in two even stretches: the passes, and the waiting after them, which lasts long and changes little.
 *
 * @param breakS end of the first stretch, s
 * @param endS end of the second, s
 * @param firstShare share of the scale's length that the first stretch gets where both are there, 0..1
 */
public record TimeScale(double breakS, double endS, double firstShare) {
    /** Place of a time, 0..1. */
    public double place(double timeS) {
        double share = share();
        if (timeS <= breakS) {
            return breakS > 0 ? share * Math.max(0, timeS) / breakS : 0;
        }
        return Math.min(1, share + (1 - share) * (timeS - breakS) / (endS - breakS));
    }

    /** Time at a place, s. */
    public double timeS(double place) {
        double share = share();
        if (place <= share && share > 0) {
            return breakS * place / share;
        }
        return place >= 1 || share >= 1 ? endS : breakS + (endS - breakS) * (place - share) / (1 - share);
    }

    /** Place where the passes end, 0..1. */
    public double share() {
        return breakS >= endS ? 1 : breakS <= 0 ? 0 : Math.max(firstShare, breakS / endS);
    }
}
