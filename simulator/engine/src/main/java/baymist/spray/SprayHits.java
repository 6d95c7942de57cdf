package baymist.spray;

/**
 * What the jets of one station do, as rates while the trigger is held. Sparse structure of arrays, in a fixed order that
 * does not depend on the thread count.
 *
 * @param hitSurfel surfel struck, [hits]
 * @param hitKgPerS mass that stays there, kg/s, [hits]
 * @param fogCell cell that receives airborne droplets, [fogs]
 * @param fogKgPerS by bin, kg/s, [fogs * bins], bin innermost
 * @param escapedKgPerS mass that flies straight out through open openings, kg/s
 * @param streamCell cells that the jets cross, [streams]
 * @param streamX,streamY,streamZ flow of the jets integrated over the cell, m³/s · m (= velocity times volume), [streams]
 * @param scourCell cell from which a jet draws fog in, [scours]
 * @param scourSurfel surfel that it is thrown at, [scours]
 * @param scourM3PerS air drawn in from the cell per second by that beam, m³/s, [scours]
 * @param scourEfficiency share of the drawn-in fog that lands, by bin, [scours * bins]
 * @param airM3PerS air supplied at the tip at ambient density, m³/s
 * @param airCell cell that receives the supplied air
 * @param thrustN sum of the jets' thrust, N
 * @param turbulentPowerW power that the jets hand over as turbulence where they have slowed to the cap, W
 * @param powerBay bay that receives it
 * @param beyondFreeJetKgPerS mass rate of spray whose path runs beyond the free-jet law's confinement limit, kg/s
 * @param sprayedKgPerS liquid leaving the tip, kg/s
 * @param push where the jets hand their momentum over
 */
public record SprayHits(
        int[] hitSurfel,
        double[] hitKgPerS,
        int[] fogCell,
        double[] fogKgPerS,
        double escapedKgPerS,
        int[] streamCell,
        double[] streamX,
        double[] streamY,
        double[] streamZ,
        int[] scourCell,
        int[] scourSurfel,
        double[] scourM3PerS,
        double[] scourEfficiency,
        double airM3PerS,
        int airCell,
        double thrustN,
        double turbulentPowerW,
        int powerBay,
        double beyondFreeJetKgPerS,
        double sprayedKgPerS,
        JetPush push) {
    /** Without hand-over of momentum: what projected air needs. */
    public SprayHits(
            int[] hitSurfel,
            double[] hitKgPerS,
            int[] fogCell,
            double[] fogKgPerS,
            double escapedKgPerS,
            int[] streamCell,
            double[] streamX,
            double[] streamY,
            double[] streamZ,
            int[] scourCell,
            int[] scourSurfel,
            double[] scourM3PerS,
            double[] scourEfficiency,
            double airM3PerS,
            int airCell,
            double thrustN,
            double turbulentPowerW,
            int powerBay,
            double beyondFreeJetKgPerS,
            double sprayedKgPerS) {
        this(
                hitSurfel,
                hitKgPerS,
                fogCell,
                fogKgPerS,
                escapedKgPerS,
                streamCell,
                streamX,
                streamY,
                streamZ,
                scourCell,
                scourSurfel,
                scourM3PerS,
                scourEfficiency,
                airM3PerS,
                airCell,
                thrustN,
                turbulentPowerW,
                powerBay,
                beyondFreeJetKgPerS,
                sprayedKgPerS,
                JetPush.NONE);
    }
}
